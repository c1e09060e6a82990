/**
 * The schedule as a person performs it.
 *
 * @module @evenfall/core/cues
 */

export { cuesOf, stackText } from '../cues.js';
export type { Setting } from '../kit.js';
export type { Control, PlanChange, PlanCue, PlanFrame } from '../plan-format.js';
