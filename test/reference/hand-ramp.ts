// Six frames worked by hand: one shutter cue against the light, then a filter with shutter and ISO set again.

import type { RampProblem } from '../../packages/core/src/ramp/problem.js';
import type { RampSetting } from './ramp-cost.js';

/** f/8, ISO 100 and 1 s meter EV 6; each frame's target is its setting's EV but for the first, half a stop above. */
export const HAND_PROBLEM: RampProblem = {
  targetEv100: [6.5, 6, 6 + 1 / 3, 6 + 1 / 3, 6 + 1 / 3, 6 + 1 / 3],
  intervalS: 10,
  direction: 'dusk',
  gapS: 1,
  darkFrame: false,
  crew: 'hand',
  kit: {
    stepsPerStop: 3,
    shutter: { longestStep: -6, shortestStep: 24 }, // 4 s to 1/256 s
    iso: { lowestStep: -3, highestStep: 6 }, // 50 to 400
    aperture: { widestStep: 18, narrowestStep: 18 },
    stackStops: [0, 3],
    bulb: false,
  },
  limits: { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues: 10, framesLostPerFilterChange: 2 },
};

const ONE_S = { shutterStep: 0, isoStep: 0, apertureStep: 18, stack: 0 };
const FILTERED = { shutterStep: -5, isoStep: 3, apertureStep: 18, stack: 1 }; // 3.17 s, ISO 200

export const HAND_RAMP: readonly RampSetting[] = [
  ONE_S,
  ONE_S,
  { ...ONE_S, shutterStep: 1 },
  FILTERED,
  FILTERED,
  FILTERED,
];

/**
 * w = 2, half the interval 5 s, lowest ISO 50; terms in the order of docs/ramp.md.
 * Frame 0: 2 (0.33 · 0.5² + 0.005 log2(5)² + 0.07 · 1); frames 1, 2, 5 without error. Frames 3 and 4 are affected.
 */
export const HAND_OBJECTIVE =
  0.358914 + // frame 0
  0.193914 + // frame 1
  (1 + 6) + // shorter at dusk
  0.210504 + // frame 2: 2 (0.005 (log2(5) + 1/3)² + 0.07)
  (20 + 1 + 1.5 + 6) + // a stronger stack at dusk; shutter and ISO move, their direction does not count
  2 * 1 + // frames 3 and 4
  2.284294; // frame 5: 2 (0.005 (log2(5) - 5/3)² + (0.07 + 0.5) · 2), behind the filter
