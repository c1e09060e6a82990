// Brackets while an evening is followed: whatever is told, all of a frame's exposures fit its interval and the camera's
// dial. Held against the times that the marks stand for, by docs/ramp.md, "Exactly".

import { type FollowAnswer, followFrame, type PlanMade, planShoot, startFollow } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { EVENING_SHOOT, planOf } from '../../reference/evening-shoot.js';
import { shootFrom } from '../shoots.js';
import { startMsOf } from './evenings.js';

const { title: _, ...SHOOT } = EVENING_SHOOT;
const THREE = { frames: 3, stepEv: 2, betweenS: 0.3 };
const FILTERS = [
  { name: 'ND 0.9', stops: 3 },
  { name: 'ND 1.8', stops: 6 },
];
const KEYS = {
  ...SHOOT,
  filters: FILTERS,
  intervalS: 10,
  look: { nightEv: -2 },
  limits: { toleranceEv: 0.34 },
  camera: { ...SHOOT.camera, aperture: '2.8', bracket: THREE },
};

/** Followed from the first frame to the last, the light so many stops off the forecast. */
function followed(plan: PlanMade, offsetEv: (frame: number) => number): FollowAnswer[] {
  const answers: FollowAnswer[] = [];
  let state = startFollow(plan);
  for (const { frame, sceneEv100 } of plan.frames) {
    const reading = { atMs: startMsOf(plan, frame), ev100: sceneEv100 + offsetEv(frame), sure: true };
    const answer = followFrame(state, { frame, reading });
    answers.push(answer);
    state = answer.state;
  }
  return answers;
}

/** The longest and the shortest exposure of all frames, and the most that any interval holds, gap and pauses included. */
function ends(
  answers: readonly FollowAnswer[],
  { frames, stepEv, betweenS }: typeof THREE,
  { darkFrame = false, gapS = 1 }: { darkFrame?: boolean; gapS?: number; bulb?: boolean } = {},
) {
  const reach = (frames - 1) / 2;
  let [longestS, shortestS, mostS] = [0, Number.POSITIVE_INFINITY, 0];
  for (const { setting } of answers) {
    const times = Array.from({ length: frames }, (_, i) => setting.shutterS * 2 ** ((i - reach) * stepEv));
    const openS = times.reduce((sum, timeS) => sum + timeS, 0);
    longestS = Math.max(longestS, ...times);
    shortestS = Math.min(shortestS, ...times);
    mostS = Math.max(mostS, openS * (darkFrame ? 2 : 1) + (frames - 1) * betweenS + gapS);
  }
  return { longestS, shortestS, mostS };
}

/** From four stops brighter at first to four darker at the end: beyond both ends of the kit. */
const sinking = (plan: PlanMade) => (frame: number) => 4 - (8 * frame) / plan.frames.length;

describe('light that leaves the kit at both ends', () => {
  // 10 s less 1 s of gap and 0.6 s of pauses are 8.4 s; / 5.25 = 1.6 s: "1.6" is 1.587 s, the longest 6.35 s. The dial's
  // "6" is 6.35 s too. At the other end 1/4000 is 1/4096 s.
  test('hands are told marks whose brackets end with the dial and the interval', () => {
    const plan = planOf(KEYS);
    const answers = followed(plan, sinking(plan));
    const { longestS, shortestS, mostS } = ends(answers, THREE);
    expect(longestS).toBeCloseTo(2 ** (8 / 3), 9);
    expect(shortestS).toBeGreaterThanOrEqual(1 / 4096 - 1e-12);
    expect(mostS).toBeLessThanOrEqual(10 + 1e-9);
    expect(new Set(answers.flatMap(({ warnings }) => warnings.map(({ kind }) => kind)))).toContain(
      'out-of-reach',
    );
  });

  test.each([
    ['a rig on dials', { crew: 'rig', limits: {} }, {}],
    ['a freely timed one', { crew: 'rig', limits: {} }, { bulb: true }],
    ['dark frames', { crew: 'rig', limits: {} }, { darkFrame: true }],
    ['a freely timed one with dark frames', { crew: 'rig', limits: {} }, { bulb: true, darkFrame: true }],
  ])('%s: the same', (_, keys, more) => {
    const plan = planOf({ ...KEYS, ...keys, camera: { ...KEYS.camera, ...more } });
    const answers = followed(plan, sinking(plan));
    const { longestS, shortestS, mostS } = ends(answers, THREE, more);
    expect(longestS).toBeLessThanOrEqual(2 ** (8 / 3) + 1e-9);
    expect(shortestS).toBeGreaterThanOrEqual(1 / 4096 - 1e-12);
    expect(mostS).toBeLessThanOrEqual(10 + 1e-9);
    // The light is dark enough that the interval or the dial is used up, to within a click.
    expect(longestS * 2 > 2 ** (8 / 3) || mostS > 9).toBe(true);
  });
});

test('a setting whose bracket the interval does not hold is turned back', () => {
  const plan = planOf(KEYS);
  let { state } = followFrame(startFollow(plan), { frame: 0 });
  // The middle one at 4 s: 1 + 4 + 16 s in an interval of 10 s.
  const told = followFrame(state, { frame: 1, setting: { shutter: '4' } });
  expect(told.warnings.map(({ kind }) => kind)).toContain('outside-kit');
  expect(ends([told], THREE).mostS).toBeLessThanOrEqual(10);
  ({ state } = told);
  // A camera that goes no longer than 4 s has its middle one at 1 s; one of 1/8 to 1 s holds no bracket 4 stops wide.
  const narrowed = followFrame(state, { frame: 2, kit: { shutter: { longest: '4' } } });
  expect(narrowed.warnings).toEqual([]);
  expect(ends([narrowed], THREE).longestS).toBeLessThanOrEqual(4);
  const empty = followFrame(state, { frame: 2, kit: { shutter: { shortest: '1/8', longest: '1' } } });
  expect(empty.warnings.map(({ kind }) => kind)).toEqual(['kit-empty']);
});

test('what has no plan is followed with whole brackets all the same', () => {
  const plan = planShoot(shootFrom({ ...KEYS, filters: [], look: { nightEv: 0 } }));
  expect(plan.kind === 'infeasible').toBe(true);
  let state = startFollow(plan);
  const answers: FollowAnswer[] = [];
  for (let frame = 0; frame < state.evening.frameCount; frame += 5) {
    const answer = followFrame(state, { frame });
    answers.push(answer);
    ({ state } = answer);
  }
  const { longestS, shortestS, mostS } = ends(answers, THREE);
  expect(longestS).toBeLessThanOrEqual(2 ** (8 / 3) + 1e-9);
  expect(shortestS).toBeGreaterThanOrEqual(1 / 4096 - 1e-12);
  expect(mostS).toBeLessThanOrEqual(10 + 1e-9);
});
