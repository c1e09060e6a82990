import { expect, test } from 'vitest';
import { cubicAt, monotoneSlopes, parabolaSlopes } from '../../../packages/core/src/light/smooth.js';

const KNOTS = [-2, -1, 0.5, 4, 9];

test('slopes of neighbours reproduce any parabola exactly, uneven knots and ends included', () => {
  const parabola = (x: number) => 3 - 2 * x + 0.7 * x * x;
  const ys = KNOTS.map(parabola);
  const slopes = parabolaSlopes(KNOTS, ys);
  for (const x of [-1.9, -0.3, 0.5, 2.2, 8.8])
    expect(cubicAt(KNOTS, ys, slopes, x)).toBeCloseTo(parabola(x), 10);
});

test('monotone slopes neither overshoot a shelf nor leave the range of the knots', () => {
  // Fritsch & Butland 1984: rises where the knots rise, level where they are, flat at a summit.
  const ys = [0, 1, 1, 10, 4];
  const slopes = monotoneSlopes(KNOTS, ys);
  const values = Array.from({ length: 1101 }, (_, i) => cubicAt(KNOTS, ys, slopes, -2 + i / 100));
  expect(Math.max(...values)).toBe(10);
  expect(Math.min(...values)).toBe(0);
  expect(values[200]).toBe(1);
  expect(slopes[3]).toBe(0);
});

test('beyond the knots the outermost value is held', () => {
  const ys = KNOTS.map((x) => x * x);
  expect(cubicAt(KNOTS, ys, parabolaSlopes(KNOTS, ys), -5)).toBe(4);
  expect(cubicAt(KNOTS, ys, parabolaSlopes(KNOTS, ys), 50)).toBe(81);
});
