// The kit changes in mid-evening: a filter lost or found, a limit changed.

import {
  type FollowInput,
  type FollowState,
  type FollowStep,
  followFrame,
  followLines,
  type PlanMade,
  resumeFollow,
  saveFollow,
  startFollow,
} from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { seeded } from '../../reference/random.js';
import { BULB, frameOf, HAND, RIG, readingOf } from './evenings.js';

const FILTER = 'ND 1.8';

/** Read as forecast up to a frame. */
function followed(plan: PlanMade, frames: number): FollowState {
  let state = startFollow(plan);
  for (let frame = 0; frame < frames; frame++) {
    state = followFrame(state, { frame, reading: readingOf(plan, frame, 0) }).state;
  }
  return state;
}

/** One thing said at a frame, then followed on. */
function told(state: FollowState, from: number, until: number, said: Partial<FollowInput>): FollowStep[] {
  const { plan } = state.evening;
  const steps: FollowStep[] = [];
  for (let frame = from; frame < until; frame++) {
    const before = steps.at(-1)?.state ?? state;
    const reading = readingOf(plan, frame, 0);
    steps.push(followFrame(before, { frame, reading, ...(frame === from ? said : {}) }));
  }
  return steps;
}

const kinds = ({ warnings }: FollowStep) => warnings.map(({ kind }) => kind);
const HAND_300 = followed(HAND, 300);

describe('a filter lost', () => {
  test('off the lens: all that is to be set, in one cue, and no filter any more', () => {
    expect(frameOf(HAND, 299).filters).toEqual([FILTER]);
    const steps = told(HAND_300, 300, 900, { lost: FILTER });
    const [first] = steps;
    // Six stops less glass, and as the light is: the shutter makes up for it at once.
    expect(first!.cue?.setNow).toEqual(first!.setting);
    // The filter is off already: there is nothing to do about it.
    expect(first!.cue?.changes.map(({ control }) => control)).toEqual(['shutter']);
    expect(Math.abs(first!.errorEv)).toBeLessThanOrEqual(HAND.shoot.limits.toleranceEv);
    expect(first!.warnings).toEqual([]);
    for (const step of steps) expect(step.setting.filters).toEqual([]);
    for (const step of steps.slice(1)) expect(step.cue?.setNow).toBeUndefined();
    // What is left of the evening is followed as closely as before.
    const judged = steps.filter(({ affected }) => !affected).map(({ errorEv }) => Math.abs(errorEv));
    expect(Math.max(...judged)).toBeLessThan(HAND.shoot.limits.toleranceEv + 0.1);
  });

  test('out of the bag: nothing has to be turned now, and it is not asked for later', () => {
    const gone = HAND.frames.findIndex(({ filters }) => filters.length === 0);
    expect(gone).toBeGreaterThan(300);
    const state = followed(HAND, gone + 5);
    const plain = followFrame(state, { frame: gone + 5 });
    const step = followFrame(state, { frame: gone + 5, lost: FILTER });
    expect([step.setting, step.cue, step.cuesAhead]).toEqual([plain.setting, plain.cue, plain.cuesAhead]);
    // Lost twice is lost.
    expect(followFrame(step.state, { frame: gone + 6, lost: FILTER }).warnings).toEqual([]);
  });

  test('found again it may be used again, and the kit is the plan’s', () => {
    const lost = followFrame(HAND_300, { frame: 300, lost: FILTER }).state;
    expect(lost.evening.kit.stacks.map(({ names }) => names)).toEqual([[]]);
    const found = followFrame(lost, { frame: 301, kit: { filters: [FILTER] } }).state;
    expect(found.evening.kitNow).toBeUndefined();
    expect(followFrame(found, { frame: 302, setting: { filters: [FILTER] } }).warnings).toEqual([]);
  });

  test('before the first frame the evening is begun without it', () => {
    const step = followFrame(startFollow(HAND), { frame: 0, lost: FILTER });
    expect(step.setting.filters).toEqual([]);
    expect(Math.abs(step.errorEv)).toBeLessThanOrEqual(HAND.shoot.limits.toleranceEv);
  });
});

describe('a limit changed', () => {
  test.each([
    ['rig', RIG],
    ['hand', HAND],
    ['shutter timed freely', BULB],
  ] as const)(
    'an ISO limit two stops under what is set: set in one cue, kept to the end (%s)',
    (_name, plan) => {
      const most = Math.max(...plan.frames.map(({ iso }) => iso));
      expect(most).toBeGreaterThanOrEqual(400);
      const at = plan.frames.findIndex(({ iso }) => iso === most);
      const highest = most / 4;
      const state = followed(plan, at);
      const steps = told(state, at, Math.min(900, at + 80), { kit: { iso: { highest } } });
      expect(steps.length).toBeGreaterThan(8);
      for (const { setting } of steps) expect(setting.iso).toBeLessThanOrEqual(highest);
      const [first] = steps;
      const change = first!.cue?.changes.find(({ control }) => control === 'iso');
      expect(Number(change?.from)).toBeGreaterThan(highest);
      expect(change?.to).toBe(String(first!.setting.iso));
      expect(first!.cue?.setNow).toEqual(first!.setting);
    },
  );

  test('a shorter longest time is made up for by ISO', () => {
    const at = HAND.frames.findIndex(({ shutterS }) => shutterS > 3.9);
    const steps = told(followed(HAND, at), at, at + 60, { kit: { shutter: { longest: '1' } } });
    for (const { setting } of steps) expect(setting.shutterS).toBeLessThanOrEqual(1);
    expect(Math.abs(steps[0]!.errorEv)).toBeLessThanOrEqual(HAND.shoot.limits.toleranceEv + 0.1);
  });

  test('said long before it matters, nothing is turned now', () => {
    const plain = followFrame(HAND_300, { frame: 300 });
    const step = followFrame(HAND_300, { frame: 300, kit: { iso: { highest: 3200 } } });
    expect([step.setting, step.cue]).toEqual([plain.setting, plain.cue]);
  });

  test('a wider one is used: ISO 12800 where 6400 was the end', () => {
    const step = followFrame(HAND_300, { frame: 300, kit: { iso: { highest: 12_800 } } });
    expect(step.warnings).toEqual([]);
    expect(followFrame(step.state, { frame: 301, setting: { iso: 12_800 } }).warnings).toEqual([]);
  });

  test('no more filter changes: the one that is on stays on', () => {
    const steps = told(HAND_300, 300, 900, { kit: { maxFilterChanges: 0 } });
    for (const { setting } of steps) expect(setting.filters).toEqual([FILTER]);
  });
});

test.each([
  [{ lost: 'ND 7' }, { kind: 'kit-unknown', unknown: [{ control: 'filter', given: '["ND 7"]' }] }],
  [{ kit: { filters: [FILTER, 'ND 7'] } }, { kind: 'kit-unknown', unknown: [{ control: 'filter' }] }],
  [{ kit: { iso: { highest: 777 } } }, { kind: 'kit-unknown', unknown: [{ control: 'iso', given: '777' }] }],
  [
    { kit: { shutter: { longest: 'B' } } },
    { kind: 'kit-unknown', unknown: [{ control: 'shutter', given: '"B"' }] },
  ],
  [{ kit: { iso: { highest: 50 } } }, { kind: 'kit-empty', control: 'iso' }],
  [{ kit: { shutter: { longest: '1/8000' } } }, { kind: 'kit-empty', control: 'shutter' }],
  // 8 s apart: 15 s end too late.
  [{ kit: { shutter: { shortest: '15', longest: '30' } } }, { kind: 'kit-empty', control: 'shutter' }],
])('%j is told, and the kit left as it was', (said, warning) => {
  const plain = followFrame(HAND_300, { frame: 300 });
  const step = followFrame(HAND_300, { frame: 300, ...said });
  expect(step.warnings[0]).toMatchObject(warning);
  expect({ ...step, warnings: [] }).toEqual({ ...plain, warnings: [] });
});

test('a filter refused once is told again; twice, what there is to choose', () => {
  const due = HAND.frames.findIndex(({ filters }) => filters.length === 0);
  let state = followed(HAND, due - 5);
  const refusals: FollowStep[] = [];
  let missed: number | undefined;
  for (let frame = due - 5; frame < due + 60 && refusals.length < 3; frame++) {
    const step = followFrame(state, { frame, ...(missed === undefined ? {} : { missed }) });
    if (missed !== undefined) refusals.push(step);
    const filter = step.cue?.changes.some(({ control }) => control === 'filter');
    missed = filter ? step.cue!.cue : undefined;
    state = step.state;
  }
  expect(refusals.map(kinds)).toEqual([
    ['cue-missed'],
    ['cue-missed', 'filter-refused'],
    ['cue-missed', 'filter-refused'],
  ]);
  expect(refusals[1]!.warnings[1]).toMatchObject({ times: 2, filters: [], standing: [FILTER] });
  expect(refusals[1]!.warnings[1]!.text).toContain('"kit": {"maxFilterChanges": 0}');
  expect(refusals[2]!.warnings[1]).toMatchObject({ times: 3 });
  // The choice, made: it is not told again.
  const steps = told(state, state.frame! + 1, 880, {
    kit: { maxFilterChanges: 0 },
    setting: { filters: [FILTER] },
  });
  for (const { setting } of steps) expect(setting.filters).toEqual([FILTER]);
});

test('saved and resumed with another kit it goes on as if nothing had happened', () => {
  const { state } = followFrame(HAND_300, { frame: 300, lost: FILTER, kit: { iso: { highest: 1600 } } });
  const resumed = resumeFollow(HAND, JSON.parse(JSON.stringify(saveFollow(state))));
  if (resumed.kind === 'wrong') throw new Error(resumed.errors[0]!.message);
  const input = { frame: 301, reading: readingOf(HAND, 301, -0.5) };
  const { state: _a, ...there } = followFrame(resumed.state, input);
  const { state: _b, ...here } = followFrame(state, input);
  expect(there).toEqual(here);
});

test('lines: "lost" and "kit"', () => {
  const lines = followLines(HAND);
  const run = (line: object) => JSON.parse(lines.next(lines.start, JSON.stringify(line)).out[0]!);
  expect(run({ frame: 300, lost: FILTER }).setting.filters).toEqual([]);
  const kit = {
    shutter: { longest: '1' },
    iso: { lowest: 200, highest: 1600 },
    filters: [],
    maxFilterChanges: 2,
  };
  expect(run({ frame: 300, kit })).toMatchObject({ setting: { filters: [] } });
  for (const [line, why] of [
    [{ lost: 4 }, '"lost" must be the name of a filter, got 4'],
    [{ kit: {} }, '"kit" is empty'],
    [{ kit: { aperture: '4' } }, '"aperture" is not a key of "kit"'],
    [{ kit: { iso: 1600 } }, '"iso" must be a JSON object, got 1600'],
    [{ kit: { iso: { highest: '1600' } } }, '"highest" must be a number, got "1600"'],
    [{ kit: { maxFilterChanges: -1 } }, '"maxFilterChanges" must be a whole number from 0, got -1'],
  ] as const) {
    expect(run(line).warnings[0].text).toContain(why);
  }
});

test('whatever is said of the kit, what is answered is in it', () => {
  const random = seeded(161129);
  let changes = 0;
  for (let evening = 0; evening < 6; evening++) {
    const plan = [HAND, RIG, BULB][evening % 3]!;
    const names = plan.shoot.filters.map(({ name }) => name);
    let state = startFollow(plan);
    let highest = plan.shoot.camera.iso.highest;
    let filters = names;
    for (let frame = 0; frame < 900; frame += random.whole(1, 12)) {
      const said: Record<string, unknown> = {};
      if (random.whole(0, 9) === 0) {
        highest = [400, 800, 1600, 3200, 6400][random.whole(0, 4)]!;
        filters = names.filter(() => random.whole(0, 1) === 0);
        said.kit = { iso: { highest }, filters };
        changes++;
      }
      const reading = readingOf(plan, frame, -1);
      const step = followFrame(state, { frame, reading, jump: true, ...said });
      state = step.state;
      expect(step.setting.iso).toBeLessThanOrEqual(highest);
      for (const name of step.setting.filters) expect(filters).toContain(name);
      for (const warning of step.warnings) expect(warning.kind).not.toMatch(/^kit/);
    }
  }
  expect(changes).toBeGreaterThan(30);
});
