// How much a meter trembles, as its readings tell it, against sums by hand and normal numbers of a known spread.

import { expect, test } from 'vitest';
import { followFrame, startFollow } from '../../../packages/core/src/follow/follow.js';
import {
  type MeterNoise,
  meterSpreadEv,
  withReading,
} from '../../../packages/core/src/follow/meter-noise.js';
import { normal } from '../../reference/evening-simulator.js';
import { seeded } from '../../reference/random.js';
import { RIG, readingOf } from './evenings.js';

const STATED = 0.07;

/** What is known after readings so many seconds apart that change by so much, one after the other. */
function after(changes: readonly number[], everyS: number): MeterNoise {
  let offsetEv = 0;
  let noise = withReading(undefined, 0, offsetEv);
  changes.forEach((changeEv, i) => {
    offsetEv += changeEv;
    noise = withReading(noise, (i + 1) * everyS * 1000, offsetEv);
  });
  return noise;
}
const spread = (changes: readonly number[], everyS: number) => meterSpreadEv(after(changes, everyS), STATED);

test('nothing is known of a meter that was read once, or that was not', () => {
  expect(meterSpreadEv(undefined, STATED)).toBe(STATED);
  expect(spread([], 8)).toBe(STATED);
});

test('who reads every frame begins with a third of a stop, who reads every minute with what was stated', () => {
  expect(spread([0.1], 8)).toBeCloseTo(0.3, 12);
  expect(spread([0.1], 19)).toBeCloseTo(0.3, 12);
  expect(spread([0.1], 21)).toBeCloseTo(STATED, 12);
});

test('one change that is taken back: half the mean square, the first figure counting as one more', () => {
  // (0.3² + ½ · (0.3² + 0.03²) / 2) / 2
  expect(spread([0.3, -0.03], 8)).toBeCloseTo(Math.sqrt((0.09 + 0.09 / 4 + 0.0009 / 4) / 2), 12);
  // A minute apart light may have moved, and the product of the two tells: (0.07² + 2 · 0.3 · 0.03) / 2
  expect(spread([0.3, -0.03], 60)).toBeCloseTo(Math.sqrt((0.0049 + 0.018) / 2), 12);
});

test('changes to one side are the light, as far as their number lets one say so', () => {
  const kept = Math.exp(-1 / 300);
  const count = kept + 1;
  const still = (0.09 + (count * 0.09) / 2) / (1 + count);
  const moving = (0.09 - 2 * count * 0.09) / (1 + count);
  const variance = moving + (Math.sqrt(5) * still) / Math.sqrt(count);
  expect(Math.sqrt(variance)).toBeGreaterThan(STATED);
  expect(spread([0.3, 0.3, 0.3], 8)).toBeCloseTo(Math.sqrt(variance), 12);
  // Never less than stated.
  expect(spread([0.3, 0.3, 0.3, 0.3], 8)).toBe(STATED);
});

test('older changes are forgotten, to 1/e in three hundred', () => {
  // A meter that trembled for a thousand readings and has been steady for three hundred.
  const steady = [...Array.from({ length: 1000 }, (_, i) => (i % 2 ? 0.3 : -0.3)), ...Array(300).fill(0)];
  const kept = Math.exp(-1 / 300);
  const sum = (n: number) => (1 - kept ** n) / (1 - kept);
  // 999 pairs of two changes, one of a change and none, 299 of none.
  const squares = kept ** 300 * 0.09 * sum(999) + kept ** 299 * 0.045;
  const still = (0.09 + squares / 2) / (1 + sum(1299));
  expect(spread(steady, 8)).toBeCloseTo(Math.sqrt(still), 12);
});

test('white noise of a known spread is found, in the mean of two hundred evenings', () => {
  for (const everyS of [8, 60]) {
    const found = Array.from({ length: 200 }, (_, seed) => {
      const random = seeded(seed);
      let noise: MeterNoise | undefined;
      for (let i = 0; i < 900; i++) noise = withReading(noise, i * everyS * 1000, 0.3 * normal(random));
      return meterSpreadEv(noise, STATED);
    });
    const mean = found.reduce((sum, ev) => sum + ev, 0) / found.length;
    expect(Math.abs(mean - 0.3)).toBeLessThan(0.01);
  }
});

test('a change of more than a stop and a half is a slip, or weather; so is one after a pause', () => {
  expect(after([0.1, -0.1, 1.45], 8).count).toBeCloseTo(Math.exp(-1 / 300) + 1, 12);
  expect(after([0.1, -0.1, 1.55], 8).count).toBe(1);
  expect(after([0.1, -0.1, 0.1], 89).count).toBeGreaterThan(1);
  expect(after([0.1, -0.1, 0.1], 91).count).toBe(0);
});

test('doubted readings tell of the meter too: one that begins to tremble is soon doubted no more', () => {
  let state = startFollow(RIG);
  const doubted: number[] = [];
  for (let frame = 0; frame < 80; frame++) {
    const offsetEv = frame < 20 ? 0 : frame % 2 === 0 ? 0.6 : -0.6;
    const step = followFrame(state, { frame, reading: readingOf(RIG, frame, offsetEv) });
    state = step.state;
    if (step.warnings.some(({ kind }) => kind === 'reading-doubted')) doubted.push(frame);
  }
  expect(doubted.length).toBeGreaterThan(0);
  expect(Math.max(...doubted)).toBeLessThan(30);
});
