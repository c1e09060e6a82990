// The cheapest ramp of a camera with dials. A file of its own: the first plan of a page needs neither a shutter that is
// timed freely nor the reason why there is no ramp.

import { objectiveOf } from './cost.js';
import { dialWay } from './exact/optimum.js';
import { planCourse } from './exact/plan-course.js';
import type { Lattice } from './lattice.js';
import { exposureEv, type State, shutterOf } from './moves.js';
import type { RampFrame, RampProblem, RampResult } from './problem.js';
import type { Way } from './way.js';

type Ramp = Extract<RampResult, { kind: 'ok' }>;

/** What the camera stands at in a state: a state of dials says it, a shutter that is timed freely follows the target. */
type Standing = (state: State, targetEv: number) => Pick<RampFrame, 'shutterStep' | 'settingEv100'>;

/** Undefined where there is none. The lattice is the problem's, with room for a shutter. */
export function byDials(problem: RampProblem, lattice: Lattice): Ramp | undefined {
  const limit = problem.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY;
  const way = dialWay(planCourse(lattice), undefined, limit);
  if (way === undefined) return undefined;
  return rampAlong(problem, lattice, way, (state) => ({
    shutterStep: shutterOf(lattice, state),
    settingEv100: exposureEv(lattice, state),
  }));
}

/** The frames along a way, and what they cost. */
export function rampAlong(
  problem: RampProblem,
  lattice: Lattice,
  { start, cues }: Way,
  standing: Standing,
): Ramp {
  let state = start;
  let next = 0; // cue
  let judged = 0; // first frame that the last filter change does not affect
  const frames = Array.from(lattice.target, (targetEv, frame): RampFrame => {
    const cue = cues[next];
    if (cue?.frame === frame) {
      state = cue.to;
      next++;
      if (cue.filter) judged = frame + lattice.affectedFrames;
    }
    const { shutterStep, settingEv100 } = standing(state, targetEv);
    return {
      shutterStep,
      isoStep: lattice.isoMin + state.iso,
      apertureStep: lattice.apertureMin + state.aperture,
      stack: state.stack,
      settingEv100,
      errorEv: settingEv100 - targetEv,
      affected: frame < judged,
    };
  });
  return { kind: 'ok', frames, objective: objectiveOf(problem, frames) };
}
