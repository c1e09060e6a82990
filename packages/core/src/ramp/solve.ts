// A ramp problem in; the optimum, or why there is none, out.

import { bulbRampExists, solveBulb } from './bulb/solve.js';
import { objectiveOf } from './cost.js';
import { costToGo } from './exact/cost-to-go.js';
import { HeldErrors } from './exact/held.js';
import { firstUnmet } from './exact/reach.js';
import { type CostToGo, giveBack } from './exact/table.js';
import { cheapestStart, rollOut, type Step } from './exact/traceback.js';
import { beyondKit, explain, noShutterFits } from './infeasible.js';
import { type Lattice, latticeOf } from './lattice.js';
import { shutterOf } from './moves.js';
import type { RampFrame, RampProblem, RampResult } from './problem.js';

/**
 * The cheapest ramp under every hard constraint: one setting a frame, exact. The same problem always gives
 * the same ramp. Impossible problems are answers, with the first frame that cannot be met. Source:
 * docs/ramp.md.
 *
 * @param problem targets, kit, limits and prices
 * @returns the optimum and its cost, or why there is none
 * @throws RangeError on numbers no ramp problem can have: no frames, a NaN target, a gap as long as the
 *   interval
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
  const lattice = latticeOf(problem);
  if (lattice.shutterMin > lattice.shutterMax) return noShutterFits(lattice);
  const limit = problem.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY;
  if (problem.kit.bulb) {
    const path = solveBulb(problem, lattice);
    if (path.kind === 'ok') return { ...path, objective: objectiveOf(problem, path.frames) };
    return explain(lattice, path.frame, path.excessEv, limit);
  }
  const frames = solveDials(lattice, limit);
  if (frames !== undefined) return { kind: 'ok', frames, objective: objectiveOf(problem, frames) };
  const { frame, excessEv } = firstUnmet(lattice, limit);
  return explain(lattice, frame, excessEv, limit);
}

/** The optimum over dial steps. A limit on filter changes costs extra tables only where it binds. */
function solveDials(lattice: Lattice, limit: number): RampFrame[] | undefined {
  const held = new HeldErrors(lattice.target);
  const free = costToGo(lattice, held, 'same');
  const path = cheapestPath(lattice, held, free);
  giveBack(free);
  if (path === undefined) return undefined;
  if (filterChanges(path) <= limit) return framesOf(lattice, path);

  const tables: CostToGo[] = [];
  for (let left = 0; left <= limit; left++) tables.push(costToGo(lattice, held, tables.at(-1)));
  const limitedPath = cheapestPath(lattice, held, tables);
  return limitedPath && framesOf(lattice, limitedPath);
}

/** The path the costs to go lead along, or undefined where no ramp exists. */
function cheapestPath(
  lattice: Lattice,
  held: HeldErrors,
  tables: CostToGo | readonly CostToGo[],
): Step[] | undefined {
  const start = cheapestStart(lattice, 'length' in tables ? tables[tables.length - 1] : tables);
  return start && rollOut(lattice, held, tables, start);
}

function filterChanges(path: readonly Step[]): number {
  return path.filter(({ state }, i) => i > 0 && state.stack !== path[i - 1].state.stack).length;
}

function framesOf(lattice: Lattice, path: readonly Step[]): RampFrame[] {
  return path.map(({ state, affected }, i) => {
    const settingEv100 = state.level / lattice.stepsPerStop + lattice.stops[state.stack];
    return {
      shutterStep: shutterOf(lattice, state),
      isoStep: lattice.isoMin + state.iso,
      apertureStep: lattice.apertureMin + state.aperture,
      stack: state.stack,
      settingEv100,
      errorEv: settingEv100 - lattice.target[i],
      affected,
    };
  });
}

/**
 * Whether any ramp exists: the verdict of {@link solveRamp} without the optimum, and sooner.
 *
 * @param problem targets, kit and limits; prices are of no account
 * @returns true where `solveRamp` answers `ok`
 * @throws RangeError on numbers no ramp problem can have, as `solveRamp`
 * @example
 * ```ts
 * import { type RampProblem, rampExists } from '@evenfall/core';
 *
 * const problem: RampProblem = {
 *   targetEv100: [12, 9],
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
 *   limits: { toleranceEv: 0.5, largestStepEv: 1, secondsBetweenCues: 0, framesLostPerFilterChange: 0 },
 * };
 * // Three stops in one frame, a stop a cue and half a stop of tolerance on either side: no.
 * rampExists(problem); // → false
 * rampExists({ ...problem, targetEv100: [12, 11] }); // → true
 * ```
 */
export function rampExists(problem: RampProblem): boolean {
  const lattice = latticeOf(problem);
  const limit = problem.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY;
  if (lattice.shutterMin > lattice.shutterMax) return false;
  if (problem.kit.bulb) return bulbRampExists(problem, lattice);
  return !beyondKit(lattice) && firstUnmet(lattice, limit).frame === lattice.frameCount;
}
