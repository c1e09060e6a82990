// The plainest ramp: a bare lens at f/4 and ISO 100, 1/4000 s to 4 s, a frame every 8 s.

import type { RampProblem } from '../../../packages/core/src/ramp/problem.js';

/** @param change of its kit and its limits */
export function bareProblem(
  targetEv100: readonly number[],
  {
    kit,
    limits,
  }: { readonly kit?: Partial<RampProblem['kit']>; readonly limits?: Partial<RampProblem['limits']> } = {},
): RampProblem {
  return {
    targetEv100,
    intervalS: 8,
    direction: 'dusk',
    gapS: 1,
    darkFrame: false,
    crew: 'rig',
    kit: {
      stepsPerStop: 3,
      shutter: { longestStep: -6, shortestStep: 36 },
      iso: { lowestStep: 0, highestStep: 0 },
      aperture: { widestStep: 12, narrowestStep: 12 },
      stackStops: [0],
      bulb: false,
      ...kit,
    },
    limits: {
      toleranceEv: 0.75,
      largestStepEv: 1,
      secondsBetweenCues: 0,
      framesLostPerFilterChange: 0,
      ...limits,
    },
  };
}
