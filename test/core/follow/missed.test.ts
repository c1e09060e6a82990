// Cues found out as missed after later ones: what they should have turned stands as before, unless it was turned since.

import { type FollowStep, followFrame, followLines, startFollow } from '@evenfall/core';
import { expect, test } from 'vitest';
import { withoutLastCue } from '../../../packages/core/src/follow/camera.js';
import { withoutCue } from '../../../packages/core/src/follow/missed.js';
import { HAND, startMsOf } from './evenings.js';

interface Done {
  readonly step: FollowStep;
  readonly controls: readonly string[];
}

/** Asked at every frame, nothing metered: the plan's cues. */
function evening(until: number) {
  let state = startFollow(HAND);
  const steps: FollowStep[] = [];
  const done: Done[] = [];
  for (let frame = 0; frame <= until; frame++) {
    const step = followFrame(state, { frame });
    state = step.state;
    steps.push(step);
    if (step.cue) done.push({ step, controls: step.cue.changes.map(({ control }) => control) });
  }
  return { steps, done, state };
}

const marks = ({ setting: { shutter, iso, aperture, filters } }: FollowStep) => ({
  shutter,
  iso: String(iso),
  aperture,
  filters: filters.join(),
});

const ALL = evening(899);

/** Places in the evening where one of the last cues turned a control that no later one has, and such as were turned since. */
function places() {
  const open: number[] = [];
  const settled: number[] = [];
  for (let i = 0; i + 1 < ALL.done.length; i++) {
    const [a, b] = [ALL.done[i]!, ALL.done[i + 1]!];
    if (a.controls.length !== 1 || b.controls.length !== 1) continue;
    (a.controls[0] === b.controls[0] ? settled : open).push(i);
  }
  return { open, settled };
}

test('a cue before the last was missed: its control stands as before it, the later one as it was done', () => {
  const { open } = places();
  expect(open.length).toBeGreaterThan(0);
  for (const i of open) {
    const [missed, later] = [ALL.done[i]!.step, ALL.done[i + 1]!.step];
    const before = marks(ALL.steps[missed.frame - 1]!);
    const now = marks(later);
    const control = missed.cue!.changes[0]!.control as keyof typeof now;
    const stands = { ...now, [control]: before[control] };
    const told = followFrame(later.state, { frame: later.frame, missed: missed.cue!.cue });
    expect(told.warnings[0]).toMatchObject({
      kind: 'cue-missed',
      cue: missed.cue!.cue,
      sinceFrame: missed.frame,
    });
    expect(told.warnings[0]).not.toHaveProperty('untilFrame');
    // What is told next goes from there, and reporting the setting by its marks says the same.
    const { iso, filters, ...rest } = stands;
    const setting = { ...rest, iso: Number(iso), filters: filters === '' ? [] : [filters] };
    const reported = followFrame(later.state, { frame: later.frame, setting });
    expect(marks(told)).toEqual(marks(reported));
    const next = told.cue ?? told.cuesAhead[0]!;
    for (const change of next.changes) {
      if (change.control === 'filter') continue;
      expect(change.from).toBe(stands[change.control as keyof typeof stands]);
    }
  }
});

test('one whose control a later cue turned stands as it should: it is said until when, and nothing changes', () => {
  const { settled } = places();
  expect(settled.length).toBeGreaterThan(2);
  for (const i of settled) {
    const [missed, later] = [ALL.done[i]!.step, ALL.done[i + 1]!.step];
    const plain = followFrame(later.state, { frame: later.frame + 1 });
    const told = followFrame(later.state, { frame: later.frame + 1, missed: missed.cue!.cue });
    expect(told.warnings[0]).toMatchObject({
      kind: 'cue-missed',
      cue: missed.cue!.cue,
      sinceFrame: missed.frame,
      untilFrame: later.frame,
    });
    expect([told.setting, told.cuesAhead]).toEqual([plain.setting, plain.cuesAhead]);
  }
});

test('two missed leave the camera where neither was done, whichever is told first', () => {
  const { open, settled } = places();
  for (const i of [...open, ...settled]) {
    const { camera } = ALL.done[i + 1]!.step.state;
    const { length } = camera.done;
    const [first, second] = [camera.done[length - 2]!, camera.done[length - 1]!];
    const newestFirst = withoutLastCue(withoutLastCue(camera, second), first);
    const oldestFirst = withoutCue(camera, length - 2, false, 0).camera;
    expect(oldestFirst.done.map(({ cue }) => cue)).not.toContain(first.cue);
    const both = withoutLastCue(oldestFirst, oldestFirst.done.at(-1)!);
    expect(both.present).toEqual(first.before);
    expect(both.present).toEqual(newestFirst.present);
    expect(both.filterChanges).toBe(newestFirst.filterChanges);
  }
});

test('by its time, to within a minute', () => {
  const { step } = ALL.done[4]!;
  const later = ALL.done[5]!.step;
  for (const offMs of [0, -40_000, 20_000]) {
    const atMs = startMsOf(HAND, step.frame) + offMs;
    const { warnings } = followFrame(later.state, { frame: later.frame, missed: { atMs } });
    expect(warnings[0]).toMatchObject({ kind: 'cue-missed', cue: step.cue!.cue });
  }
  const none = followFrame(ALL.done[0]!.step.state, { missed: { atMs: startMsOf(HAND, 899) } });
  expect(none.warnings[0]).toMatchObject({
    kind: 'cue-unknown',
    reason: 'none-then',
    at: HAND.frames[899]!.at,
  });
  for (const atMs of [Number.NaN, Number.POSITIVE_INFINITY, 9e15]) {
    const { warnings } = followFrame(later.state, { missed: { atMs } });
    expect(warnings[0]).toMatchObject({ kind: 'time-unknown', what: 'time', given: String(atMs) });
  }
});

test('of a number that was never told nothing is changed', () => {
  const { step } = ALL.done[3]!;
  const { warnings } = followFrame(step.state, { frame: step.frame, missed: 77 });
  expect(warnings[0]).toMatchObject({ kind: 'cue-unknown', cue: 77, reason: 'not-told' });
});

test('lines: "missed" by number or time', () => {
  const lines = followLines(HAND);
  let { start: state } = lines;
  for (const { frame } of ALL.done.slice(0, 6).map(({ step }) => step)) {
    state = lines.next(state, JSON.stringify({ frame, jump: true })).state;
  }
  const at = HAND.frames[ALL.done[4]!.step.frame]!.at;
  for (const missed of [5, at]) {
    const { out } = lines.next(state, JSON.stringify({ missed }));
    expect(JSON.parse(out[0]!).warnings[0]).toMatchObject({ kind: 'cue-missed', cue: 5 });
  }
  const { out } = lines.next(state, '{"missed":"yesterday"}');
  expect(JSON.parse(out[0]!).warnings[0].text).toContain('"missed" must be a time such as');
});
