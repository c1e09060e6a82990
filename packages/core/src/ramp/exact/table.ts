// The solver's table: what the rest of the ramp costs from every setting at every frame.

import type { Course } from './course.js';

/**
 * Cost to go by segment, stack, aperture, level and ISO, in that order; Infinity where no ramp exists. One row holds
 * the ISOs of a level. Before every row, and after the last, lie as many cells of Infinity as ISO may move at one
 * cue, so that a row read some ISOs further needs no bounds. Whole numbers in whole-number arrays: an index that
 * passes through a double is checked at every cell.
 */
export interface CostToGo {
  readonly cost: Float64Array;
  readonly least: Float64Array; // the cheapest ISO of a row, by row
  readonly firstRow: Int32Array; // of (segment, stack), at index segment * stackCount + stack
  readonly stride: number; // from a row to the next
  readonly pad: number; // cells of Infinity before a row
}

/** Where the lowest ISO of a row lies in `cost`. */
export function cellOf({ pad, stride }: CostToGo, row: number): number {
  return pad + row * stride;
}

/** A table of a course's settings, to be written: every row, with the padding before and behind it. */
export function emptyTable({ lattice, grid, band }: Course): CostToGo {
  const { stops, isoCount, apertureCount, largestStep } = lattice;
  const pad = Math.min(largestStep, isoCount); // a step further reads nothing but padding
  const stride = pad + isoCount;
  const firstRow = new Int32Array((grid.at.length - 1) * stops.length);
  let rows = 0;
  for (let at = 0; at < firstRow.length; at++) {
    firstRow[at] = rows;
    rows += band.count[at] * apertureCount;
  }
  const cost = memory(rows * stride + pad);
  return { cost, least: new Float64Array(rows), firstRow, stride, pad };
}

// Memory new to a process comes page by page, which for 20,000 frames took a quarter of the solve. Held weakly: it is
// the collector's as soon as it is wanted elsewhere.
let spare: WeakRef<Float64Array> | undefined;

/** Room for some numbers, not zeroed. */
function memory(length: number): Float64Array {
  const given = spare?.deref();
  spare = undefined;
  return given !== undefined && given.length >= length ? given.subarray(0, length) : new Float64Array(length);
}

/** Leaves a table's memory to the next one; the table must not be read again. */
export function giveBack({ cost }: Pick<CostToGo, 'cost'>): void {
  spare = new WeakRef(new Float64Array(cost.buffer));
}
