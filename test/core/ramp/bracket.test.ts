// Brackets by hand, apart from the references: which times the middle exposure may have.

import { type RampProblem, solveRamp } from '@evenfall/core';
import { expect, test } from 'vitest';
import { longestTimeInside } from '../../../packages/core/src/footage/frames.js';

/** ISO 100, f/4 (EV 4 at 1 s), 30 s to 1/4000; a target so dark that the longest time allowed is taken. */
const problem = (more: Partial<RampProblem>): RampProblem => ({
  targetEv100: [0],
  intervalS: 10,
  direction: 'dusk',
  gapS: 1,
  darkFrame: false,
  crew: 'hand',
  kit: {
    stepsPerStop: 3,
    shutter: { longestStep: -15, shortestStep: 36 },
    iso: { lowestStep: 0, highestStep: 0 },
    aperture: { widestStep: 12, narrowestStep: 12 },
    stackStops: [0],
    bulb: false,
  },
  limits: { toleranceEv: 8, largestStepEv: 1, secondsBetweenCues: 0, framesLostPerFilterChange: 2 },
  ...more,
});
const stepOf = (more: Partial<RampProblem>) => {
  const ramp = solveRamp(problem(more));
  return ramp.kind === 'ok' ? ramp.frames[0]!.shutterStep : ramp.kind;
};

test('the longest middle exposure is what all of them leave', () => {
  // 9 s: 8 s is -9 steps.
  expect(stepOf({})).toBe(-9);
  // 1/4 + 1 + 4 = 5.25: 9 s / 5.25 = 1.714 s; of 1.587 (-2) and 2 s the first.
  expect(stepOf({ bracket: { frames: 3, stepEv: 2, betweenS: 0 } })).toBe(-2);
  // With two pauses of 0.4 s 8.2 / 5.25 = 1.562 s: 1.26 s (-1).
  expect(stepOf({ bracket: { frames: 3, stepEv: 2, betweenS: 0.4 } })).toBe(-1);
  // Dark frames double the exposures, and no pause: 8.2 / 10.5 = 0.781 s: 0.63 s (2).
  expect(stepOf({ darkFrame: true, bracket: { frames: 3, stepEv: 2, betweenS: 0.4 } })).toBe(2);
  // Nine a stop apart: 1/16 … 16 are 31.9375; 9 / 31.9375 = 0.282 s: 1/4 (6).
  expect(stepOf({ bracket: { frames: 9, stepEv: 1, betweenS: 0 } })).toBe(6);
});

test('both ends are on the dial and in the kit', () => {
  const bracket = { frames: 5, stepEv: 1, betweenS: 0 } as const;
  const { kit } = problem({});
  // The longest is 1 s: the middle one 1/4 (6 steps). The shortest is 1/4000: at EV 20 the middle one is 1/1000 (30).
  expect(stepOf({ bracket, kit: { ...kit, shutter: { longestStep: 0, shortestStep: 36 } } })).toBe(6);
  expect(stepOf({ bracket, targetEv100: [20] })).toBe(30);
  expect(() => stepOf({ bracket: { frames: 3, stepEv: 0.5, betweenS: 0 } })).toThrow(
    new RangeError('bracket.stepEv must be whole steps of the dial, got 0.5'),
  );
});

test('a freely timed one ends with the interval, to the last bit', () => {
  const bracket = { frames: 3, stepEv: 2, betweenS: 0.4 } as const;
  const step = stepOf({ bracket, kit: { ...problem({}).kit, bulb: true } });
  expect(2 ** (-Number(step) / 3)).toBeCloseTo(8.2 / 5.25, 12);
  expect(longestTimeInside(10, { gapS: 1, darkFrame: false, bracket })).toBeCloseTo(8.2 / 5.25, 12);
});

test('pauses that leave no time are an answer', () => {
  expect(stepOf({ bracket: { frames: 9, stepEv: 1, betweenS: 2 } })).toBe('infeasible');
});
