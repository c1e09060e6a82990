// From light and look to the ramp's targets: the wall between the sky and the camera.

import { aNumber, groupWith, hold, listOf } from '../hold.js';
import { lookOffsetEv } from '../light/look.js';
import type { RampProblem } from '../ramp/problem.js';
import { kitOf, type NamedKit } from '../shoot/kit.js';
import type { Shoot } from '../shoot/shoot.js';
import { checkShoot, lookCheck } from '../shoot/shoot-check.js';
import { shootGap } from '../shoot/time-left.js';
import type { Forecast } from './forecast.js';

/** What {@link forecastLight} gives, as far as targets need it. */
const FORECAST = groupWith({
  sceneEv100: listOf(aNumber, 1),
  sky: listOf(groupWith({ sunAltitudeDeg: aNumber }), 1),
});

/**
 * EV at ISO 100 that each frame should be exposed for: the scene less the look's offset.
 *
 * @param shoot its look
 * @param forecast its light, from {@link forecastLight}
 * @returns one entry a frame
 * @throws RangeError on a look table with no row
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { forecastLight, shootSpan, targetsOf } from '@evenfall/core';
 *
 * const span = shootSpan(shoot);
 * if (span.kind === 'no-span') throw new Error(span.why);
 * const forecast = forecastLight(shoot, span.times);
 * // With the sun up nothing is held back; a look without a night's offset holds nothing back at all.
 * targetsOf(shoot, forecast)[0] === forecast.sceneEv100[0]; // → true
 * targetsOf({ look: { nightEv: 0 } }, forecast)[1028] === forecast.sceneEv100[1028]; // → true
 * ```
 */
export function targetsOf(shoot: Pick<Shoot, 'look'>, forecast: Forecast): Float64Array {
  hold('shoot', shoot, groupWith({ look: lookCheck }));
  hold('forecast', forecast, FORECAST);
  return targetsUnder(shoot, forecast);
}

function targetsUnder({ look }: Pick<Shoot, 'look'>, { sceneEv100, sky }: Forecast): Float64Array {
  return sceneEv100.map((ev, i) => ev - lookOffsetEv(look, sky[i].sunAltitudeDeg));
}

/**
 * A shoot under a forecast, as the ramp problem and the kit its answer is read with.
 *
 * @param shoot from {@link readShoot}
 * @param forecast its light, from {@link forecastLight}
 * @returns `problem`, for {@link solveRamp}, and `kit`
 * @throws RangeError on a shoot that `readShoot` would refuse
 * @example
 * ```ts
 * // With the shoot and plan of planShoot's example.
 * import { forecastLight, rampProblemOf, shootSpan, solveRamp } from '@evenfall/core';
 *
 * const span = shootSpan(shoot);
 * if (span.kind === 'no-span') throw new Error(span.why);
 * const { problem } = rampProblemOf(shoot, forecastLight(shoot, span.times));
 * const ramp = solveRamp(problem);
 * ramp.kind === 'ok' && ramp.objective === plan.summary.objective; // → true
 * ```
 */
export function rampProblemOf(shoot: Shoot, forecast: Forecast): { problem: RampProblem; kit: NamedKit } {
  checkShoot(shoot);
  hold('forecast', forecast, FORECAST);
  return problemOver(shoot, forecast);
}

/** The same of a shoot that is right. */
export function problemOver(shoot: Shoot, forecast: Forecast): { problem: RampProblem; kit: NamedKit } {
  const kit = kitOf(shoot);
  return { kit, problem: problemFrom(shoot, kit, targetsUnder(shoot, forecast)) };
}

/** A shoot with targets known, one a frame, as the ramp problem. */
export function problemFrom(shoot: Shoot, kit: NamedKit, targetEv100: ArrayLike<number>): RampProblem {
  const { camera, direction, intervalS, crew, limits, weights } = shoot;
  return {
    targetEv100,
    intervalS,
    direction,
    gapS: shootGap(shoot, targetEv100.length).gapS,
    darkFrame: camera.darkFrame,
    ...(camera.bracket === undefined ? {} : { bracket: camera.bracket }),
    crew,
    kit: kit.ramp,
    limits,
    ...(weights === undefined ? {} : { weights }),
  };
}
