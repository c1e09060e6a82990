import type { PlanMade } from '@evenfall/core';
import { expect, test } from 'vitest';
import { cueFacts } from '../../../packages/chart/src/card/cue-facts.js';
import { english } from '../../../packages/chart/src/text/words.js';
import { madePlan } from '../made-plan.js';

const STACK = [
  { name: 'ND 3-stop', stops: 2.99 },
  { name: 'ND 10-stop', stops: 9.97 },
];

test('a filter change names only what goes off or on, filter first, then shutter', () => {
  const off = cueFacts(madePlan({ filters: STACK }), english).filter((f) => f.filterChange);
  expect(
    off.map((f) => f.steps.map((s) => (s.kind === 'dial' ? s.control : `${s.kind} ${s.names}`))),
  ).toEqual([
    ['filter-off ND 3-stop', 'shutter'],
    ['filter-off ND 10-stop', 'shutter'],
  ]);
  const on = cueFacts(madePlan({ filters: STACK, direction: 'dawn' }), english).filter((f) => f.filterChange);
  expect(on.map((f) => f.steps[0])).toEqual([
    { kind: 'filter-on', names: ['ND 10-stop'] },
    { kind: 'filter-on', names: ['ND 3-stop'] },
  ]);
});

test('a swap takes one off before the other goes on, and ISO comes after the shutter', () => {
  const plan = withCue(madePlan(), {
    before: { filters: ['ND 6-stop'] },
    after: { filters: ['ND 2-stop'] },
    changes: [
      { control: 'iso', from: '400', to: '200' },
      { control: 'shutter', from: '2', to: '1/4' },
      { control: 'filter', from: 'ND 6-stop', to: 'ND 2-stop' },
    ],
  });
  expect(cueFacts(plan, english)[0]!.steps).toEqual([
    { kind: 'filter-off', names: ['ND 6-stop'] },
    { kind: 'filter-on', names: ['ND 2-stop'] },
    { kind: 'dial', control: 'shutter', from: '2 s', to: '1/4' },
    { kind: 'dial', control: 'iso', from: '400', to: '200' },
  ]);
});

test('one of two filters of the same name comes off', () => {
  const plan = withCue(madePlan(), {
    before: { filters: ['ND', 'ND'] },
    after: { filters: ['ND'] },
    changes: [{ control: 'filter', from: 'ND + ND', to: 'ND' }],
  });
  expect(cueFacts(plan, english)[0]!.steps).toEqual([{ kind: 'filter-off', names: ['ND'] }]);
});

test('frames count from 1, minutes from the cue before, spoiled frames are those marked', () => {
  const plan = madePlan({ intervalS: 10 });
  const facts = cueFacts(plan, english);
  expect(facts).toHaveLength(plan.cues.length);
  facts.forEach((f, i) => {
    expect(f.frameNumber).toBe(plan.cues[i]!.frame + 1);
    const since = plan.cues[i]!.frame - (plan.cues[i - 1]?.frame ?? 0);
    expect(f.minutesSince).toBeCloseTo((since * 10) / 60, 9);
  });
  const change = facts.find((f) => f.filterChange)!;
  expect(change.mayCost).toEqual({ first: change.frameNumber, last: change.frameNumber + 1 });
  expect(facts.filter((f) => f.mayCost !== undefined)).toHaveLength(1);
});

interface OneCue {
  readonly before: Partial<PlanMade['frames'][number]>;
  readonly after: Partial<PlanMade['frames'][number]>;
  readonly changes: PlanMade['cues'][number]['changes'];
}

function withCue(plan: PlanMade, { before, after, changes }: OneCue): PlanMade {
  const frames = plan.frames.map((f, i) => ({ ...f, ...(i < 10 ? before : after) }));
  const cue = { frame: 10, at: frames[10]!.at, sunAltitudeDeg: 1, changes };
  return { ...plan, frames, cues: [cue] };
}
