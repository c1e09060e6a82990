// The solver's table: what the rest of the ramp costs from every setting at every frame.

import type { Lattice } from './lattice.js';

/**
 * Cost to go by frame, stack, aperture, level and ISO, in that order; Infinity where no ramp exists. One row holds
 * the ISOs of a level. Behind every row, and before the first, lie as many cells of Infinity as ISO may move at one
 * cue, so that a row shifted in ISO needs no bounds and neighbouring rows can be worked on in one go.
 */
export interface CostToGo {
  readonly cost: Float64Array;
  readonly base: Float64Array; // where (frame, stack) begins, at index frame * stackCount + stack
  readonly stride: number; // from a row to the next
  readonly pad: number; // cells of Infinity behind a row
}

/** A table of the lattice's settings, all of them Infinity. */
export function emptyTable({
  frameCount,
  stops,
  isoCount,
  apertureCount,
  largestStep,
  band,
}: Lattice): CostToGo {
  const pad = Math.min(largestStep, isoCount);
  const stride = isoCount + pad;
  const base = new Float64Array(frameCount * stops.length);
  let cells = pad;
  for (let at = 0; at < base.length; at++) {
    base[at] = cells;
    cells += band.count[at] * apertureCount * stride;
  }
  return { cost: new Float64Array(cells).fill(Number.POSITIVE_INFINITY), base, stride, pad };
}
