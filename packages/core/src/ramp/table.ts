// The solver's table: what the rest of the ramp costs from every setting at every frame.

import type { Lattice } from './lattice.js';

/** Cost to go by frame, stack, aperture, level and ISO, in that order; Infinity where no ramp exists. */
export interface CostToGo {
  readonly cost: Float64Array;
  readonly base: Float64Array; // where (frame, stack) begins, at index frame * stackCount + stack
}

/** A table of the lattice's settings, all of them Infinity. */
export function emptyTable({ frameCount, stops, isoCount, apertureCount, band }: Lattice): CostToGo {
  const base = new Float64Array(frameCount * stops.length);
  let cells = 0;
  for (let at = 0; at < base.length; at++) {
    base[at] = cells;
    cells += band.count[at] * apertureCount * isoCount;
  }
  return { cost: new Float64Array(cells).fill(Number.POSITIVE_INFINITY), base };
}
