// What a live solve has the dials follow: the targets ahead at fewer places, levels of a band that always holds a way,
// errors priced by how far ahead they lie.

import { type Bands, bandsOf } from '../band.js';
import { type Course, heldThrough } from '../exact/course.js';
import type { Grid } from '../grid.js';
import type { Lattice } from '../lattice.js';
import type { State } from '../moves.js';
import { LiveErrors, type LiveWeights } from './errors.js';
import { funnelOf } from './funnel.js';

/** Stops off the target that are looked at whatever the tolerance: waiting out a passing change must be among the choices. */
const ROOM_EV = 0.75;

/**
 * @param start what stands on the camera, or what may be begun with
 * @param stacks that a filter change may lead to; absent: any
 */
export function liveCourse(
  lattice: Lattice,
  grid: Grid,
  target: ArrayLike<number>,
  start: State,
  intervalS: number,
  weights: LiveWeights,
  stacks?: ReadonlySet<number>,
): Course {
  const { stops, stepsPerStop, kitLevels } = lattice;
  const funnel = funnelOf(lattice, grid, target, start, Math.max(lattice.toleranceEv, ROOM_EV));
  const band = bandsOf({ max: funnel.low, min: funnel.high }, stops, 0, stepsPerStop, kitLevels);
  // Nothing is cut at the tolerance: what may be set is what may be left again.
  const freeAfter = (filter: boolean) => bandsLater(band, grid, stops.length, filter);
  const landing = freeAfter(true);
  if (stacks !== undefined) {
    landing.count.forEach((_, at, count) => {
      if (!stacks.has(at % stops.length)) count[at] = 0;
    });
  }
  const errors = new LiveErrors(lattice, grid, band, target, intervalS, weights);
  return { lattice, grid, band, hold: freeAfter(false), landing, errors };
}

/** The bands of the segments through which what is set at each segment is held. */
function bandsLater(band: Bands, grid: Grid, stackCount: number, filter: boolean): Bands {
  const low = new Int32Array(band.low.length);
  const count = new Int32Array(band.count.length);
  for (let k = 0; k < grid.at.length - 1; k++) {
    const free = heldThrough(grid, k, filter);
    if (free < 0) continue;
    for (let stack = 0; stack < stackCount; stack++) {
      low[k * stackCount + stack] = band.low[free * stackCount + stack];
      count[k * stackCount + stack] = band.count[free * stackCount + stack];
    }
  }
  return { low, count, tallest: band.tallest };
}
