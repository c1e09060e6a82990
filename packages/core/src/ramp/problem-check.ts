// What a ramp problem must be, at the door of solveRamp: nearly right, such as a mark where a step belongs, is told by name.

import {
  aboveZero,
  also,
  aNumber,
  atLeast,
  type Check,
  flag,
  from,
  group,
  hold,
  listOf,
  oneOf,
  rising,
  wholeFrom,
} from '../hold.js';
import type { RampProblem } from './problem.js';
import { rampWeights } from './weights.js';

/** Steps farther from 1 s, ISO 100 and f/1 than any dial has; a mark such as ISO 6400 is far beyond. */
const MOST_STEPS = 80;
const step = wholeFrom(
  -MOST_STEPS,
  MOST_STEPS,
  'be a step of the dial, which dialStep gives of a mark, a whole number',
);

function ends(low: string, high: string): Check {
  return also(group({ [low]: step, [high]: step }), rising(low, high));
}

/** Prices that differ from the defaults. */
export const weightsCheck = group(
  {},
  Object.fromEntries(Object.keys(rampWeights('hand')).map((key) => [key, atLeast(0)])),
);

/** Limits of a schedule. */
export const limitsCheck = group(
  {
    toleranceEv: aboveZero,
    largestStepEv: aboveZero,
    secondsBetweenCues: atLeast(0),
    framesLostPerFilterChange: wholeFrom(0, 1e6),
  },
  { maxFilterChanges: wholeFrom(0, 1e6) },
);

/** Exposures about a middle one. */
export const bracketCheck = group({ frames: oneOf([3, 5, 7, 9]), stepEv: aboveZero, betweenS: atLeast(0) });

const problemCheck = group(
  {
    targetEv100: listOf(aNumber, 1),
    intervalS: aboveZero,
    direction: oneOf(['dusk', 'dawn']),
    gapS: atLeast(0),
    darkFrame: flag,
    crew: oneOf(['hand', 'rig']),
    kit: group(
      {
        stepsPerStop: oneOf([2, 3]),
        shutter: ends('longestStep', 'shortestStep'),
        iso: ends('lowestStep', 'highestStep'),
        aperture: ends('widestStep', 'narrowestStep'),
        stackStops: listOf(from(0, 60), 1),
        bulb: flag,
      },
      { startStack: wholeFrom(0, 1e6) },
    ),
    limits: limitsCheck,
  },
  { bracket: bracketCheck, weights: weightsCheck },
);

/** @throws RangeError naming the key, the rule and the value */
export function checkProblem(problem: RampProblem): void {
  hold('', problem, problemCheck);
  const { startStack, stackStops } = problem.kit;
  if (startStack !== undefined && startStack >= stackStops.length) {
    throw new RangeError(
      `kit.startStack must be an index into stackStops (${stackStops.length}), got ${startStack}`,
    );
  }
}
