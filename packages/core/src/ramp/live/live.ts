// Re-planning from the setting now on the camera: the cheapest ramp over the frames ahead, with soft tolerance,
// so that there always is one. What it may do is what a plan may do; what it pays differs, see LiveWeights.

import { longestTimeInside } from '../../footage/frames.js';
import { planBulb } from '../bulb/live.js';
import type { BulbShutter } from '../bulb/model.js';
import { type Lattice, latticeOf, weightsOf } from '../lattice.js';
import { onDials, type State } from '../moves.js';
import type { RampProblem } from '../problem.js';
import { type LiveCosts, type LiveModel, liveCosts } from './costs.js';
import { errorWeight, type LiveWeights, stackErrors } from './errors.js';
import { exposureEv, funnelOf } from './funnel.js';
import { gridOf } from './grid.js';
import { cheapestBegin, cuesFrom, type LiveCue, leadsOn } from './path.js';

export type { LiveWeights } from './errors.js';
export type { LiveCue } from './path.js';

/** Stops off the target that are looked at whatever the tolerance: waiting out a passing change must be among the choices. */
const ROOM_EV = 0.75;

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
}

export interface LiveAnswer {
  readonly start: State; // `present`, or what to begin with
  readonly cues: readonly LiveCue[]; // in order; the first may be at frame 0
}

/** @throws RangeError on a problem no ramp can have, or a kit whose shortest time does not fit the interval */
export function liveKit(problem: RampProblem, weights: LiveWeights): LiveKit {
  const { kit, intervalS } = problem;
  const lattice = latticeOf({ ...problem, targetEv100: [0] });
  if (lattice.shutterMin > lattice.shutterMax) throw new RangeError('no shutter time fits the interval');
  // The interval may end a free shutter between two marks of the dial.
  const insideStep = -kit.stepsPerStop * Math.log2(longestTimeInside(intervalS, problem));
  const bulb: BulbShutter | undefined = kit.bulb
    ? {
        longestStep: Math.max(kit.shutter.longestStep, insideStep),
        shortestStep: kit.shutter.shortestStep,
        weights: weightsOf(problem),
      }
    : undefined;
  return { lattice, bulb, intervalS, weights };
}

/** The cheapest ramp ahead. There always is one: at worst it follows as fast as the dials may turn. */
export function planAhead(kit: LiveKit, request: LiveRequest): LiveAnswer {
  const { target, framesLeft, present, waitFrames, filterChangesLeft } = request;
  const { lattice, bulb, intervalS, weights } = kit;
  const start = present ?? nearest(lattice, target[0]);
  const from = present === undefined ? 0 : waitFrames;
  if (from >= target.length) return { start, cues: [] };

  const { spacing, lost } = lattice;
  const grid = gridOf(from, target.length, framesLeft, { spacing, lost, intervalS });
  if (bulb !== undefined) {
    const model = { kit: lattice, shutter: bulb, grid, target, intervalS, weights };
    return planBulb(model, present, filterChangesLeft);
  }
  const funnel = funnelOf(lattice, grid, target, start, Math.max(lattice.toleranceEv, ROOM_EV));
  // Errors far ahead weigh less; so does what a cue must save there.
  const perFrame = (weights.hysteresisPerS * intervalS) / errorWeight(grid, 0, intervalS, weights);
  const waits = (k: number) =>
    perFrame * errorWeight(grid, k, intervalS, weights) * (grid.at[k + 1] - grid.at[k]);
  return plan(true) ?? plan(false) ?? { start, cues: [] };

  /** Undefined where what is looked at holds no way: a filter that cannot come off as supposed. */
  function plan(filtersComeOff: boolean): LiveAnswer | undefined {
    const range = { presentIso: start.iso, filtersComeOff: filtersComeOff && filterChangesLeft > 0 };
    const errors = stackErrors(lattice, grid, funnel, target, { intervalS, weights, ...range });
    const model: LiveModel = { kit: lattice, grid, errors };
    // One table where the free optimum keeps the limit, else one for each number of changes left.
    const free = liveCosts(model, filterChangesLeft > 0 ? 'same' : undefined);
    const answer = follow(model, [free], true);
    if (answer === undefined) return undefined;
    if (answer.cues.filter(({ filter }) => filter).length <= filterChangesLeft) return answer;
    const tables: LiveCosts[] = [];
    for (let left = 0; left <= filterChangesLeft; left++) tables.push(liveCosts(model, tables.at(-1)));
    return follow(model, tables, false);
  }

  function follow(model: LiveModel, tables: readonly LiveCosts[], isFree: boolean): LiveAnswer | undefined {
    const table = tables[tables.length - 1];
    const begin = present ?? cheapestBegin(model, table);
    const first = present === undefined ? 1 : 0;
    if (begin === undefined || !leadsOn(model, table, begin, first)) return undefined;
    return { start: begin, cues: cuesFrom(model, tables, isFree, begin, first, waits) };
  }
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
