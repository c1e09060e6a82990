// Which exposures a live solve looks at: a band around the targets that opens as far as the camera now stands
// off and closes as fast as the dials can follow. Standing still or following is always inside, so there is
// always an answer.

import type { Grid } from '../grid.js';
import type { Lattice } from '../lattice.js';
import { exposureEv, type State, shutterOf } from '../moves.js';

/** Lowest and highest EV by segment of the grid. */
export interface Funnel {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * @param target EV a frame, from the next frame on
 * @param roomEv half the band's height where nothing is off
 */
export function funnelOf(
  kit: Lattice,
  grid: Grid,
  target: ArrayLike<number>,
  start: State,
  roomEv: number,
): Funnel {
  const segments = grid.at.length - 1;
  const low = new Float64Array(segments);
  const high = new Float64Array(segments);
  let state = start;
  let free = 0; // segment from which the follower may move again
  for (let k = 0; k < segments; k++) {
    const before = exposureEv(kit, state);
    if (grid.at[k + 1] === grid.at[k]) {
      low[k] = high[k] = before;
      continue;
    }
    const first = target[grid.at[k]];
    const last = target[grid.at[k + 1] - 1];
    if (k >= free) {
      const next = towards(kit, state, (first + last) / 2);
      if (next !== state) free = grid.freeAfterCue[k];
      state = next;
    }
    // The follower arrives at one setting and may leave for another at once: both must be inside.
    const after = exposureEv(kit, state);
    low[k] = Math.min(Math.min(first, last) - roomEv, before, after);
    high[k] = Math.max(Math.max(first, last) + roomEv, before, after);
  }
  return { low, high };
}

/** The setting one cue of shutter or ISO nearer to a target; the same state where none is. */
function towards(kit: Lattice, state: State, targetEv: number): State {
  const { stepsPerStop, stops, largestStep, shutterMin, shutterMax, isoCount } = kit;
  const off = Math.round((targetEv - stops[state.stack]) * stepsPerStop - state.level);
  if (off === 0) return state;
  const wanted = Math.min(largestStep, Math.abs(off));
  const shutter = shutterOf(kit, state);
  // Up is less exposure: a shorter time, or a lower ISO.
  const byShutter = Math.min(wanted, off > 0 ? shutterMax - shutter : shutter - shutterMin);
  const byIso = Math.min(wanted, off > 0 ? state.iso : isoCount - 1 - state.iso);
  const sign = Math.sign(off);
  if (byShutter >= byIso) return byShutter <= 0 ? state : { ...state, level: state.level + sign * byShutter };
  return { ...state, level: state.level + sign * byIso, iso: state.iso - sign * byIso };
}
