// A ramp problem in; the optimum, or why there is none, out.

import { type BulbCourse, bulbEv, bulbModel, bulbShutter, bulbStep } from './bulb/model.js';
import { bulbWay } from './bulb/optimum.js';
import { firstUnmetByBulb } from './bulb/reach.js';
import { byDials, rampAlong } from './by-dials.js';
import { firstUnmet } from './exact/reach.js';
import { everyFrame } from './grid.js';
import { beyondKit, infeasibleAt, noShutterFits } from './infeasible.js';
import { type Lattice, latticeOf } from './lattice.js';
import type { RampProblem, RampResult } from './problem.js';
import { checkProblem } from './problem-check.js';

/**
 * The cheapest ramp under every hard constraint: one setting a frame, exact. The same problem always gives
 * the same ramp. Impossible problems are answers, with the first frame that cannot be met.
 *
 * @param problem targets, kit, limits and prices
 * @returns the optimum and its cost, or why there is none
 * @throws RangeError on what no ramp problem can have, by name: no frames, a NaN target or price, a mark where a step belongs,
 *   ends that are swapped, an unknown word or key, a gap as long as the interval
 * @example
 * ```ts
 * import { type RampProblem, solveRamp } from '@evenfall/core';
 *
 * // A third of a stop darker each frame, and cues that cost nothing: the shutter follows click by click.
 * const problem: RampProblem = {
 *   targetEv100: [12, 12 - 1 / 3, 12 - 2 / 3, 11],
 *   intervalS: 8,
 *   direction: 'dusk',
 *   gapS: 1,
 *   darkFrame: false,
 *   crew: 'rig',
 *   kit: {
 *     stepsPerStop: 3,
 *     shutter: { longestStep: -6, shortestStep: 36 },
 *     iso: { lowestStep: 0, highestStep: 0 },
 *     aperture: { widestStep: 12, narrowestStep: 12 },
 *     stackStops: [0],
 *     bulb: false,
 *   },
 *   limits: { toleranceEv: 0.5, largestStepEv: 1 / 3, secondsBetweenCues: 0, framesLostPerFilterChange: 0 },
 *   weights: { shutterCue: 0 },
 * };
 * const ramp = solveRamp(problem);
 * // EV 12 at f/4 is 1/256 s, eight stops of three clicks from 1 s.
 * ramp.kind === 'ok' && ramp.frames.map(({ shutterStep }) => shutterStep); // → [24, 23, 22, 21]
 * ```
 */
export function solveRamp(problem: RampProblem): RampResult {
  checkProblem(problem);
  return solved(problem);
}

/** The same of a problem that is right. */
export function solved(problem: RampProblem): RampResult {
  const lattice = latticeOf(problem);
  if (lattice.shutterMin > lattice.shutterMax) return noShutterFits(lattice);
  const limit = problem.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY;
  if (problem.kit.bulb) {
    const model = bulbModel(bulbCourse(problem, lattice));
    const way = bulbWay(model, undefined, limit);
    if (way !== undefined) {
      return rampAlong(problem, lattice, way, (state, targetEv) => {
        const shutterStep = bulbStep(lattice, model.shutter, state, targetEv);
        return { shutterStep, settingEv100: bulbEv(lattice, state, shutterStep) };
      });
    }
    const { frame, excessEv } = firstUnmetByBulb(model, limit);
    return infeasibleAt(lattice, frame, excessEv, limit);
  }
  const ramp = byDials(problem, lattice);
  if (ramp !== undefined) return ramp;
  const { frame, excessEv } = firstUnmet(lattice, limit);
  return infeasibleAt(lattice, frame, excessEv, limit);
}

/** A plan as a course for a shutter timed freely: a cue may come at every frame, and none may be out of tolerance. */
function bulbCourse(problem: RampProblem, lattice: Lattice): BulbCourse {
  return {
    kit: lattice,
    shutter: bulbShutter(problem),
    grid: everyFrame(lattice.frameCount, lattice),
    target: lattice.target,
    errors: { squaredStop: () => lattice.price.error, beyondTolerance: Number.POSITIVE_INFINITY },
  };
}

/**
 * Whether any ramp exists: the verdict of {@link solveRamp} without the optimum, and sooner.
 *
 * @param problem targets, kit and limits; prices do not matter
 * @returns true where `solveRamp` answers `ok`
 * @throws RangeError on numbers no ramp problem can have, as `solveRamp`
 */
export function rampExists(problem: RampProblem): boolean {
  const lattice = latticeOf(problem);
  const limit = problem.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY;
  if (lattice.shutterMin > lattice.shutterMax) return false;
  if (problem.kit.bulb) {
    // A time between two marks may reach further than the last of them.
    if (beyondKit(lattice, 1 / lattice.stepsPerStop)) return false;
    return bulbWay(bulbModel(bulbCourse(problem, lattice)), undefined, limit) !== undefined;
  }
  return !beyondKit(lattice) && firstUnmet(lattice, limit).frame === lattice.frameCount;
}
