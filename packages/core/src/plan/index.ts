/**
 * The whole way, from a shoot to its plan, and the steps in between that know a shoot.
 *
 * @module @evenfall/core/plan
 */

export { frameAt, planTimes } from './at-time.js';
export { type PlanChoice, type PlanChoices, planChoices } from './choices.js';
export { changesByClock, cuesOf, type Dials } from './cues.js';
export {
  type Evening,
  type EveningInfeasible,
  type EveningLight,
  type EveningMade,
  type Evenings,
  planEvenings,
} from './evenings.js';
export { planExposures } from './exposures.js';
export { type Forecast, forecastLight } from './forecast.js';
export type { CueNote, CueNoteFacts, ExposureNote, NoteFacts } from './note.js';
export { lightTable, type PlanOptions, planRemedies, planShoot } from './plan.js';
export type { KitChange, RemedyChange } from './remedies/change.js';
export { type LitMoment, type Steepest, steepestMinute } from './steepest.js';
export type { StopSignal } from './stop.js';
export { rampProblemOf, targetsOf } from './targets.js';
export { tightestOf } from './tightest.js';
export type {
  BelowHalfClick,
  ClipCut,
  Control,
  FrameShort,
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
  RemedyLeaves,
  ShootChange,
  WhyInfeasible,
} from './types.js';
