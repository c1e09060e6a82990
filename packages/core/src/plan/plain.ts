// The plan that most shoots need, in a third less code: for a page that wants its first plan soon.

import { solveRamp } from '../ramp/solve.js';
import type { Shoot } from '../shoot/shoot.js';
import { shootSpan } from '../shoot/span.js';
import { opticsOf, shutterFits } from '../shoot/time-left.js';
import { forecastLight } from './forecast.js';
import { madePlan } from './made.js';
import { rampProblemOf } from './targets.js';
import type { PlanMade } from './types.js';

/**
 * The same as `planShoot` where the shoot has a plan, no moves, and no lens that stars could trail under; undefined
 * where there is more to be said.
 *
 * @throws RangeError on a shoot that `readShoot` would refuse
 */
export function plainPlan(shoot: Shoot): PlanMade | undefined {
  if (shoot.moves.length > 0 || opticsOf(shoot.camera) !== undefined) return undefined;
  const span = shootSpan(shoot);
  if (span.kind === 'no-span') return undefined;
  const forecast = forecastLight(shoot, span.times);
  const { problem, kit } = rampProblemOf(shoot, forecast);
  if (!shutterFits(problem)) return undefined;
  const ramp = solveRamp(problem);
  return ramp.kind === 'infeasible' ? undefined : madePlan({ shoot, forecast, problem, kit, ramp });
}
