// The cost of a finished ramp, summed frame by frame as the contract states it (docs/ramp.md).

import { frameShare, hasFilter, isoPrice, timePrice, weightsOf } from './lattice.js';
import type { RampFrame, RampProblem } from './problem.js';
import type { RampWeights } from './weights.js';

/** The objective: what every frame and every cue of a ramp costs, in all. */
export function objectiveOf(problem: RampProblem, frames: readonly RampFrame[]): number {
  const weights = weightsOf(problem);
  let sum = 0;
  for (let i = 0; i < frames.length; i++) {
    sum += frameCost(problem, weights, frames[i]);
    if (i > 0) sum += cueCost(problem, weights, frames[i - 1], frames[i]);
  }
  return sum;
}

function frameCost(
  problem: RampProblem,
  weights: RampWeights,
  { shutterStep, isoStep, stack, errorEv, affected }: RampFrame,
): number {
  if (affected) return weights.affectedFrame;
  const { stepsPerStop, iso, stackStops } = problem.kit;
  const share = frameShare(problem.intervalS);
  const isoStops = (isoStep - iso.lowestStep) / stepsPerStop;
  return (
    share * weights.error * errorEv ** 2 +
    timePrice(shutterStep / stepsPerStop, problem.intervalS, weights) +
    share * isoPrice(weights, hasFilter(stackStops[stack])) * isoStops
  );
}

function cueCost(
  { kit, direction }: RampProblem,
  weights: RampWeights,
  before: RampFrame,
  after: RampFrame,
): number {
  const against = (rise: number) => ((direction === 'dusk' ? rise : -rise) > 1e-9 ? weights.againstLight : 0);
  // At dusk a shorter time, a lower ISO, a narrower opening and a stronger stack all go against the light.
  const shorter = kit.bulb ? 0 : after.shutterStep - before.shutterStep;
  const isoDown = before.isoStep - after.isoStep;
  const narrower = after.apertureStep - before.apertureStep;
  const filter = after.stack !== before.stack;
  const stronger = kit.stackStops[after.stack] - kit.stackStops[before.stack];

  let sum = 0;
  if (shorter !== 0) sum += weights.shutterCue + (filter ? 0 : against(shorter));
  if (isoDown !== 0) sum += weights.isoCue + (filter ? 0 : against(isoDown));
  if (narrower !== 0) sum += weights.apertureCue + against(narrower);
  if (filter) sum += weights.filterCue + against(stronger);
  return sum;
}
