// Brackets through the whole way: what a shoot with one comes to, by hand and by the plain checker.

import { planShoot, readShoot, writeFramesCsv, writePlan } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import {
  faultText,
  noteText,
  planChart,
  reasonText,
  remedyText,
  wordsFor,
} from '../../../packages/chart/src/index.js';
import { readPlan } from '../../../packages/core/src/files/plan-file.js';
import { checkPlan } from '../../reference/plan-checker.js';
import { evenPan, PLAIN_SHOOT, shootFrom } from '../shoots.js';

const german = wordsFor({ language: 'de' });
const camera = (more: object) => ({ ...PLAIN_SHOOT.camera, iso: { lowest: 100, highest: 6400 }, ...more });
const made = (keys: Record<string, unknown>) => {
  const plan = planShoot(shootFrom(keys));
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
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

  // "1/400" is 1/406 s; two stops either side are "1/1600" and "1/100".
  test('tells the marks of both ends in every frame, its table and its chart', () => {
    const plan = made(EVENING);
    const [first] = plan.frames;
    expect(first).toMatchObject({ shutter: '1/400', bracketShortest: '1/1600', bracketLongest: '1/100' });
    const [header, row] = writeFramesCsv(plan)
      .split('\r\n')
      .map((line) => line.split(','));
    const column = (name: string) => row![header!.indexOf(name)];
    expect([column('bracketShortest'), column('bracketLongest')]).toEqual(['1/1600', '1/100']);
    // 1/4 + 4 of the middle one, and two pauses.
    expect(Number(column('bracketS'))).toBeCloseTo(4.25 * first!.shutterS + 0.6, 9);
    const texts = (svg: string) => [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text]) => text);
    expect(texts(planChart(plan))).toEqual(
      expect.arrayContaining(['bracket', '1/1600', '1/100', '13 s', '0.8 s']),
    );
    expect(texts(planChart(plan, { words: german }))).toContain('Reihe');
    const single = made({ ...EVENING, camera: camera({ aperture: '2.8' }) });
    expect(writeFramesCsv(single).split('\r\n')[0]).not.toContain('bracket');
    expect(texts(planChart(single))).not.toContain('bracket');
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
  if (plan.kind !== 'infeasible') throw new Error('a plan exists');
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

// Nine exposures, eight pauses of 1 s: 8 s, and 1 s of gap; from "1/4000" on, a stop apart, 511 / 4096 s: 9.125 s.
test('an interval too short for it is refused by its exposures and pauses', () => {
  const bracket = { frames: 9, stepEv: 1, betweenS: 1 };
  const read = readShoot({ ...PLAIN_SHOOT, intervalS: 9, camera: camera({ bracket }) });
  if (read.kind === 'ok') throw new Error('it was taken');
  const [error] = read.errors;
  expect(error!.message).toContain(
    'intervalS: 9 is too short for a bracket of 9 exposures, the shortest "1/4000", 8 s of pauses, and a gap of 1 s; give 9.125 or more',
  );
  expect(faultText(error!, german)).toContain(
    'eine Belichtungsreihe aus 9 Belichtungen, die kürzeste 1/4000, 8 s Pausen dazwischen, und eine Pause von 1 s; richtig: 9,125 oder mehr',
  );
  const dark = readShoot({ ...PLAIN_SHOOT, intervalS: 9.2, camera: camera({ bracket, darkFrame: true }) });
  // 2 * 511 / 4096 + 9 = 9.2495.
  expect(dark.kind === 'wrong' && dark.errors[0]!.message).toMatch(
    /"1\/4000", with their dark frames, 8 s of pauses, and a gap of 1 s; give 9.25 or more$/,
  );
});

test('moves that leave it no time: the answer names exposures and pauses, and what cures', () => {
  const bracket = { frames: 9, stepEv: 1, betweenS: 1 };
  const keys = { intervalS: 10.5, camera: camera({ bracket }), moves: [evenPan(30)] };
  const plan = planShoot(shootFrom(keys));
  if (plan.kind !== 'infeasible') throw new Error('a plan exists');
  const { infeasible } = plan;
  expect(infeasible).toMatchObject({ reason: 'no-time', exposures: 9, pausesS: 8 });
  expect(infeasible.text).toMatch(
    /An interval of 10.5 s leaves no time for 9 exposures and 8 s of pauses\.$/,
  );
  expect(reasonText(infeasible, german)).toMatch(/lässt keine Zeit für 9 Belichtungen und 8 s Pausen\.$/);
  expect(infeasible.remedies.map(({ change }) => change)).toContain('fewer-exposures');
  const read = readPlan(JSON.parse(writePlan(plan)));
  expect(read.kind === 'ok' && read.plan).toEqual(JSON.parse(JSON.stringify(plan)));
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
