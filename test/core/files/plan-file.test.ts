import { type Plan, readPlan, writePlan } from '@evenfall/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { casesOf, seedOf } from '../../reference/cases.js';
import { INFEASIBLE, PLAN } from './sample.js';

describe('a plan reads back the same from its own text', () => {
  test.each([
    ['a plan', PLAN],
    ['an impossible one', INFEASIBLE],
  ])('%s', (_name, plan: Plan) => {
    const text = writePlan(plan);
    expect(readPlan(JSON.parse(text))).toEqual({ kind: 'ok', plan });
    expect(writePlan(JSON.parse(text))).toBe(text);
  });
});

test.each([
  ['a plan', PLAN],
  ['an impossible one', INFEASIBLE],
])('%s from before there was a kind is read, and has it', (_name, { kind, ...before }) => {
  const read = readPlan(before);
  expect(read.kind === 'ok' && read.plan.kind).toBe(kind);
});

test('a plan file has a frame and a cue a line, keys in the order of the format, and a line break at the end', () => {
  const lines = writePlan(PLAN).split('\n');
  expect(lines.at(-1)).toBe('');
  expect(lines.filter((line) => line.startsWith('    {"frame":'))).toHaveLength(5 + 2);
  // Source: the plan file in docs/formats.md.
  expect(Object.keys(JSON.parse(lines.join('\n')))).toEqual([
    'format',
    'kind',
    'shoot',
    'summary',
    'events',
    'frames',
    'cues',
    'notes',
  ]);
  const shuffled = Object.fromEntries(Object.entries(PLAN).reverse()) as unknown as Plan;
  expect(writePlan(shuffled)).toBe(lines.join('\n'));
});

test('a plan with a number JSON cannot hold is not written', () => {
  const broken = { ...PLAN, summary: { ...PLAN.summary, objective: Number.NaN } };
  expect(() => writePlan(broken)).toThrow(new RangeError('objective must be finite, got NaN'));
});

describe('a wrong plan is told in one line', () => {
  test.each<[string, object, string]>([
    [
      'a shoot file',
      PLAN.shoot,
      'format: "evenfall-shoot/1" is not "evenfall-plan/1"; give "evenfall-plan/1"',
    ],
    [
      'a later format',
      { ...PLAN, format: 'evenfall-plan/2' },
      'format: "evenfall-plan/2" is a later format than "evenfall-plan/1"; read it with a newer version',
    ],
    [
      'a kind that its keys are not of',
      { ...INFEASIBLE, kind: 'ok' },
      'kind: "ok" is not "infeasible"; give "infeasible"',
    ],
    ['a key nobody knows', { ...PLAN, frame: 1 }, 'frame: no such key; the nearest is "frames"'],
    [
      'a plan nested very deep',
      { ...PLAN, notes: Array.from({ length: 40 }).reduce<unknown>((inner) => [inner], 0) },
      'is nested more than 32 deep; give a file as its format says',
    ],
    [
      'a frame missing',
      { ...PLAN, frames: PLAN.frames.slice(0, 4), cues: PLAN.cues.slice(0, 1) },
      'summary.frameCount: 5 does not fit the rest of the plan; 4 would',
    ],
    [
      'frames out of order',
      { ...PLAN, frames: PLAN.frames.map((frame, i) => (i === 3 ? { ...frame, frame: 7 } : frame)) },
      'frames[3].frame: 7 does not fit the rest of the plan; 3 would',
    ],
    [
      'a frame of another year',
      {
        ...PLAN,
        frames: PLAN.frames.map((frame, i) =>
          i === 2 ? { ...frame, at: `2033${frame.at.slice(4)}` } : frame,
        ),
      },
      `frames[2].at: "2033${PLAN.frames[2]!.at.slice(4)}" is not when this frame starts; give the first frame's time and ${PLAN.shoot.intervalS} s for each after it`,
    ],
    [
      'an EV that no light has',
      { ...PLAN, frames: PLAN.frames.map((frame) => ({ ...frame, settingEv100: -1e300 })) },
      'frames[0].settingEv100: -1e+300 is not an EV; give EV at ISO 100 from -1000 to 1000',
    ],
    [
      'a sun above the zenith',
      { ...PLAN, frames: PLAN.frames.map((frame) => ({ ...frame, sunAltitudeDeg: 1e9 })) },
      "frames[0].sunAltitudeDeg: 1000000000 is not a sun altitude; give degrees of the sun's true altitude from -90 to 90",
    ],
    [
      'a cue after the last frame',
      { ...PLAN, cues: PLAN.cues.map((cue, i) => (i === 1 ? { ...cue, frame: 5 } : cue)) },
      'cues[1].frame: 5 is not a frame after 2 and before 5; give one',
    ],
    [
      'two cues at one frame',
      { ...PLAN, cues: PLAN.cues.map((cue) => ({ ...cue, frame: 2 })) },
      'cues[1].frame: 2 is not a frame after 2 and before 5; give one',
    ],
    [
      'a shoot that contradicts itself',
      { ...PLAN, shoot: { ...PLAN.shoot, intervalS: 1 } },
      'shoot.intervalS: 1 is too short for the shortest shutter, "1/4000", and a gap of 1 s; give 1.001 or more',
    ],
    [
      'an answer without a reason',
      { ...INFEASIBLE, infeasible: { ...INFEASIBLE.infeasible, reason: 'unknown' } },
      'infeasible.reason: "unknown" is not one of "too-dark", "too-bright", "too-fast", "no-time", "no-span"; the nearest is "no-span"',
    ],
  ])('%s', (_name, value, message) => {
    const read = readPlan(value, undefined, 'plan.json');
    expect(read.kind === 'wrong' && read.errors[0]?.message).toBe(`plan.json: ${message}`);
  });

  test('no garbage makes it throw', () => {
    let wrong = 0;
    fc.assert(
      fc.property(
        fc.anything({ withNullPrototype: true, withDate: true }),
        fc.constantFrom(...Object.keys(PLAN)),
        (value, key) => {
          for (const garbage of [value, { ...PLAN, [key]: value }]) {
            const read = readPlan(garbage);
            if (read.kind === 'wrong') wrong++;
          }
        },
      ),
      { seed: seedOf(20260912), numRuns: casesOf(500) },
    );
    expect(wrong).toBeGreaterThan(800);
  });
});
