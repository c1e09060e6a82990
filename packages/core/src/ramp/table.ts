// The solver's table: what the rest of the ramp costs from every setting at every frame.

import type { Lattice } from './lattice.js';

/**
 * Cost to go by frame, stack, aperture, level and ISO, in that order; Infinity where no ramp exists. One row holds
 * the ISOs of a level. Before every row, and after the last, lie as many cells of Infinity as ISO may move at one
 * cue, so that a row read some ISOs further needs no bounds. Whole numbers in whole-number arrays: an index that
 * passes through a double is checked anew at every cell.
 */
export interface CostToGo {
  readonly cost: Float64Array;
  readonly least: Float64Array; // the cheapest ISO of a row, by row
  readonly firstRow: Int32Array; // of (frame, stack), at index frame * stackCount + stack
  readonly stride: number; // from a row to the next
  readonly pad: number; // cells of Infinity before a row
}

/** Where the lowest ISO of a row lies in `cost`. */
export function cellOf({ pad, stride }: CostToGo, row: number): number {
  return pad + row * stride;
}

/** A table of the lattice's settings. Rows are to be written from the last to the first, padding included. */
export function emptyTable({
  frameCount,
  stops,
  isoCount,
  apertureCount,
  largestStep,
  band,
}: Lattice): CostToGo {
  const pad = Math.min(largestStep, isoCount); // a step further reads nothing but padding
  const stride = pad + isoCount;
  const firstRow = new Int32Array(frameCount * stops.length);
  let rows = 0;
  for (let at = 0; at < firstRow.length; at++) {
    firstRow[at] = rows;
    rows += band.count[at] * apertureCount;
  }
  const cost = new Float64Array(rows * stride + pad).fill(Number.POSITIVE_INFINITY, rows * stride);
  return { cost, least: new Float64Array(rows), firstRow, stride, pad };
}
