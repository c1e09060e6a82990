// A rig that asks but now and then: between two questions it moves as far as the limits let it, and keeps up.

import { followFrame, type PlanMade, startFollow } from '@evenfall/core';
import { expect, test } from 'vitest';
import { EVENING_SHOOT, planOf } from '../../reference/evening-shoot.js';
import { BULB, frameOf, RIG, readingOf } from './evenings.js';

const { title: _, ...SHOOT } = EVENING_SHOOT;
/** One cue in 40 s, of a third of a stop: as slow as a rig may be told to be. */
const SLOW = planOf({
  ...SHOOT,
  crew: 'rig',
  filters: [],
  limits: { secondsBetweenCues: 40, largestStepEv: 1 / 3, toleranceEv: 0.5 },
});

function asked(plan: PlanMade, every: number, offsetEv: (frame: number) => number) {
  let state = startFollow(plan);
  const rows: { frame: number; errorEv: number; settingEv100: number; kinds: string[]; cue: number }[] = [];
  for (let frame = 0; frame < plan.frames.length; frame += every) {
    const answer = followFrame(state, { frame, reading: readingOf(plan, frame, offsetEv(frame)) });
    state = answer.state;
    expect(answer.frame).toBe(frame);
    const { settingEv100 } = answer.setting;
    rows.push({
      frame,
      settingEv100,
      errorEv: settingEv100 - frameOf(plan, frame).targetEv100 - offsetEv(frame),
      kinds: answer.warnings.map(({ kind }) => kind),
      cue: state.camera.cueCount,
    });
  }
  return rows;
}

test.each([
  ['a cue a frame', RIG],
  ['a cue in 40 s', SLOW],
  ['shutter timed freely', BULB],
] as const)('asked every 30th frame it stands as near the light as asked at each: %s', (_name, plan) => {
  for (const offsetEv of [0, -1]) {
    const often = asked(plan, 1, () => offsetEv);
    const seldom = asked(plan, 30, () => offsetEv);
    expect(seldom).toHaveLength(30);
    const worstOften = Math.max(...often.map(({ errorEv }) => Math.abs(errorEv)));
    const worst = Math.max(...seldom.map(({ errorEv }) => Math.abs(errorEv)));
    // Between the questions the light goes on by two stops and more.
    expect(worst).toBeLessThanOrEqual(worstOften + 0.1);
    // That frames are passed over is told once, not at every question.
    const told = seldom.filter(({ kinds }) => kinds.includes('clock-ahead'));
    expect(told.length).toBeLessThanOrEqual(1);
    expect(seldom.flatMap(({ kinds }) => kinds).filter((kind) => kind !== 'clock-ahead')).toEqual([]);
  }
});

test('no farther than the limits let it on the frames between', () => {
  // A gust of light: three stops darker from frame 300 on, believed at the second reading.
  const rows = asked(SLOW, 10, (frame) => (frame >= 300 ? -3 : 0));
  rows.slice(1).forEach(({ settingEv100 }, i) => {
    // Ten frames of 8 s hold two cues 40 s apart, of a third of a stop each; a cue may fall on both ends.
    expect(Math.abs(settingEv100 - rows[i]!.settingEv100)).toBeLessThanOrEqual(2 / 3 + 1e-9);
  });
  const jump = rows.findIndex(({ frame }) => frame === 300);
  // 3 stops at 2/3 of a stop a question are five questions after it is believed.
  expect(Math.abs(rows[jump + 2]!.errorEv)).toBeGreaterThan(1.5);
  expect(Math.abs(rows[jump + 7]!.errorEv)).toBeLessThan(0.5);
});

test('the order is one cue, whole, and may be reported missed', () => {
  let state = startFollow(RIG);
  let cue = 0;
  for (let frame = 0; frame < 600; frame += 30) {
    const before = state;
    const answer = followFrame(state, { frame, reading: readingOf(RIG, frame, 0) });
    state = answer.state;
    if (answer.cue?.setNow === undefined) continue;
    expect(answer.cue.cue).toBe(++cue);
    expect(answer.cue.setNow).toEqual(answer.setting);
    const missed = followFrame(state, { frame, missed: cue });
    expect(missed.warnings[0]).toMatchObject({ kind: 'cue-missed', cue, sinceFrame: frame });
    expect(missed.cue?.changes[0]).toMatchObject({
      from: answer.cue.changes[0]!.control === 'filter' ? [] : answer.cue.changes[0]!.from,
    });
    expect(before.camera.cueCount).toBe(cue - 1);
  }
  expect(cue).toBeGreaterThan(5);
});
