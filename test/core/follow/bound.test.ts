// Readings that tell one side only, from frames that came out white or black.

import { type FollowState, followFrame, followLines, readingOfFrame, startFollow } from '@evenfall/core';
import { expect, test } from 'vitest';
import { frameOf, RIG, readingOf, startMsOf } from './evenings.js';

/** Read as forecast for the first frames. */
function calm(frames: number): FollowState {
  let state = startFollow(RIG);
  for (let frame = 0; frame < frames; frame++) {
    state = followFrame(state, { frame, reading: readingOf(RIG, frame, 0) }).state;
  }
  return state;
}

/** Frames metered by a camera whose shadows end 3 stops under grey: how far off each came out, how many were clipped. */
function metered(from: number, frames: number, offsetEv: number) {
  const errors: number[] = [];
  let bounds = 0;
  let now = startFollow(RIG);
  let seen = {};
  for (let frame = from; frame < from + frames; frame++) {
    const answer = followFrame(now, { frame, ...seen });
    now = answer.state;
    const { settingEv100 } = answer.setting;
    const mean = Math.min(1, 0.18 * 2 ** (frameOf(RIG, frame).sceneEv100 + offsetEv - settingEv100));
    const reading = readingOfFrame(
      { mean },
      { atMs: startMsOf(RIG, frame), settingEv100 },
      { blackLevel: 0.18 / 8 },
    );
    if (reading.bound !== undefined) bounds++;
    seen = { reading };
    errors.push(settingEv100 - (frameOf(RIG, frame).targetEv100 + offsetEv));
  }
  return { errors, bounds };
}

test('a bound that is expected anyway says nothing', () => {
  const state = calm(20);
  const { atMs, ev100 } = readingOf(RIG, 20, 0);
  const plain = followFrame(state, { frame: 21 });
  for (const [off, bound] of [
    [-0.5, 'atLeast'],
    [-6, 'atLeast'],
    [0.5, 'atMost'],
    [25, 'atMost'],
  ] as const) {
    const answer = followFrame(state, { frame: 21, reading: { atMs, ev100: ev100 + off, bound } });
    expect(answer).toEqual(plain);
  }
});

test('one that is not is a reading of its EV', () => {
  const state = calm(20);
  const { atMs, ev100 } = readingOf(RIG, 20, 0);
  for (const [off, bound] of [
    [0.3, 'atLeast'],
    [-0.3, 'atMost'],
  ] as const) {
    const reading = { atMs, ev100: ev100 + off };
    const read = followFrame(state, { frame: 21, reading });
    expect(followFrame(state, { frame: 21, reading: { ...reading, bound } }).offsetEv).toBe(read.offsetEv);
    expect(Math.abs(read.offsetEv)).toBeGreaterThan(0.1);
  }
});

test('a white frame is doubted like a torch; after it the light may lie anywhere beyond', () => {
  let state = calm(20);
  const at = (frame: number, off: number, bound?: 'atLeast') => ({
    frame,
    reading: { ...readingOf(RIG, frame, off), ...(bound && { bound }) },
  });
  const doubted = followFrame(state, at(20, 1.5, 'atLeast'));
  expect(doubted.warnings.map(({ kind }) => kind)).toEqual(['reading-doubted']);
  expect(doubted.readAgain).toBe(true);
  state = doubted.state;
  let frame = 21;
  for (; followFrame(state, at(frame, 1.5, 'atLeast')).readAgain; frame++) {
    state = followFrame(state, at(frame, 1.5, 'atLeast')).state;
  }
  expect((frame - 20) * 8).toBeGreaterThanOrEqual(50);
  state = followFrame(state, at(frame, 1.5, 'atLeast')).state;
  const beyond = followFrame(state, at(frame + 1, 2.9, 'atLeast'));
  expect(beyond.readAgain).toBe(false);
  expect(beyond.offsetEv).toBeGreaterThan(2.6);
  // The other way it is a jump still.
  expect(followFrame(state, at(frame + 1, -2)).readAgain).toBe(true);
});

test('a bound on the other side of it ends a doubt', () => {
  const state = followFrame(calm(20), { frame: 20, reading: readingOf(RIG, 20, 3) }).state;
  const { atMs, ev100 } = readingOf(RIG, 21, 1);
  const answer = followFrame(state, { frame: 21, reading: { atMs, ev100, bound: 'atMost' } });
  expect(answer.readAgain).toBe(false);
  expect(
    followFrame(state, { frame: 21, reading: { atMs, ev100: ev100 + 3, bound: 'atMost' } }).readAgain,
  ).toBe(true);
});

test.each([2, -3.2, -5])(
  'a rig with its frames alone for a meter finds light that is %d stops off',
  (offsetEv) => {
    const { errors, bounds } = metered(400, 120, offsetEv);
    // Two stops above grey and more than three below it a frame of this camera is clipped.
    expect(bounds).toBeGreaterThan(0);
    expect(Math.abs(errors[0]!)).toBeGreaterThan(1.8);
    // A third of a stop a frame: 5 stops take 15 frames, a bound or two besides.
    const late = errors.slice(40).map(Math.abs);
    expect(late).toHaveLength(80);
    expect(Math.max(...late)).toBeLessThan(0.5);
  },
);

test('lines: "bound" beside "ev100"', () => {
  const lines = followLines(RIG);
  const { ev100 } = readingOf(RIG, 0, 2);
  const first = lines.next(lines.start, JSON.stringify({ frame: 0, ev100, bound: 'atMost' }));
  expect(JSON.parse(first.out[0]!).offsetEv).toBe(0);
  const second = lines.next(first.state, JSON.stringify({ frame: 0, ev100, bound: 'atLeast' }));
  expect(JSON.parse(second.out[0]!).offsetEv).toBeCloseTo(2, 1);
  const wrong = lines.next(second.state, JSON.stringify({ frame: 0, ev100, bound: 'over' }));
  expect(JSON.parse(wrong.out[0]!).warnings[0].text).toContain(
    '"bound" must be "atLeast" or "atMost", got "over"',
  );
});
