/**
 * The whole way, from a shoot to its plan, and the steps in between that know a shoot.
 *
 * @module @evenfall/core/plan
 */

export { type PlanChoice, planChoices } from '../choices.js';
export { type Forecast, forecastLight } from '../forecast.js';
export type { Kit, Setting } from '../kit.js';
export { lightTable, planShoot } from '../plan.js';
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
} from '../plan-format.js';
export { eveningsHeldShare, type Reserve, reserveOf } from '../reserve.js';
export { shootGap, tightestOf } from '../room.js';
export type {
  Camera,
  CloudWord,
  Crew,
  Direction,
  Facing,
  LampsWord,
  Limits,
  Look,
  NightWord,
  Place,
  ReadingEntry,
  SceneWords,
  Shoot,
  Span,
  SurfaceWord,
} from '../shoot.js';
export { clipLengthS, frameCountOf, longestTimeInside, type Supplies, suppliesFor } from '../shoot.js';
export { type ShootSpan, shootSpan } from '../span.js';
export { rampProblemOf, targetsOf } from '../targets.js';
