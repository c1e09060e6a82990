// What one evening teaches the next: the light is made up, a fixed part of it wrong in the forecast.

import { expect, test } from 'vitest';
import { learnedReadings, planShoot, reviewFrames } from '../../../packages/core/src/index.js';
import { duskPlan, takenAs } from './taken.js';

const plan = duskPlan();
/** The place is darker than its words say, and its lamps come on before the forecast has them. */
const wrongEv = (sunAltitudeDeg: number) => -0.8 + (sunAltitudeDeg < -4 ? 0.5 : 0);
const review = reviewFrames(
  plan,
  plan.frames.map((frame) => ({
    ...takenAs(frame),
    level: { mean: 0.18 * 2 ** (frame.sceneEv100 + wrongEv(frame.sunAltitudeDeg) - frame.settingEv100) },
  })),
);

test('the forecast of the next evening is wrong by less than a quarter of what it was', () => {
  const next = { ...plan.shoot, date: '2026-10-21' };
  const plain = planShoot(next);
  const readings = learnedReadings(plan, review, next);
  expect(readings.length).toBeGreaterThan(10);
  const learned = planShoot({ ...next, readings });
  if (plain.kind === 'infeasible' || learned.kind === 'infeasible') throw new Error('no plan');
  let [before, after] = [0, 0];
  for (const [i, { sceneEv100, sunAltitudeDeg }] of plain.frames.entries()) {
    const true100 = sceneEv100 + wrongEv(sunAltitudeDeg);
    before += (sceneEv100 - true100) ** 2;
    after += (learned.frames[i]!.sceneEv100 - true100) ** 2;
  }
  expect(Math.sqrt(before / plain.frames.length)).toBeGreaterThan(0.5);
  expect(Math.sqrt(after / before)).toBeLessThan(0.25);
});

test('of the same evening they are what was read', () => {
  const readings = learnedReadings(plan, review, plan.shoot);
  expect(readings.map(({ at }) => at)).toEqual(review.light.map(({ at }) => at));
  // Sun and moon are interpolated between other times: less than a ten-thousandth of a stop.
  for (const [i, { ev100 }] of readings.entries()) expect(ev100).toBeCloseTo(review.light[i]!.ev100, 4);
});

test('nothing was read, or the sun stands otherwise: nothing is learned', () => {
  const blind = reviewFrames(
    plan,
    plan.frames.map((frame) => takenAs(frame)),
  );
  expect(learnedReadings(plan, blind, plan.shoot)).toEqual([]);
  const day = { ...plan.shoot, span: { fromSunAltitudeDeg: 20, toSunAltitudeDeg: 10 } };
  expect(learnedReadings(plan, review, day)).toEqual([]);
});
