// An evening whose plan is impossible is followed all the same, as close as the kit can.

import {
  type FollowWarning,
  followFrame,
  followLines,
  type Plan,
  planShoot,
  readShoot,
  resumeFollow,
  saveFollow,
  startFollow,
} from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { EVENING_SHOOT, planOf } from '../../reference/evening-shoot.js';

/** A shoot that has no plan, and the same with a kit that has one, for the light. */
function impossible(more: object): Plan {
  const read = readShoot({ ...EVENING_SHOOT, ...more });
  if (read.kind === 'wrong') throw new Error(read.errors[0]!.message);
  const plan = planShoot(read.shoot);
  if (plan.kind !== 'infeasible') throw new Error('it has a plan');
  return plan;
}

const LIGHT = planOf(EVENING_SHOOT).frames;
const { camera } = EVENING_SHOOT;
const TOLERANCE = 0.25;

/** Followed with the light as forecast: how far off each frame is, and what was said. */
function evening(plan: Plan, from = 0) {
  let state = startFollow(plan);
  const errors: number[] = [];
  const said: (FollowWarning & { readonly atFrame: number })[] = [];
  for (let frame = from; frame < LIGHT.length; frame++) {
    const { at, sceneEv100, targetEv100 } = LIGHT[frame]!;
    const answer = followFrame(state, { frame, reading: { atMs: Date.parse(at), ev100: sceneEv100 } });
    state = answer.state;
    errors.push(answer.setting.settingEv100 - targetEv100);
    for (const warning of answer.warnings) said.push({ ...warning, atFrame: frame });
  }
  return { errors, said };
}

describe('too dark', () => {
  const plan = impossible({ camera: { ...camera, iso: { lowest: 100, highest: 200 } } });
  const { errors, said } = evening(plan);
  // By hand: f/4 is Av 4, 6.35 s (marked 6) Tv -8/3, ISO 200 one stop over 100: the darkest that is rendered.
  const darkest = 4 - 8 / 3 - 1;

  test('within the kit it is followed as any other, beyond it the kit stands at its end', () => {
    LIGHT.forEach(({ targetEv100 }, i) => {
      const short = darkest - targetEv100;
      if (short < -0.5) expect(Math.abs(errors[i]!), `frame ${i}`).toBeLessThan(0.5);
    });
    const last = LIGHT.at(-1)!.targetEv100;
    expect(darkest - last).toBeGreaterThan(0.5);
    expect(errors.at(-1)!).toBeCloseTo(darkest - last, 6);
  });

  test('where it leaves the kit, and by how much, is said at the first frame, and when it is so', () => {
    expect(said.map(({ kind, atFrame }) => `${kind} ${atFrame === 0 ? 'first' : 'then'}`)).toEqual([
      'out-of-reach first',
      'out-of-reach then',
    ]);
    const beyond = LIGHT.map(({ targetEv100 }) => darkest - targetEv100 - TOLERANCE);
    const leaves = beyond.findIndex((ev) => ev >= 0.05);
    const [first, then] = said as (Extract<FollowWarning, { kind: 'out-of-reach' }> & { atFrame: number })[];
    expect(first).toMatchObject({ now: false, end: 'dark' });
    // Looked at every half minute: four frames.
    expect(Math.abs(first!.frame - leaves)).toBeLessThanOrEqual(4);
    expect(first!.worstEv).toBeCloseTo(Math.max(...beyond), 1);
    expect(then).toMatchObject({ now: true });
    expect(Math.abs(then!.atFrame - leaves)).toBeLessThanOrEqual(4);
  });

  test('saved, resumed and followed by lines it is the same evening', () => {
    const { state } = followFrame(startFollow(plan), { frame: 30 });
    const resumed = resumeFollow(plan, JSON.parse(JSON.stringify(saveFollow(state))));
    if (resumed.kind === 'wrong') throw new Error(resumed.errors[0]!.message);
    expect(followFrame(resumed.state, { frame: 31 }).setting).toEqual(
      followFrame(state, { frame: 31 }).setting,
    );
    const lines = followLines(plan);
    expect(JSON.parse(lines.next(lines.start, '{"frame":30}').out[0]!).frame).toBe(30);
  });
});

test('too bright at first: followed from the bright end, and told when it is within reach', () => {
  const plan = impossible({
    filters: [],
    camera: { ...camera, shutter: { shortest: '1/100', longest: '6' } },
  });
  const { errors, said } = evening(plan);
  // f/4 and 1/102 s at ISO 100: 4 + 20/3.
  const brightest = 4 + 20 / 3;
  const beyond = LIGHT.map(({ targetEv100 }) => targetEv100 - brightest);
  expect(beyond[0]).toBeGreaterThan(1);
  expect(errors[0]).toBeCloseTo(-beyond[0]!, 6);
  expect(said[0]).toMatchObject({ kind: 'out-of-reach', now: true, end: 'bright', frame: 0 });
  expect(said[0]).toMatchObject({ worstEv: expect.closeTo(beyond[0]! - TOLERANCE, 1) });
  const back = said.find(({ kind }) => kind === 'within-reach');
  expect(back).toMatchObject({ end: 'bright' });
  expect(Math.abs(beyond[back!.atFrame]! - (TOLERANCE - 0.1))).toBeLessThan(0.1);
  // In between it fades by stops: told where half a stop has gone, not at every frame.
  expect(said.length).toBeLessThan(12);
});

test('too fast for the time between cues: said at the first frame, followed as fast as may be', () => {
  const plan = impossible({ limits: { toleranceEv: 0.25, secondsBetweenCues: 150, largestStepEv: 1 / 3 } });
  if (plan.kind !== 'infeasible') throw new Error();
  expect(plan.infeasible.reason).toBe('too-fast');
  const { errors, said } = evening(plan);
  expect(said[0]).toMatchObject({ kind: 'too-fast', atFrame: 0 });
  expect((said[0] as { worstEv: number }).worstEv).toBeGreaterThan(0.05);
  expect(said.filter(({ kind }) => kind === 'too-fast')).toHaveLength(1);
  expect(errors.length).toBe(900);
  expect(said.map(({ text }) => text).join()).not.toContain('0.0 stops');
});

test('of nothing there is nothing to follow', () => {
  const { span: _, ...rest } = EVENING_SHOOT;
  const never = { ...rest, span: { fromSunAltitudeDeg: 3, toSunAltitudeDeg: -89 } };
  const read = readShoot(never);
  if (read.kind === 'wrong') throw new Error(read.errors[0]!.message);
  expect(() => startFollow(planShoot(read.shoot))).toThrow('nothing to follow: ');
});
