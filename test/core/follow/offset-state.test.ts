// What readings teach about the offset, against sums by hand.

import { expect, test } from 'vitest';
import { advance, learn, offsetAt, startOffset } from '../../../packages/core/src/follow/offset-state.js';

const MINUTE = 60_000;
// Spreads that the filter starts from: what lasts 0.87 and 1 stop, drift a third of a stop an hour, cloud 0.67 stop
// that forgets itself in 33 minutes (measured: docs/sources.md#weather-spread).
const LASTING = 0.87 ** 2 + 1;
const DRIFT = (0.33 / 60) ** 2;
const CLOUD = 0.67 ** 2;
// What lasts moves by 0.3 stop in an hour, as overcast dusks do.
const WALK_PER_MIN = 0.3 ** 2 / 60;

test('one reading is believed by its share of the spread', () => {
  const noise = 0.5;
  const state = learn(startOffset(0), 0, -2, noise);
  expect(offsetAt(state, 0)).toBeCloseTo((-2 * LASTING) / (LASTING + noise ** 2), 10);
});

test('what the first reading finds lasts, however far it is off', () => {
  const state = learn(startOffset(0), 0, -3.2, 0.07);
  expect(offsetAt(state, 0)).toBeCloseTo(-3.2, 1);
  expect(offsetAt(state, 60 * MINUTE)).toBeCloseTo(offsetAt(state, 0), 10);
});

test('two readings agree with the best linear guess from their covariances', () => {
  const noise = 0.1;
  const minutes = 20;
  const [first, second] = [-1, -0.6];
  const state = learn(learn(startOffset(0), 0, first, noise), minutes * MINUTE, second, noise);
  // The offset at time t: lasting + drift · c(t) + cloud(t), with c(t) = 60 (1 - e^(-t/60)); the drift is renewed
  // only after it has acted. Cloud begins at nothing, so its spread after t is CLOUD (1 - e^(-2 t/33)).
  const carried = 60 * (1 - Math.exp(-minutes / 60));
  const a = LASTING + noise ** 2;
  const moved = WALK_PER_MIN * minutes + CLOUD * (1 - Math.exp((-2 * minutes) / 33));
  const b = LASTING + carried ** 2 * DRIFT + moved + noise ** 2;
  const both = LASTING;
  const determinant = a * b - both * both;
  const [toFirst, toSecond] = [both, b - noise ** 2];
  const guess =
    (toFirst * (b * first - both * second) + toSecond * (a * second - both * first)) / determinant;
  expect(offsetAt(state, minutes * MINUTE)).toBeCloseTo(guess, 10);
});

test('what changed after the first reading passes with the minutes', () => {
  const state = learn(learn(startOffset(0), 0, 0, 0.01), 10 * MINUTE, 0.8, 0.01);
  const now = offsetAt(state, 10 * MINUTE);
  const later = offsetAt(state, 43 * MINUTE);
  expect(now).toBeCloseTo(0.8, 2);
  expect(later).toBeLessThan(0.45);
  expect(later).toBeGreaterThan(0.8 / Math.E - 0.05);
});

test('a thousand readings of one offset leave nothing else to expect', () => {
  let state = startOffset(0);
  for (let i = 0; i < 1000; i++) state = learn(state, i * 8000, -1.3, 0.07);
  expect(offsetAt(state, 8_000_000)).toBeCloseTo(-1.3, 2);
  expect(offsetAt(state, 8_000_000 + 20 * MINUTE)).toBeCloseTo(-1.3, 1);
});

test('through a long silence drift and cloud come back to their own spread, however it is cut', () => {
  let state = learn(learn(startOffset(0), 0, -1, 0.1), 30 * MINUTE, -1.4, 0.1);
  for (let i = 1; i <= 60; i++) state = advance(state, (30 + 10 * i) * MINUTE);
  const [, , , drift, , cloud] = state.covariance;
  expect(drift / DRIFT).toBeCloseTo(1, 3);
  // Two readings half an hour and 0.4 stop apart: half of what passes in any weather.
  expect(state.cloudy).toBeCloseTo(0.504, 3);
  expect(cloud / (state.cloudy! * CLOUD)).toBeCloseTo(1, 3);
  expect(Math.abs(state.cloudEv)).toBeLessThan(1e-6);
});

test('time never runs backward: a reading from before the last is as of the last', () => {
  const state = learn(startOffset(10 * MINUTE), 10 * MINUTE, -1, 0.1);
  expect(learn(state, 0, -1, 0.1).atMs).toBe(10 * MINUTE);
  expect(offsetAt(state, 0)).toBe(offsetAt(state, 10 * MINUTE));
});

// A scene whose words are wrong: the forecast falls by 0.3 stop a minute and lamps hold the light.
const running = (minutes: number, everyS: number, evPerMin: number) => {
  let state = startOffset(0);
  for (let atMs = 0; atMs <= minutes * MINUTE; atMs += everyS * 1000) {
    state = learn(state, atMs, (evPerMin * atMs) / MINUTE, 0.07);
  }
  return state;
};

for (const everyS of [8, 60]) {
  for (const evPerMin of [0.25, -0.25]) {
    test(`light that runs off by ${evPerMin} a minute is seen to, read every ${everyS} s`, () => {
      const state = running(15, everyS, evPerMin);
      expect(state.driftEvPerMin / evPerMin).toBeGreaterThan(0.7);
      expect(state.driftEvPerMin / evPerMin).toBeLessThan(1.2);
      // Five minutes on, within a third of what they bring.
      const aheadEv = offsetAt(state, 20 * MINUTE) - 15 * evPerMin;
      expect(Math.abs(aheadEv - 5 * evPerMin)).toBeLessThan(5 * 0.25 * 0.4);
    });
  }
}

test('a step of half a stop is no drift', () => {
  let state = running(15, 8, 0);
  for (let i = 0; i < 15; i++) state = learn(state, 15 * MINUTE + i * 8000, -0.5, 0.07);
  expect(Math.abs(state.driftEvPerMin)).toBeLessThan(0.01);
});

test('a bank of cloud that is read every ten minutes leaves no drift behind', () => {
  let state = startOffset(0);
  // In from the sixth reading to the eighth, and gone.
  for (let i = 0; i < 14; i++) {
    state = learn(state, i * 10 * MINUTE, i >= 6 && i < 8 ? -2.6 : 0, 0.07);
  }
  expect(Math.abs(offsetAt(state, 140 * MINUTE))).toBeLessThan(0.3);
  expect(Math.abs(state.driftEvPerMin)).toBeLessThan(0.01);
});

/** How much cloud is taken to pass after readings ten minutes apart, each so far from the one before. */
const cloudyAfter = (offsets: readonly number[], noise = 0.07) =>
  offsets.reduce((state, ev, i) => learn(state, i * 10 * MINUTE, ev, noise), startOffset(0)).cloudy!;

test('how much cloud passes tonight is told by how far readings lie from what was expected', () => {
  // One reading as expected, ten minutes after the first, of a meter as steady as a hundredth: a share of 0.05, weighed by
  // 1 − e^(−10/15) and by what any weather moves in that time against the meter.
  const moves = CLOUD * (1 - Math.exp(-20 / 33));
  const weighed = (moves / (moves + 0.01 ** 2)) * (1 - Math.exp(-10 / 15));
  expect(cloudyAfter([0, 0], 0.01)).toBeCloseTo(1 - weighed * (1 - 0.05), 10);
  // A drift is little beside cloud; two stops are all that any weather has.
  expect(cloudyAfter([0, 0.2, 0.4, 0.6, 0.8, 1])).toBeLessThan(0.5);
  expect(cloudyAfter([0, 2, 0, 2, 0, 2])).toBeCloseTo(1, 10);
});

test('a meter that trembles is taken for calm light: a fifth of what any weather moves', () => {
  const steady = advance(startOffset(0), 10 * MINUTE, 0).covariance[5];
  expect(advance(startOffset(0), 10 * MINUTE, 1).covariance[5]).toBeCloseTo(steady / 5, 12);
  expect(steady).toBeCloseTo(CLOUD * (1 - Math.exp(-20 / 33)), 12);
});

test('no single reading makes a lean: of readings two minutes apart it counts three tenths, and as three deviations at most', () => {
  // 1 − e^(−2/3) would be 0.49 of it.
  const state = learn(learn(startOffset(0), 0, 0, 0.07), 2 * MINUTE, 5, 0.07);
  expect(state.lean).toBeCloseTo(0.3 * 3, 12);
});
