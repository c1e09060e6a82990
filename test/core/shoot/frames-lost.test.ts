// How many frames a filter change may spoil, by hand: fifteen seconds' worth, at least two, at most a thousand.

import { framesLostByDefault, readShoot } from '@evenfall/core';
import { expect, test } from 'vitest';
import { EVENING_SHOOT } from '../../reference/evening-shoot.js';

test.each([
  [60, 2],
  [7.5, 2],
  [7.4, 3],
  [5, 3],
  [1, 15],
  [0.25, 60],
  [0.0151, 994],
  [0.015, 1000],
  [0.0149, 1000],
])('every %d s: %d', (intervalS, frames) => {
  expect(framesLostByDefault(intervalS)).toBe(frames);
});

test('a shoot may say a thousand, and no more', () => {
  const saying = (framesLostPerFilterChange: number) =>
    readShoot({ ...EVENING_SHOOT, limits: { framesLostPerFilterChange } }).kind;
  expect(saying(1000)).toBe('ok');
  expect(saying(1001)).toBe('wrong');
});
