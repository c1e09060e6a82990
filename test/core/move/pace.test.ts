import { expect, test } from 'vitest';
import { roundedInterval } from '../../../packages/core/src/move/pace.js';

// Tenths of a second from 1 s on, hundredths below, by hand; what is whole already stays.
test.each([
  [0.126, 'down', 0.12],
  [0.126, 'up', 0.13],
  [0.99, 'up', 0.99],
  [1.26, 'down', 1.2],
  [1.26, 'up', 1.3],
  [7.3, 'down', 7.3],
  [7.3, 'up', 7.3],
] as const)('an interval of %f s, rounded %s, is %f s', (intervalS, toward, rounded) => {
  expect(roundedInterval(intervalS, toward)).toBe(rounded);
});
