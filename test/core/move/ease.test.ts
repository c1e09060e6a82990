import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Ease, easeAt, easePeakSlope, largestStepShare } from '../../../packages/core/src/move/ease.js';

const third = { trapezoid: 1 / 3 };
const triangle = { trapezoid: 0.5 };
const ALL: readonly Ease[] = [
  'linear',
  'smoothstep',
  'quintic',
  third,
  triangle,
  { trapezoid: 0 },
  { trapezoid: 0.01 },
];
const ease = fc.oneof(
  fc.constantFrom<Ease>('linear', 'smoothstep', 'quintic'),
  fc.double({ min: 0, max: 0.5, noNaN: true }).map((trapezoid): Ease => ({ trapezoid })),
);
const time = fc.double({ min: 0, max: 1, noNaN: true });

describe('check values', () => {
  // Source: worked_examples.csv W091; smoothstep 3t² - 2t³ by hand.
  test('quarter of the time', () => {
    expect(easeAt('quintic', 0.25)).toBe(0.103515625);
    expect(easeAt('smoothstep', 0.25)).toBe(0.15625);
    expect(easeAt('linear', 0.25)).toBe(0.25);
  });

  // Source: worked_examples.csv W093: jerk of the quintic, 60 at the start and -30 in the middle.
  test('the quintic starts with a jerk of 60 and passes the middle with -30', () => {
    const q = (t: number) => easeAt('quintic', t);
    // Third differences of a quintic miss its third derivative by terms that are known: h f⁗ 3/2 + h² f⁽⁵⁾ 5/4
    // forward, h² f⁽⁵⁾ / 4 central, with f⁗ = -360 at 0 and f⁽⁵⁾ = 720.
    const h = 1 / 64;
    const forward = (q(3 * h) - 3 * q(2 * h) + 3 * q(h) - q(0)) / h ** 3;
    expect(forward - (1.5 * h * -360 + 1.25 * h * h * 720)).toBeCloseTo(60, 6);
    const d = 1 / 128;
    const central = (q(0.5 + 3 * d) - 3 * q(0.5 + d) + 3 * q(0.5 - d) - q(0.5 - 3 * d)) / (2 * d) ** 3;
    expect(central - (720 * (2 * d) ** 2) / 8).toBeCloseTo(-30, 6);
  });

  // Source: worked_examples.csv W095, W097: arithmetic.
  test('the trapezoid in thirds and the triangle', () => {
    expect(easeAt(third, 1 / 3)).toBeCloseTo(0.25, 12);
    expect(easePeakSlope(third)).toBeCloseTo(1.5, 12);
    expect(easePeakSlope(triangle)).toBe(2);
    const h = 1e-3;
    const acceleration = (e: Ease, t: number) =>
      (easeAt(e, t + h) - 2 * easeAt(e, t) + easeAt(e, t - h)) / h ** 2;
    expect(acceleration(third, 0.2)).toBeCloseTo(4.5, 6);
    expect(acceleration(third, 0.45)).toBeCloseTo(0, 6);
    expect(acceleration(triangle, 0.3)).toBeCloseTo(4, 6);
    expect(acceleration(triangle, 0.7)).toBeCloseTo(-4, 6);
  });

  // Source: derivatives by hand: 1; 6t(1-t) = 1.5; 30t²(1-t)² = 1.875 at a half (the last also W091).
  test.each([
    ['linear', 1],
    ['smoothstep', 1.5],
    ['quintic', 1.875],
  ] as const)('the peak slope of %s is %d, and it is met in the middle', (e, slope) => {
    expect(easePeakSlope(e)).toBe(slope);
    const h = 1e-4;
    expect((easeAt(e, 0.5 + h) - easeAt(e, 0.5 - h)) / (2 * h)).toBeCloseTo(slope, 6);
  });
});

describe('properties', () => {
  test('ends are exact, also for times outside', () => {
    for (const e of ALL) {
      expect([-1, 0, 1, 2].map((t) => easeAt(e, t))).toEqual([0, 0, 1, 1]);
      expect(easeAt(e, 0.5)).toBeCloseTo(0.5, 12);
    }
  });

  test('no ease ever runs back, to the last bit', () => {
    for (const e of ALL) {
      const count = 200_001;
      let before = 0;
      for (let i = 1; i < count; i++) {
        const now = easeAt(e, i / (count - 1));
        if (now < before) expect.fail(`${JSON.stringify(e)} falls at ${i}`);
        before = now;
      }
      expect(before).toBe(1);
    }
    fc.assert(
      fc.property(ease, time, time, (e, a, b) => {
        expect(easeAt(e, Math.min(a, b))).toBeLessThanOrEqual(easeAt(e, Math.max(a, b)));
      }),
      { seed: 5 },
    );
  });

  test('the end mirrors the start', () => {
    fc.assert(
      fc.property(ease, time, (e, t) => {
        expect(easeAt(e, t) + easeAt(e, 1 - t)).toBeCloseTo(1, 12);
      }),
      { seed: 6 },
    );
  });

  test('the largest step is the largest of all steps, and at most the peak slope over their number', () => {
    fc.assert(
      fc.property(ease, fc.integer({ min: 1, max: 300 }), (e, n) => {
        const steps = Array.from({ length: n }, (_, i) => easeAt(e, (i + 1) / n) - easeAt(e, i / n));
        expect(largestStepShare(e, n)).toBeCloseTo(Math.max(...steps), 12);
        expect(largestStepShare(e, n)).toBeLessThanOrEqual((easePeakSlope(e) / n) * (1 + 1e-9));
      }),
      { seed: 7 },
    );
    expect(largestStepShare('quintic', 0)).toBe(0);
  });
});

test('errors name the argument and the value', () => {
  expect(() => easeAt({ trapezoid: 0.6 }, 0.1)).toThrow('trapezoid must be from 0 to 0.5, got 0.6');
  expect(() => largestStepShare('linear', 1.5)).toThrow('stepCount must be a whole number, got 1.5');
});
