/**
 * The whole way, from a shoot to its plan, and the steps in between that know a shoot.
 *
 * @module @evenfall/core/plan
 */

export { type PlanChoice, planChoices } from './choices.js';
export { changesByClock, cuesOf, stackText } from './cues.js';
export { type Forecast, forecastLight } from './forecast.js';
export { lightTable, planShoot } from './plan.js';
export { eveningsHeldShare, type Reserve, reserveOf } from './reserve.js';
export { rampProblemOf, targetsOf } from './targets.js';
export { tightestOf } from './tightest.js';
export type {
  Control,
  LightRow,
  LightTable,
  Plan,
  PlanChange,
  PlanCue,
  PlanEvent,
  PlanFrame,
  PlanInfeasible,
  PlanMade,
  PlanMove,
  PlanNote,
  PlanSummary,
  Remedy,
  ShootChange,
} from './types.js';
