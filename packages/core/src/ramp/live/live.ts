// Re-planning from the setting now on the camera: the cheapest ramp over the frames ahead, with soft tolerance,
// so that there always is one. What it may do is what a plan may do; what it pays differs, see LiveWeights.

import { type BulbShutter, bulbModel, bulbShutter } from '../bulb/model.js';
import { bulbWay } from '../bulb/optimum.js';
import { dialWay } from '../exact/optimum.js';
import { frameShare, type Lattice, latticeOf } from '../lattice.js';
import { exposureEv, onDials, type State } from '../moves.js';
import type { RampProblem } from '../problem.js';
import type { Way } from '../way.js';
import { liveCourse } from './course.js';
import { errorWeight, type LiveWeights } from './errors.js';
import { gridAhead } from './grid.js';

export type { LiveWeights } from './errors.js';

/** A kit with limits and prices, laid out once for a whole evening. */
export interface LiveKit {
  readonly lattice: Lattice; // of the kit alone: its targets and bands are not used
  readonly bulb: BulbShutter | undefined; // where the shutter is timed freely; a state's level then says nothing
  readonly intervalS: number;
  readonly weights: LiveWeights;
}

export interface LiveRequest {
  /** EV a frame, from the next frame to the last one looked at; at least one. */
  readonly target: ArrayLike<number>;
  /** Frames from the next to the shoot's last, both counted; not below target.length. */
  readonly framesLeft: number;
  /** On the camera now; undefined before the first frame, where any setting may be begun with. */
  readonly present: State | undefined;
  /** Frames that must pass before a cue may come: 0 where the next frame may bring one. None where any may be begun with. */
  readonly waitFrames: number;
  readonly filterChangesLeft: number; // Infinity: no limit
  /** Stacks that a filter change may lead to; absent: any. Not where the shutter is free. */
  readonly stacks?: ReadonlySet<number> | undefined;
  /**
   * Where the first cue comes at frame 0 and may go anywhere, all controls at once: the filters that were told last and not
   * put on. Not where the shutter is free.
   */
  readonly catchUp?: { readonly stack: number } | undefined;
}

/** @throws RangeError on a problem no ramp can have, or a kit whose shortest time does not fit the interval */
export function liveKit(problem: RampProblem, weights: LiveWeights): LiveKit {
  const { kit, intervalS } = problem;
  const lattice = latticeOf({ ...problem, targetEv100: [0] });
  if (lattice.shutterMin > lattice.shutterMax) throw new RangeError('no shutter time fits the interval');
  const bulb = kit.bulb ? bulbShutter(problem) : undefined;
  return { lattice, bulb, intervalS, weights };
}

/** The cheapest ramp ahead. There always is one: at worst it follows as fast as the dials may turn. */
export function planAhead(kit: LiveKit, request: LiveRequest): Way {
  const { target, framesLeft, present, waitFrames, filterChangesLeft, stacks, catchUp } = request;
  const { lattice, bulb, intervalS, weights } = kit;
  const start = present ?? nearest(lattice, target[0]);
  const from = present === undefined || catchUp !== undefined ? 0 : waitFrames;
  if (from >= target.length) return { start, cues: [] };

  const { spacing, affectedFrames } = lattice;
  const begun = present !== undefined;
  const grid = gridAhead(from, target.length, framesLeft, { spacing, affectedFrames, intervalS, begun });
  const weightAt = (k: number) => errorWeight(grid, k, intervalS, weights);
  // Errors far ahead weigh less; so does what a cue must save there.
  const perFrame = (weights.hysteresisPerS * intervalS) / weightAt(begun ? 1 : 0);
  const waits = (k: number) => perFrame * weightAt(k) * (grid.at[k + 1] - grid.at[k]);
  let way: Way | undefined;
  if (bulb === undefined) {
    // Whoever may go anywhere goes to where the light is: what lies between is not looked at.
    const opens = catchUp === undefined ? start : nearest(lattice, target[0]);
    const course = liveCourse(lattice, grid, target, opens, intervalS, weights, stacks);
    way = dialWay(course, present, filterChangesLeft, waits, catchUp?.stack);
  } else {
    const errors = {
      squaredStop: weightAt,
      beyondTolerance: frameShare(intervalS) * weights.beyondTolerance,
    };
    const model = bulbModel({ kit: lattice, shutter: bulb, grid, target, errors });
    way = bulbWay(model, present, filterChangesLeft);
  }
  return way ?? { start, cues: [] };
}

/** The setting that comes nearest to an exposure; of equals the weakest stack and the lowest ISO. */
function nearest(kit: Lattice, targetEv: number): State {
  let best: State | undefined;
  let least = Number.POSITIVE_INFINITY;
  const lowest = kit.apertureMin + kit.shutterMin - (kit.isoMin + kit.isoCount - 1);
  const highest = kit.apertureMin + kit.apertureCount - 1 + kit.shutterMax - kit.isoMin;
  for (let stack = 0; stack < kit.stops.length; stack++) {
    if (kit.startStack !== undefined && stack !== kit.startStack) continue;
    const wanted = Math.round((targetEv - kit.stops[stack]) * kit.stepsPerStop);
    const level = Math.min(highest, Math.max(lowest, wanted));
    for (let aperture = 0; aperture < kit.apertureCount; aperture++) {
      for (let iso = 0; iso < kit.isoCount; iso++) {
        const state = { stack, aperture, level, iso };
        const off = Math.abs(exposureEv(kit, state) - targetEv);
        if (off < least - 1e-9 && onDials(kit, state)) {
          best = state;
          least = off;
        }
      }
    }
  }
  if (best === undefined) throw new RangeError('the kit has no setting to begin with');
  return best;
}
