// Filters of one strength are one: nobody unscrews a filter to put on its equal.

import { describe, expect, test } from 'vitest';
import { followFrame, startFollow } from '../../../packages/core/src/follow/follow.js';
import { planShoot } from '../../../packages/core/src/plan/plan.js';
import type { PlanMade } from '../../../packages/core/src/plan/types.js';
import { kitOf } from '../../../packages/core/src/shoot/kit.js';
import { shootFrom } from '../shoots.js';

const kit = (keys: Record<string, unknown>) => kitOf(shootFrom(keys));
const names = (keys: Record<string, unknown>) => kit(keys).stacks.map((stack) => stack.names.join(' + '));

const made = (keys: Record<string, unknown>): PlanMade => {
  const plan = planShoot(shootFrom(keys));
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
};

describe('stacks of a kit', () => {
  test('of two of one strength the first is kept', () => {
    const filters = [
      { name: 'new ND 8', factor: 8 },
      { name: 'old ND 8', factor: 8 },
    ];
    expect(names({ filters })).toEqual(['', 'new ND 8']);
    expect(names({ filters, stackFilters: true })).toEqual(['', 'new ND 8', 'new ND 8 + old ND 8']);
  });

  // ISO 5800-like marks: density 0.9 is 2.990 stops, a factor of 8 is 3; density 1.8 is 5.979, 64 is 6.
  test('what is one to a photographer is one: ND 0.9 and ND 8', () => {
    expect(
      names({
        filters: [
          { name: 'ND 0.9', density: 0.9 },
          { name: 'ND 8', factor: 8 },
        ],
      }),
    ).toEqual(['', 'ND 0.9']);
    // A tenth of a stop is not.
    expect(
      names({
        filters: [
          { name: 'a', stops: 3 },
          { name: 'b', stops: 3.1 },
        ],
      }),
    ).toEqual(['', 'a', 'b']);
  });

  test('one filter goes before two that make as much; one of no stops is the bare lens', () => {
    const filters = [
      { name: 'UV', stops: 0 },
      { name: 'ND 2', stops: 1 },
      { name: 'ND 4', stops: 2 },
      { name: 'ND 8', stops: 3 },
    ];
    const stacks = names({ filters, stackFilters: true });
    expect(stacks).toEqual(['', 'ND 2', 'ND 4', 'ND 8', 'ND 2 + ND 8', 'ND 4 + ND 8']);
  });

  test('the one to begin with stays on the lens, whatever equals it', () => {
    const filters = [
      { name: 'new ND 8', factor: 8 },
      { name: 'old ND 8', factor: 8 },
      { name: 'UV', stops: 0 },
    ];
    const old = kit({ filters, startFilter: 'old ND 8' });
    expect(old.stacks.map((stack) => stack.names)).toEqual([[], ['old ND 8']]);
    expect(old.ramp.startStack).toBe(1);
    const clear = kit({ filters, startFilter: 'UV' });
    expect(clear.stacks.map((stack) => stack.names)).toEqual([['UV'], ['new ND 8']]);
    expect(clear.ramp.startStack).toBe(0);
  });
});

const evening = { intervalS: 10, crew: 'rig', limits: { secondsBetweenCues: 0 } };

test('no plan swaps a filter for its equal', () => {
  const filterCues = ({ cues }: PlanMade) =>
    cues.filter(({ changes }) => changes.some(({ control }) => control === 'filter')).length;
  const one = made({ ...evening, filters: [{ name: 'ND 8', factor: 8 }] });
  const two = made({
    ...evening,
    filters: [
      { name: 'ND 8', factor: 8 },
      { name: 'spare', factor: 8 },
      { name: 'UV', stops: 0 },
    ],
  });
  expect(two.frames).toEqual(one.frames);
  expect(filterCues(two)).toBe(filterCues(one));
});

test('an equal that is on the lens after all is known for what it does', () => {
  const plan = made({
    ...evening,
    startFilter: 'ND 8',
    filters: [
      { name: 'ND 8', factor: 8 },
      { name: 'spare', factor: 8 },
    ],
  });
  const { shutter, iso, aperture } = plan.frames[0]!;
  const setting = { shutter, iso, aperture, filters: ['spare'] };
  const answer = followFrame(startFollow(plan), { frame: 0, setting });
  expect(answer.warnings).toEqual([]);
  expect(answer.setting?.filters).toEqual(['ND 8']);
});
