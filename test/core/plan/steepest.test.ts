import { expect, test } from 'vitest';
import { steepestMinute } from '../../../packages/core/src/plan/steepest.js';

const at = (i: number) => `2026-09-12T20:0${i}:00+02:00`;

// By hand.
test('the steepest minute is found at any interval, over the whole where it is shorter', () => {
  const moments = (ev: readonly number[]) =>
    ev.map((sceneEv100, i) => ({ at: at(i), sunAltitudeDeg: 3 - i, sceneEv100 }));
  // Every 30 s: two intervals make the minute; from the second on it loses 1.1.
  expect(steepestMinute(moments([5, 4.9, 4.3, 3.8, 3.7]), 30)).toMatchObject({
    at: at(1),
    sunAltitudeDeg: 2,
  });
  expect(steepestMinute(moments([5, 4.9, 4.3, 3.8, 3.7]), 30)?.evPerMin).toBeCloseTo(-1.1, 9);
  // Every 5 s, three frames: 0.1 in 10 s are 0.6 a minute.
  expect(steepestMinute(moments([5, 4.95, 4.9]), 5)?.evPerMin).toBeCloseTo(-0.6, 9);
  // At dawn it rises; of equals the first.
  expect(steepestMinute(moments([3, 4, 5]), 60)).toEqual({ at: at(0), sunAltitudeDeg: 3, evPerMin: 1 });
  expect(steepestMinute(moments([5]), 5)).toBeUndefined();
});
