// Brackets through the whole way: what a shoot with one comes to, by hand and by the plain checker.

import { planShoot, readShoot, writePlan } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { noteText, remedyText, wordsFor } from '../../../packages/chart/src/index.js';
import { readPlan } from '../../../packages/core/src/files/plan-file.js';
import { checkPlan } from '../../reference/plan-checker.js';
import { evenPan, PLAIN_SHOOT, shootFrom } from '../shoots.js';

const german = wordsFor({ language: 'de' });
const camera = (more: object) => ({ ...PLAIN_SHOOT.camera, iso: { lowest: 100, highest: 6400 }, ...more });
const made = (keys: Record<string, unknown>) => {
  const plan = planShoot(shootFrom(keys));
  if ('infeasible' in plan) throw new Error(plan.infeasible.text);
  return plan;
};
const THREE = { frames: 3, stepEv: 2, betweenS: 0.3 };
const EVENING = {
  intervalS: 20,
  filters: [{ name: 'ND 3', stops: 3 }],
  camera: camera({ aperture: '2.8', bracket: THREE, frameMB: 30, cardGB: 64, batteryFrames: 1200 }),
};

describe('an evening with three exposures a frame', () => {
  test('is sound by the plain checker, and comes back from its file', () => {
    const plan = made(EVENING);
    expect(checkPlan(JSON.parse(JSON.stringify(plan)))).toEqual([]);
    const read = readPlan(JSON.parse(writePlan(plan)));
    expect(read.kind === 'ok' && read.plan.shoot.camera.bracket).toEqual(THREE);
  });

  // 18.4 s (20 less the gap and two pauses) / 5.25 = 3.50 s: "3.2" is 3.175 s, and its longest 12.7 s.
  test('stops at the longest middle exposure that the interval holds, and says so', () => {
    const { frames, notes } = made(EVENING);
    const longestS = Math.max(...frames.map(({ shutterS }) => shutterS));
    expect(longestS).toBeCloseTo(2 ** (5 / 3), 9);
    const note = notes.find(({ kind }) => kind === 'bracket')!;
    expect(note).toMatchObject({ exposures: 3, stepEv: 2, count: 3 * frames.length, end: 'interval' });
    expect(note.text).toContain(
      'At night that ends at 3.17 s, because the interval holds no more; by day at 1/1020 s',
    );
    expect(noteText(note, german)).toContain('weil das Intervall nicht mehr fasst');
    // With a longest shutter of 8 s the longest exposure ends it, and the middle one is 2 s.
    const short = made({
      ...EVENING,
      camera: { ...EVENING.camera, shutter: { shortest: '1/4000', longest: '8' } },
    });
    expect(short.notes.find(({ kind }) => kind === 'bracket')).toMatchObject({ end: 'longest', longestS: 2 });
    expect(checkPlan(JSON.parse(JSON.stringify(short)))).toEqual([]);
  });

  test('counts every exposure on card and battery', () => {
    const { summary, notes } = made(EVENING);
    expect(summary.cardNeededGB).toBeCloseTo((3 * 30 * summary.frameCount) / 1000, 9);
    expect(summary.batteryFits).toBe(3 * summary.frameCount <= 1200);
    const kinds = notes.map(({ kind }) => kind);
    expect(kinds.includes('battery-spent')).toBe(3 * summary.frameCount > 1200);
  });

  test('leaves a move its time', () => {
    const plan = made({ ...EVENING, moves: [evenPan(30)] });
    expect(checkPlan(JSON.parse(JSON.stringify(plan)))).toEqual([]);
    const { bracketS, slackS, shutterS, darkS, writeS, moveS, settleS } = plan.frames[0]!;
    expect(bracketS).toBeCloseTo(4.25 * shutterS + 0.6, 9);
    expect(shutterS + bracketS! + darkS! + writeS! + moveS! + settleS! + slackS!).toBeCloseTo(20, 9);
  });
});

test('a rig that times freely, and dark frames: sound by the plain checker', () => {
  for (const more of [
    { bulb: true },
    { darkFrame: true },
    { stepsPerStop: 2, bracket: { frames: 5, stepEv: 1 } },
  ]) {
    const plan = made({
      ...EVENING,
      intervalS: 40,
      crew: 'rig',
      camera: camera({ aperture: '2.8', bracket: THREE, ...more }),
    });
    expect(checkPlan(JSON.parse(JSON.stringify(plan)))).toEqual([]);
  }
});

test('where it does not fit the night, fewer or closer exposures are offered, and cure', () => {
  // f/2.8 and 1/4000 are too little for daylight, and the middle one is two stops longer.
  const keys = { ...EVENING, filters: [] };
  const shoot = shootFrom(keys);
  const plan = planShoot(shoot);
  if (!('infeasible' in plan)) throw new Error('a plan exists');
  const { remedies } = plan.infeasible;
  const fewer = remedies.find(({ change }) => change === 'fewer-exposures')!;
  const closer = remedies.find(({ change }) => change === 'closer-exposures')!;
  for (const remedy of [fewer, closer]) {
    const cured = planShoot({ ...shoot, ...remedy.apply });
    expect('frames' in cured && checkPlan(JSON.parse(JSON.stringify(cured)))).toEqual([]);
  }
  expect(fewer.text).toBe('Expose once instead of 3 times.');
  expect(closer.text).toMatch(/^Bracket by [\d.]+ stops instead of 2\.$/);
  expect(remedyText(closer, german)).toMatch(/ Blenden auseinander statt 2\.$/);
});

test.each([
  [
    { frames: 4, stepEv: 2 },
    ['camera', 'bracket', 'frames'],
    /: 4 is not a number of exposures; give 3, 5, 7 or 9$/,
  ],
  [
    { frames: 3, stepEv: 0.5 },
    ['camera', 'bracket', 'stepEv'],
    /: 0.5 is no whole number of clicks of the dial; give a multiple of a third/,
  ],
  [{ frames: 9, stepEv: 3 }, ['camera', 'bracket'], /: a bracket 24 stops wide does not fit between/],
])('%o is refused in one line', (bracket, path, message) => {
  const read = readShoot({ ...PLAIN_SHOOT, camera: camera({ bracket }) });
  if (read.kind === 'ok') throw new Error('it was taken');
  expect(read.errors).toHaveLength(1);
  expect(read.errors[0]!.path).toEqual(path);
  expect(read.errors[0]!.message).toMatch(message);
});
