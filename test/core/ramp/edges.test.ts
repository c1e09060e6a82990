// The numbers that a ramp decides by, each tried on both sides of its edge: a tenth more or less gives another answer.

import { expect, test } from 'vitest';
import { filterPrice, type Lattice, latticeOf, timePrice } from '../../../packages/core/src/ramp/lattice.js';
import { liveCourse } from '../../../packages/core/src/ramp/live/course.js';
import { gridAhead } from '../../../packages/core/src/ramp/live/grid.js';
import { rampExists, solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { rampWeights } from '../../../packages/core/src/ramp/weights.js';
import { bareProblem } from './bare-problem.js';

test('cues ahead lie at every frame for 90 s, then half a minute apart, and from 20 minutes on a minute', () => {
  // Frames of a second, cues a minute apart: 0 to 90, then 120 and so on to 1200 = 90 + 37 · 30, then 1260.
  const { at } = gridAhead(0, 1400, 1400, {
    ...{ spacing: 60, affectedFrames: 0, intervalS: 1, begun: false },
  });
  const expected = [
    ...Array.from({ length: 90 }, (_, i) => i),
    ...Array.from({ length: 38 }, (_, i) => 90 + 30 * i),
    ...[1260, 1320, 1380, 1400],
  ];
  expect([...at]).toEqual(expected);
  // Where a cue may come at any frame, nothing but the half minute cuts the stride.
  const anywhere = gridAhead(0, 1400, 1400, {
    ...{ spacing: 1, affectedFrames: 0, intervalS: 1, begun: false },
  });
  expect([...anywhere.at.slice(89, 93)]).toEqual([89, 90, 120, 150]);
});

test('a time is too short beyond 1/100 s: a stop of it more costs a stop', () => {
  const weights = { ...rampWeights('hand'), blur: 0, shortShutter: 3 };
  // One frame of 5 s counts one.
  expect(timePrice(Math.log2(100), 5, weights)).toBe(0);
  expect(timePrice(Math.log2(400), 5, weights)).toBeCloseTo(3 * 2, 12);
});

test('no dial has steps beyond 80', () => {
  const problem = (highestStep: number) =>
    bareProblem([14], { kit: { iso: { lowestStep: 0, highestStep } } });
  expect(() => solveRamp(problem(80))).not.toThrow();
  expect(() => solveRamp(problem(81))).toThrow('must be a step of the dial');
});

test.each([4, 28, 31, 34, 55, 59])(
  'an ISO dial of %d steps and one more is gone up and down whole, with a filter too',
  (steps) => {
    // One shutter and one aperture: each frame asks for the ISO a step from the one before, and no other will do.
    const kit = { shutter: { longestStep: 0, shortestStep: 0 }, iso: { lowestStep: 0, highestStep: steps } };
    const limits = { toleranceEv: 0.1, largestStepEv: 1 / 3 };
    const exists = (isos: readonly number[], stackStops = [0]) =>
      rampExists(
        bareProblem(
          isos.map((iso) => (12 - iso) / 3),
          { kit: { ...kit, stackStops }, limits },
        ),
      );
    const up = Array.from({ length: steps + 1 }, (_, iso) => iso);
    const down = up.toReversed();
    expect(exists([...up, ...down])).toBe(true);
    expect(exists([...down, ...up])).toBe(true);
    expect(exists([...up, steps + 1])).toBe(false);
    expect(exists([...down, -1])).toBe(false);
    // With a filter of a stop the lowest ISO renders a stop more light.
    expect(exists([...down, -1, -2, -3], [0, 1])).toBe(true);
  },
);

test('a live solve looks at settings up to three quarters of a stop off the target', () => {
  const lattice = latticeOf(bareProblem([0], { limits: { toleranceEv: 0.25 } }));
  const grid = gridAhead(0, 4, 4, { spacing: 1, affectedFrames: 0, intervalS: 8, begun: false });
  const price = { errorNow: 1, errorAhead: 1, fadeS: 1, beyondTolerance: 1, hysteresisPerS: 0 };
  const looked = (offEv: number) => {
    const start = { stack: 0, aperture: 0, level: 24, iso: 0 }; // EV 8
    return liveCourse(lattice, grid, Array(4).fill(8 + offEv), start, 8, price).band.count[0];
  };
  // In thirds: -0.747, -0.413, -0.08, 0.253 and 0.587 are within, of 0.1 the fifth, 0.767, is not.
  expect(looked(0.08)).toBe(5);
  expect(looked(0.1)).toBe(4);
});

test('two stacks are as strong as one another within a billionth of a stop', () => {
  const price = { stronger: 3, weaker: 2, asStrong: 1 };
  const priceOf = (byStops: number) =>
    filterPrice({ price, stops: [6, 6 + byStops] } as unknown as Lattice, 0, 1);
  expect([priceOf(0.95e-9), priceOf(-0.95e-9)]).toEqual([1, 1]);
  expect([priceOf(1.05e-9), priceOf(-1.05e-9)]).toEqual([3, 2]);
});
