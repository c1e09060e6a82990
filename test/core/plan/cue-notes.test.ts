import { planShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { cueNoteText, wordsFor } from '../../../packages/chart/src/index.js';
import { withCueNotes } from '../../../packages/core/src/plan/cue-notes.js';
import type { PlanFrame } from '../../../packages/core/src/plan/types.js';
import { checkPlan } from '../../reference/plan-checker.js';
import { shootFrom } from '../shoots.js';

const at = '2026-09-22T19:00:00+02:00';
const frame = (shutterS: number, ...filters: string[]) => ({ shutterS, filters }) as unknown as PlanFrame;
const notesAt = (before: PlanFrame, after: PlanFrame, control: 'filter' | 'shutter' = 'filter') =>
  withCueNotes(
    [{ frame: 1, at, sunAltitudeDeg: 0, changes: [{ control, from: '', to: '' }] }],
    [before, after],
  )[0]!.notes?.map(({ text }) => text);

describe('where filters change, a cue says', () => {
  // By hand: 6.35 s (the mark "6") to 0.1984 s (the mark "1/5") is five stops exactly: 2^(8/3) and 2^(-7/3).
  test('by how many stops motion blurs otherwise from there on', () => {
    expect(notesAt(frame(2 ** (8 / 3), 'ND 6'), frame(2 ** (-7 / 3)))).toEqual([
      'From here on motion blurs 5.0 stops less.',
    ]);
    expect(notesAt(frame(0.5), frame(8, 'ND 4'))).toEqual(['From here on motion blurs 4.0 stops more.']);
  });

  test('and nothing of less than a stop, nor where no filter changes', () => {
    expect(notesAt(frame(1, 'ND 1'), frame(2 ** -0.99))).toBeUndefined();
    expect(notesAt(frame(1, 'ND 1'), frame(2 ** -1))).toHaveLength(1);
    expect(notesAt(frame(4), frame(0.5), 'shutter')).toBeUndefined();
  });

  test.each([
    [['A', 'B'], [], 'Both filters at once: one after the other is no better.'],
    [[], ['A', 'B'], 'Both filters at once: one after the other is no better.'],
    [['A', 'B'], ['B'], 'One filter now, the other apart: both at once is no better.'],
    [['A'], ['A', 'B'], 'One filter now, the other apart: both at once is no better.'],
    [['A', 'B'], ['C'], undefined], // both come off for a third
    [['A'], [], undefined],
  ])('in what order two move: from %j to %j', (before, after, text) => {
    expect(notesAt(frame(1, ...before), frame(1, ...after))).toEqual(text === undefined ? undefined : [text]);
  });
});

test('a plan with two stacked filters says both, in German too, and the plain checker agrees', () => {
  const plan = planShoot(
    shootFrom({
      filters: [
        { name: 'ND 3', stops: 3 },
        { name: 'ND 6', stops: 6 },
      ],
      stackFilters: true,
      startFilter: 'ND 6',
      intervalS: 6,
    }),
  );
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  const notes = plan.cues.flatMap((cue) => cue.notes ?? []);
  expect(notes.map(({ kind }) => kind)).toContain('blur-jump');
  expect(checkPlan(JSON.parse(JSON.stringify(plan)))).toEqual([]);
  expect(cueNoteText({ kind: 'blur-jump', stops: -4.94 }, wordsFor({ language: 'de' }))).toBe(
    'Von hier an verwischt Bewegung um 4,9 Blenden weniger.',
  );
});
