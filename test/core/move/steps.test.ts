import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { englishMoveFaults } from '../../../packages/core/src/move/fault.js';
import type { Move } from '../../../packages/core/src/move/moves.js';
import { moveFaults, travelsOf } from '../../../packages/core/src/move/resolve.js';
import {
  largestStep,
  motorStepsAt,
  positionAt,
  stepAfter,
  stepsBelowSmallest,
} from '../../../packages/core/src/move/steps.js';
import { sentenceOf } from '../../../packages/core/src/words/sentences.js';
import { anyMoves, OPTICS, slide, turn } from './moves.js';

const only = (move: Move) => travelsOf([move], OPTICS)[0]!;

describe('lengths', () => {
  // Source: worked_examples.csv W087 for the field of view; the rest by hand.
  test.each([
    [turn('pan', -60), -60],
    [turn('pan', 0, { by: { fromBearingDeg: 350, toBearingDeg: 20 } }), 30],
    [
      turn('pan', 0, {
        by: {
          fromPoint: { fromLeft: 0, fromBottom: 0.5 },
          toPoint: { fromLeft: 1, fromBottom: 0.5 },
          focalMm: 24,
        },
      }),
      73.74,
    ],
    [turn('tilt', 0, { by: { sizeM: 10, distanceM: 5 } }), 90],
    [slide(0, { by: { m: -0.8 } }), -0.8],
    [slide(0, { by: { trackM: 30, carriageM: 0.5, marginM: 0.25 } }), 29],
    [slide(0, { by: { trackM: 1.2 } }), 1.2],
  ] satisfies [Move, number][])('%j goes %d', (move, length) => {
    expect(Math.abs(only(move).length - length)).toBeLessThan(5e-4);
  });

  test('a way is one from a hundredth of what the finest gear steps, a ten-thousandth of a degree', () => {
    expect(moveFaults([turn('pan', 1.05e-6)])).toEqual([]);
    expect(moveFaults([turn('pan', 0.95e-6)])).toMatchObject([{ kind: 'goes-nowhere' }]);
  });

  test.each([
    [[turn('pan', 1), turn('pan', 2)], ['moves', 1, 'axis'], 'a second pan'],
    [
      [turn('tilt', 0, { by: { fromBearingDeg: 1, toBearingDeg: 2 } })],
      ['moves', 0, 'by'],
      'compass bearings turn a pan',
    ],
    [
      [slide(0, { by: { trackM: 0.5, carriageM: 0.3, marginM: 0.1 } })],
      ['moves', 0, 'by', 'trackM'],
      '0.5 m leaves no way',
    ],
    [[turn('pan', 0)], ['moves', 0, 'by'], 'goes nowhere'],
    [[turn('pan', 9, { gear: { settleS: 0 } })], ['moves', 0, 'gear'], 'give topSpeedDegPerS or moveS'],
    [[slide(9, { gear: { settleS: 0 } })], ['moves', 0, 'gear'], 'give topSpeedMPerS or moveS'],
  ] satisfies [Move[], (string | number)[], string][])('%j is refused at %j: %s', (moves, path, text) => {
    const faults = moveFaults(moves, OPTICS);
    expect(faults).toHaveLength(1);
    expect(faults[0]!.path).toEqual(path);
    expect(sentenceOf(englishMoveFaults, 'kind', faults[0]!)).toContain(text);
    expect(() => travelsOf(moves, OPTICS)).toThrow(`${path.join('.')}: ${faults[0]!.kind}`);
  });

  test('points need a lens and a sensor; a continuous move needs no speed', () => {
    const middle = { fromLeft: 0.5, fromBottom: 0.5 };
    const points = turn('pan', 0, { by: { fromPoint: { fromLeft: 0.1, fromBottom: 0.5 }, toPoint: middle } });
    expect(moveFaults([points])).toEqual([{ path: ['moves', 0, 'by'], kind: 'points-need-lens' }]);
    expect(moveFaults([points], OPTICS)).toEqual([]);
    expect(moveFaults([turn('pan', 9, { mode: 'continuous', gear: { settleS: 0 } })])).toEqual([]);
  });
});

test('a motor has the numbers that are known, in the unit of its axis, and no other keys', () => {
  const known = { settleS: 1, moveS: 2, topSpeedDegPerS: 3, accelerationDegPerS2: 4, smallestStepDeg: 5 };
  expect(only(turn('tilt', 9, { gear: known }))).toStrictEqual({
    axis: 'tilt',
    unit: 'deg',
    length: 9,
    mode: 'stopped',
    ease: 'smoothstep',
    motor: { settleS: 1, moveS: 2, topSpeed: 3, acceleration: 4, smallestStep: 5 },
  });
  const { nearestM: _, ...far } = slide(1, { gear: { settleS: 1, moveS: 2 } });
  expect(only(far)).toStrictEqual({
    axis: 'slide',
    unit: 'm',
    length: 1,
    mode: 'stopped',
    ease: 'smoothstep',
    motor: { settleS: 1, moveS: 2 },
    toward: 'side',
  });
  const gear = { settleS: 1, topSpeedMPerS: 3, accelerationMPerS2: 4, smallestStepM: 5 };
  expect(only(slide(1, { gear }))).toMatchObject({
    nearestM: 5,
    motor: { topSpeed: 3, acceleration: 4, smallestStep: 5 },
  });
});

describe('positions', () => {
  test('never turn back, start at 0 and end at the whole length, exactly; the largest step is one of them', () => {
    fc.assert(
      fc.property(anyMoves, fc.integer({ min: 2, max: 400 }), (moves, frameCount) => {
        for (const travel of travelsOf(moves, OPTICS)) {
          const at = Array.from({ length: frameCount }, (_, i) => positionAt(travel, i, frameCount));
          expect(at[0]! + 0).toBe(0);
          expect(at[frameCount - 1]).toBe(travel.length);
          const steps = at.slice(1).map((p, i) => (p - at[i]!) * Math.sign(travel.length));
          expect(Math.min(...steps)).toBeGreaterThanOrEqual(0);
          expect(Math.max(...steps) / largestStep(travel, frameCount)).toBeCloseTo(1, 6);
          expect(stepAfter(travel, frameCount - 1, frameCount)).toBe(0);
        }
      }),
      { seed: 10 },
    );
  });

  test('a single frame stands still', () => {
    expect(positionAt(only(turn('pan', 60)), 0, 1)).toBe(0);
    expect(largestStep(only(turn('pan', 60)), 1)).toBe(0);
  });

  // Source: hand: 90° in 3 equal steps on a motor of 0.1°, and 1° in 10 steps of 0.1° on motors of 0.1° and 0.11°.
  test('whole motor steps, and steps that are too small for the motor', () => {
    const gear = (smallestStepDeg: number) => ({ settleS: 0, topSpeedDegPerS: 5, smallestStepDeg });
    const right = only(turn('pan', 90, { ease: 'linear', gear: gear(0.1) }));
    expect([0, 1, 2, 3].map((i) => motorStepsAt(positionAt(right, i, 4), right))).toEqual([0, 300, 600, 900]);
    const left = only(turn('pan', -90, { ease: 'linear', gear: gear(0.1) }));
    expect([0, 1].map((i) => motorStepsAt(positionAt(left, i, 4), left))).toEqual([0, -300]);
    expect(motorStepsAt(3, only(turn('pan', 90)))).toBeUndefined();
    const fine = (smallest: number) => only(turn('pan', 1, { ease: 'linear', gear: gear(smallest) }));
    expect(stepsBelowSmallest(fine(0.1), 11)).toBe(0);
    expect(stepsBelowSmallest(fine(0.11), 11)).toBe(10);
    // Smoothstep over 10 steps: 0.028, 0.076, 0.112, 0.136, 0.148 of the way, and back.
    expect(stepsBelowSmallest(only(turn('pan', 1, { gear: gear(0.1) })), 11)).toBe(4);
  });
});
