// A shoot that has no plan, followed all the same: the ramp that stays as close to the light as the kit can, tolerance a
// price instead of a limit.

import { rampOfPlan } from '../plan/made.js';
import { prepare } from '../plan/prepare.js';
import type { Plan, PlanMade } from '../plan/types.js';
import { bulbEv, bulbStep } from '../ramp/bulb/model.js';
import { weightsOf } from '../ramp/lattice.js';
import { type LiveKit, liveKit, planAhead } from '../ramp/live/live.js';
import { exposureEv, type State, shutterOf } from '../ramp/moves.js';
import type { RampFrame, RampProblem } from '../ramp/problem.js';
import type { Way } from '../ramp/way.js';
import type { Shoot } from '../shoot/shoot.js';

/** Our choice: nothing that can be avoided is worth a frame beyond tolerance. */
const BEYOND_TOLERANCE = 2000;

/**
 * A plan, or where there is none the closest to one.
 *
 * @throws RangeError on a shoot without a span, or in whose interval no shutter time fits
 */
export function planOrClosest(plan: Plan): PlanMade {
  if (plan.kind !== 'infeasible') return plan;
  const { reason, text } = plan.infeasible;
  if (reason === 'no-span' || reason === 'no-time') throw new RangeError(`nothing to follow: ${text}`);
  return closestPlan(plan.shoot, plan.clocksBack);
}

function closestPlan(shoot: Shoot, clocksBack: PlanMade['clocksBack']): PlanMade {
  const prepared = prepare(shoot);
  if (prepared.kind === 'no-span') throw new RangeError(`nothing to follow: ${prepared.why}`);
  const { problem } = prepared;
  const { error } = weightsOf(problem);
  const prices = {
    errorNow: error,
    errorAhead: error,
    fadeS: 1,
    beyondTolerance: BEYOND_TOLERANCE,
    hysteresisPerS: 0,
  };
  const live = liveKit(problem, prices);
  const way = planAhead(live, {
    target: problem.targetEv100,
    framesLeft: problem.targetEv100.length,
    present: undefined,
    waitFrames: 0,
    filterChangesLeft: shoot.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY,
  });
  const frames = framesOf(live, problem, way);
  const { summary, ...rest } = rampOfPlan(shoot, prepared, { kind: 'ok', frames, objective: 0 });
  return {
    format: 'evenfall-plan/1',
    kind: 'ok',
    shoot,
    // How closely it follows is told by the frames that the kit can follow.
    summary: { ...summary, rmsErrorEv: rmsWithin(frames, shoot.limits.toleranceEv) },
    events: [],
    ...rest,
    notes: [],
    ...(clocksBack && { clocksBack }),
  };
}

function framesOf(
  { lattice, bulb }: LiveKit,
  { targetEv100 }: RampProblem,
  { start, cues }: Way,
): RampFrame[] {
  let state: State = start;
  let next = 0;
  let affectedUntil = 0;
  return Array.from(targetEv100, (target, i) => {
    for (; cues[next] !== undefined && cues[next]!.frame <= i; next++) {
      state = cues[next]!.to;
      if (cues[next]!.filter) affectedUntil = i + lattice.affectedFrames;
    }
    const shutterStep =
      bulb === undefined ? shutterOf(lattice, state) : bulbStep(lattice, bulb, state, target);
    const settingEv100 =
      bulb === undefined ? exposureEv(lattice, state) : bulbEv(lattice, state, shutterStep);
    return {
      shutterStep,
      isoStep: lattice.isoMin + state.iso,
      apertureStep: lattice.apertureMin + state.aperture,
      stack: state.stack,
      settingEv100,
      errorEv: settingEv100 - target,
      affected: i < affectedUntil,
    };
  });
}

function rmsWithin(frames: readonly RampFrame[], toleranceEv: number): number {
  const errors = frames
    .filter(({ affected, errorEv }) => !affected && Math.abs(errorEv) <= toleranceEv)
    .map(({ errorEv }) => errorEv);
  return errors.length === 0
    ? toleranceEv
    : Math.sqrt(errors.reduce((sum, ev) => sum + ev * ev, 0) / errors.length);
}
