/**
 * The schedule alone. A list of target EVs and a kit in, one setting a frame out.
 *
 * @module @evenfall/core/ramp
 */

export type { StepsPerStop } from '../dial.js';
export type { RampFrame, RampKit, RampProblem, RampResult } from '../ramp/problem.js';
export { rampExists, solveRamp } from '../ramp/solve.js';
export { type RampWeights, rampWeights } from '../ramp/weights.js';
export type { Crew, Direction, Limits } from '../shoot.js';
