// Filters come off before ISO rises: `isoBehindFilter`, by the dial, freely timed and from where the camera stands.
// Small enough for the exhaustive search, which knows the contract alone (docs/ramp.md).

import { describe, expect, test } from 'vitest';
import { liveKit, planAhead } from '../../../packages/core/src/ramp/live/live.js';
import type { RampProblem } from '../../../packages/core/src/ramp/problem.js';
import { solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { exhaustiveRamp } from '../../reference/exhaustive-ramp.js';
import { checkRamp } from '../../reference/ramp-cost.js';

/** A dusk of five stops behind a filter of three, with a shutter that gives no more than one: the rest is ISO or the filter. */
function problem(bulb: boolean, weights: RampProblem['weights'] = {}): RampProblem {
  return {
    targetEv100: Array.from({ length: 40 }, (_, i) => 8.25 - 5 * (i / 39)),
    intervalS: 10,
    direction: 'dusk',
    gapS: 1,
    darkFrame: false,
    crew: 'hand',
    kit: {
      stepsPerStop: 2,
      shutter: { longestStep: -2, shortestStep: bulb ? 8 : 4 }, // 2 s
      iso: { lowestStep: 0, highestStep: 6 }, // 100 to 800
      aperture: { widestStep: 8, narrowestStep: 8 }, // f/4
      stackStops: [0, 3],
      startStack: 1,
      bulb,
    },
    limits: { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues: 0, framesLostPerFilterChange: 2 },
    weights,
  };
}

const FREE = { isoBehindFilter: 0 };
const highestBehind = (frames: readonly { stack: number; isoStep: number }[]) =>
  Math.max(...frames.filter(({ stack }) => stack === 1).map(({ isoStep }) => isoStep));

describe.each([false, true])('freely timed: %s', (bulb) => {
  test.each([
    ['the default', {}],
    ['none', FREE],
    ['one of its own', { isoBehindFilter: 2 }],
  ])('%s: the cost of the exhaustive search', (_, weights) => {
    const asked = problem(bulb, weights);
    const [got, want] = [solveRamp(asked), exhaustiveRamp(asked)];
    if (got.kind !== 'ok' || want.kind !== 'ok') throw new Error('no ramp');
    expect(got.objective).toBeCloseTo(want.objective, 6);
    expect(checkRamp(asked, got.frames).objective).toBeCloseTo(want.objective, 6);
  });

  test('ISO rises behind the filter only where that costs nothing', () => {
    const [usual, free] = [{}, FREE].map((weights) => solveRamp(problem(bulb, weights)));
    if (usual?.kind !== 'ok' || free?.kind !== 'ok') throw new Error('no ramp');
    expect(highestBehind(usual.frames)).toBe(0);
    expect(highestBehind(free.frames)).toBeGreaterThan(0);
  });

  test('from the setting on the camera the filter comes off, and ISO rises where that costs nothing', () => {
    const ahead = (weights: RampProblem['weights']) => {
      const asked = problem(bulb, weights);
      const prices = { errorNow: 5, errorAhead: 5, fadeS: 180, beyondTolerance: 100, hysteresisPerS: 0 };
      const { start, cues } = planAhead(liveKit(asked, prices), {
        target: asked.targetEv100,
        framesLeft: asked.targetEv100.length,
        present: { stack: 1, aperture: 0, level: bulb ? 0 : 10, iso: 0 },
        waitFrames: 0,
        filterChangesLeft: Number.POSITIVE_INFINITY,
      });
      return highestBehind(
        [start, ...cues.map(({ to }) => to)].map(({ stack, iso }) => ({ stack, isoStep: iso })),
      );
    };
    expect(ahead({})).toBe(0);
    expect(ahead(FREE)).toBeGreaterThan(0);
  });
});
