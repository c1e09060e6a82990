// By how much a kit fails, from its darkest and brightest settings, by hand.

import { expect, test } from 'vitest';
import type { RampProblem } from '../../../packages/core/src/ramp/problem.js';
import { solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { HAND_PROBLEM } from '../../reference/hand-ramp.js';

// f/8 is 6; 1/64 s to 1 s are 6 to 0; ISO 100 alone: EV 6 to 12 without a filter, three more behind one of three stops.
const KIT = {
  ...HAND_PROBLEM.kit,
  shutter: { longestStep: 0, shortestStep: 18 },
  iso: { lowestStep: 0, highestStep: 0 },
  aperture: { widestStep: 18, narrowestStep: 18 },
  stackStops: [0, 3],
  bulb: false,
};
const problem = (targetEv100: number[], change: Partial<RampProblem> = {}): RampProblem => ({
  ...HAND_PROBLEM,
  kit: KIT,
  intervalS: 60,
  gapS: 0,
  darkFrame: false,
  targetEv100,
  limits: {
    toleranceEv: 0.5,
    largestStepEv: 1,
    secondsBetweenCues: 0,
    framesLostPerFilterChange: 0,
  },
  ...change,
});

test('the worst frame tells what a person has to make up, the first one where it begins: too bright', () => {
  expect(solveRamp(problem([15, 15.9, 16.4, 17, 16]))).toEqual({
    kind: 'infeasible',
    reason: 'too-bright',
    frame: 1,
    shortfallEv: expect.closeTo(15.9 - 15.5, 9),
    worstShortfallEv: expect.closeTo(17 - 15.5, 9),
  });
});

test('too dark likewise', () => {
  expect(solveRamp(problem([6, 5.2, 4, 5]))).toEqual({
    kind: 'infeasible',
    reason: 'too-dark',
    frame: 1,
    shortfallEv: expect.closeTo(5.5 - 5.2, 9),
    worstShortfallEv: expect.closeTo(5.5 - 4, 9),
  });
});

test('a filter that must stay on counts, where no change is allowed', () => {
  const limits = { ...problem([]).limits, maxFilterChanges: 0 };
  // Behind three stops the darkest setting is EV 9.
  expect(solveRamp(problem([9.2, 8.6, 7.9], { kit: { ...KIT, startStack: 1 }, limits }))).toEqual({
    kind: 'infeasible',
    reason: 'too-dark',
    frame: 2,
    shortfallEv: expect.closeTo(8.5 - 7.9, 9),
    worstShortfallEv: expect.closeTo(8.5 - 7.9, 9),
  });
});
