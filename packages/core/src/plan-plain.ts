// The plan that most shoots need, in a third less code: for a page that wants its first plan soon.

import { forecastLight } from './forecast.js';
import type { PlanMade } from './plan-format.js';
import { madePlan } from './plan-made.js';
import { solveRamp } from './ramp/solve.js';
import { hasRoom, opticsOf } from './room.js';
import type { Shoot } from './shoot.js';
import { shootSpan } from './span.js';
import { rampProblemOf } from './targets.js';

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
  if (!hasRoom(problem)) return undefined;
  const ramp = solveRamp(problem);
  return ramp.kind === 'infeasible' ? undefined : madePlan({ shoot, forecast, problem, kit, ramp });
}
