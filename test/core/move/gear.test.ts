import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stepTimeS, wayInS } from '../../../packages/core/src/move/gear.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const motor = fc.record({
  settleS: fc.constant(0),
  topSpeed: between(0.1, 20),
  acceleration: between(0.1, 50),
});

// Source: hand. Up to 5°/s takes 1 s and 2.5°; 5° more at 5°/s take 1 s; down again 1 s. 1° is 0.5° up, 0.5° down.
test('a trapezoid of speed, and a triangle where the way is short', () => {
  const m = { settleS: 0, topSpeed: 5, acceleration: 5 };
  expect(stepTimeS(10, m)).toBeCloseTo(3, 12);
  expect(stepTimeS(-10, m)).toBeCloseTo(3, 12);
  expect(stepTimeS(1, m)).toBeCloseTo(2 * Math.sqrt(2 * (0.5 / 5)), 12);
  expect(stepTimeS(10, { settleS: 0, topSpeed: 5 })).toBe(2);
  expect(stepTimeS(10, { settleS: 0, moveS: 1.5 })).toBe(1.5);
  expect(stepTimeS(0, { settleS: 0, moveS: 1.5 })).toBe(0);
});

test('a motor driven by its limits alone, in small time steps, arrives when it should', () => {
  fc.assert(
    fc.property(motor, between(0.01, 100), (m, way) => {
      const dt = stepTimeS(way, m) / 20_000;
      let [at, speed, t] = [0, 0, 0];
      // Full ahead until braking has to begin.
      while (speed ** 2 / (2 * m.acceleration) < way - at && t < 1e6) {
        speed = Math.min(m.topSpeed, speed + m.acceleration * dt);
        at += speed * dt;
        t += dt;
      }
      expect(Math.abs(t + speed / m.acceleration - stepTimeS(way, m))).toBeLessThan(stepTimeS(way, m) * 2e-3);
    }),
    { seed: 8, numRuns: 50 },
  );
});

test('the way in a time and the time for a way undo each other', () => {
  fc.assert(
    fc.property(motor, between(0.001, 100), fc.boolean(), (m, way, atOnce) => {
      const { acceleration, ...fast } = m;
      const used = atOnce ? fast : { ...fast, acceleration };
      expect(wayInS(stepTimeS(way, used), used) / way).toBeCloseTo(1, 9);
    }),
    { seed: 9 },
  );
  expect(wayInS(-1, { settleS: 0, topSpeed: 5 })).toBe(0);
  expect(wayInS(1.4, { settleS: 0, moveS: 1.5 })).toBe(0);
  expect(wayInS(1.5, { settleS: 0, moveS: 1.5 })).toBe(Number.POSITIVE_INFINITY);
});

test('a motor without a speed or a time is an error', () => {
  expect(() => stepTimeS(1, { settleS: 0 })).toThrow('moveS must be positive and finite, got NaN');
  expect(() => wayInS(1, { settleS: 0 })).toThrow('moveS must be positive and finite, got NaN');
  expect(() => stepTimeS(1, { settleS: 0, topSpeed: 0 })).toThrow(
    'topSpeed must be positive and finite, got 0',
  );
  expect(() => stepTimeS(1, { settleS: 0, topSpeed: 1, acceleration: 0 })).toThrow(
    'acceleration must be positive and finite, got 0',
  );
  expect(() => stepTimeS(Number.NaN, { settleS: 0, topSpeed: 1 })).toThrow('length must be finite, got NaN');
});
