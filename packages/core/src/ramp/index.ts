/**
 * The schedule alone. A list of target EVs and a kit in, one setting a frame out.
 *
 * @module @evenfall/core/ramp
 */

export type { Crew, Limits, RampFrame, RampKit, RampProblem, RampResult } from './problem.js';
export { solveRamp } from './solve.js';
export { type RampWeights, rampWeights, type SomeWeights } from './weights.js';
