// The words: every language complete, the clock of twelve hours, the notes of plans.

import type { PlanNote } from '@evenfall/core';
import { expect, test } from 'vitest';
import { languages } from '../../../packages/chart/src/text/languages.js';
import { noteText, warningText } from '../../../packages/chart/src/text/sentences.js';
import { type Words, wordsFor } from '../../../packages/chart/src/text/words.js';
import {
  type Camera,
  type FollowInput,
  type FollowWarning,
  followFrame,
  type Move,
  planShoot,
  type Shoot,
  startFollow,
} from '../../../packages/core/src/index.js';
import { shootWith } from '../planned.js';

const SAMPLE = [
  {
    from: '18:00',
    to: '19:00',
    fromEv: '14.0',
    toEv: '-1.0',
    frames: 7,
    cues: 3,
    tolerance: '0.75',
    fallsDark: true,
    cuesPerStop: '1.4',
  },
  2,
] as const;

/** Every word and phrase by its path; phrases with blanks are filled in alike in every language. */
function phrases(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]];
  if (path === '.library') return []; // every sentence has a test of its own
  if (typeof value === 'function') {
    if (['.date', '.clock', '.number', '.upTo', '.seconds'].includes(path)) return [];
    const takesCounts = /counted|frames|cues|mayCost|page/.test(path);
    const filled = /correction|describe\.(plan|light)/.test(path)
      ? value(SAMPLE[0])
      : takesCounts
        ? value(2, 3)
        : value('‹1›', '‹2›');
    return [[path, filled]];
  }
  return Object.entries(value as object).flatMap(([key, inner]) => phrases(inner, `${path}.${key}`));
}

// Words that are the same in both, or signs of no language.
const SHARED = /^(EV|ISO|Filter|filter|N|S|W|naut\.|astron\.|\+‹1› min|EV ‹1›|Filter: ‹1›)$/;

test('German has a word of its own for everything English has', () => {
  const english = phrases(wordsFor());
  const german = new Map(phrases(wordsFor({ language: 'de' })));
  expect(english.length).toBeGreaterThan(100);
  for (const [path, text] of english) {
    const other = german.get(path);
    expect(other, path).toMatch(/\S/);
    if (!SHARED.test(text)) expect(other, path).not.toBe(text);
    // What is filled in comes out again, in any order.
    for (const blank of text.match(/‹\d›/g) ?? []) expect(other, path).toContain(blank);
  }
  // A language may have more short forms of a name, or fewer.
  const whole = (paths: readonly string[]) => paths.filter((path) => !/twilights\.\w+\.[1-9]/.test(path));
  expect(whole([...german.keys()])).toEqual(whole(english.map(([path]) => path)));
});

test('numbers and dates are written as each language writes them', () => {
  const forms = (words: Words) => [
    words.number(-3.25, 1),
    words.number(-0.04, 1),
    words.upTo(23.976, 3),
    words.upTo(25, 3),
    words.seconds(2.5),
    words.date('2026-10-14'),
    words.card.frames(1),
    words.card.frames(2),
  ];
  expect(languages.map((language) => forms(wordsFor({ language })))).toEqual([
    ['−3.3', '0.0', '23.976', '25', '2.5 s', 'Wednesday 14 October 2026', '1 frame', '2 frames'],
    ['−3,3', '0,0', '23,976', '25', '2,5 s', 'Mittwoch, 14. Oktober 2026', '1 Bild', '2 Bilder'],
  ]);
});

// Midnight and noon by the convention of US government style: 12 am is midnight. Source: docs/sources.md#twelve-hours.
test.each([
  ['00:00:00', '12:00:00 am'],
  ['00:59', '12:59 am'],
  ['01:00', '1:00 am'],
  ['11:59:59', '11:59:59 am'],
  ['12:00', '12:00 pm'],
  ['13:05', '1:05 pm'],
  ['23:59', '11:59 pm'],
])('%s is %s', (time, twelve) => {
  const withSeconds = time.length > 5;
  const at = `2026-09-22T${time}${withSeconds ? '' : ':00'}+02:00`;
  expect(wordsFor({ clock: 12 }).clock(at, withSeconds)).toBe(twelve);
  expect(wordsFor({ clock: 12, language: 'de' }).clock(at, withSeconds)).toBe(twelve.toUpperCase());
  expect(wordsFor().clock(at, withSeconds)).toBe(time);
});

test('every note the library writes has its German, with its numbers and its times', () => {
  const german = wordsFor({ language: 'de', clock: 12 });
  const notes = everyNote();
  expect(new Set(notes.map(({ text }) => text.slice(0, 12))).size).toBeGreaterThanOrEqual(22);
  for (const note of notes) {
    const told = noteText(note, german);
    expect(told).not.toBe(note.text);
    expect(told).not.toMatch(/\b(the|The|is|of|frames|and)\b/);
    const numbers = (s: string) => (s.replaceAll(',', '.').match(/\d+(\.\d+)?/g) ?? []).map(Number).sort();
    if (!/moon|\d\d:\d\d/i.test(note.text)) {
      expect(numbers(told.replaceAll('−', '-'))).toEqual(numbers(note.text));
    }
    expect(noteText(note, wordsFor())).toBe(note.text);
  }
  const reserve = { kind: 'little-reserve', share: 0.34, reserveEv: 1.25 } as const;
  const iso = { change: { change: 'higher-iso', iso: 3200, fromIso: 1600 }, moreShare: 0.9 } as const;
  expect(noteText({ ...reserve, ...iso, direction: 'dusk', end: 'dark' }, german)).toMatch(
    /^An etwa 3 von 10 Abenden .* am dunklen Ende nicht, .* zu dunkel: .* 1600 .* 3200.* an 9 von 10\.$/,
  );
  expect(noteText({ ...reserve, direction: 'dawn', end: 'bright' }, german)).toMatch(
    /^An etwa 3 von 10 Morgen .* am hellen Ende nicht, .* zu hell: Dort sind 1,[23] Blenden Reserve\.$/,
  );
  const moonset = { kind: 'moonset', at: '2026-10-14T19:44:00+01:00' } as const;
  expect(noteText(moonset, german)).toBe('Der Mond geht um 7:44 PM unter, während der Aufnahme.');
  expect(noteText(moonset, wordsFor({ clock: 12 }))).toBe('The moon sets at 7:44 pm, during the shoot.');
});

test('what following says to a person in the field has its German too', () => {
  const plan = planShoot(shootWith('dusk'));
  if (plan.kind !== 'ok') throw new Error(plan.infeasible.text);
  const reading = (frame: number, offsetEv: number) => {
    const { at, sceneEv100 } = plan.frames[frame]!;
    return { frame, reading: { atMs: Date.parse(at), ev100: sceneEv100 + offsetEv } };
  };
  let state = startFollow(plan);
  const told: FollowWarning[] = [];
  // Two stops brighter than the reading before, for as long as it takes; then the darkest evening there is.
  const readings = [reading(10, 0), ...Array.from({ length: 8 }, (_, i) => reading(11 + i, 2))];
  const dark = reading(plan.frames.length - 60, -5);
  for (const input of [...readings, { ...dark, jump: true, reading: { ...dark.reading, sure: true } }]) {
    const step = followFrame(state, input);
    told.push(...step.warnings);
    state = step.state;
  }
  for (const kind of ['reading-doubted', 'reading-believed', 'out-of-reach']) {
    const warning = told.find((each) => each.kind === kind);
    if (warning === undefined) throw new Error(`${kind} is not told`);
    const { text } = warning;
    const inGerman = warningText(warning, wordsFor({ language: 'de' }));
    expect(warningText(warning, wordsFor()), kind).toBe(text);
    expect(inGerman, kind).not.toBe(text);
    for (const number of text.match(/\d+\.\d+/g) ?? []) expect(inGerman).toContain(number.replace('.', ','));
  }
});

test('what following says of slips and of times that jump has its German too', () => {
  const plan = planShoot(shootWith('dusk'));
  if (plan.kind !== 'ok') throw new Error(plan.infeasible.text);
  const { state } = followFrame(startFollow(plan), { frame: 1 });
  const startMs = Date.parse(plan.frames[0]!.at);
  const day = 86_400_000;
  const inputs: FollowInput[] = [
    { frame: plan.frames.length - 1 },
    { frame: 1e15 },
    { frame: 1.5 },
    { atMs: Number.NaN },
    { reading: { atMs: startMs, ev100: Number.NEGATIVE_INFINITY } },
    { reading: { atMs: Number.NaN, ev100: 3 } },
    { frame: 1, reading: { atMs: startMs - day, ev100: 3 } },
    { frame: 1, reading: { atMs: startMs + day, ev100: 3 } },
    { frame: 1, setting: { shutter: '1/77', filters: ['ND 99'] } },
  ];
  const told = inputs.flatMap((input) => followFrame(state, input).warnings);
  expect(new Set(told.map(({ text }) => text)).size).toBe(inputs.length);
  for (const warning of told) {
    const { text } = warning;
    const inGerman = warningText(warning, wordsFor({ language: 'de' }));
    expect(inGerman, text).not.toBe(text);
    expect(inGerman, text).not.toMatch(/ (is|the|used) |undefined/);
    for (const number of text.match(/\d{3,}/g) ?? []) expect(inGerman).toContain(number);
    expect(warningText(warning, wordsFor())).toBe(text);
  }
});

/** The notes of shoots that give each kind there is. */
function everyNote(): PlanNote[] {
  const at = '2026-10-14T18:20:00+01:00';
  const changes: Partial<Shoot>[] = [
    {},
    { readings: [{ at, ev100: 2 }] },
    { readings: [{ at, ev100: 20 }] },
    {
      readings: [
        { at, ev100: 13.2 },
        { at: '2026-10-14T18:22:00+01:00', ev100: 11 },
      ],
    },
    {
      readings: [
        { at, ev100: 13.2 },
        { at: '2026-10-14T18:22:00+01:00', ev100: 11 },
        { at: '2026-10-14T18:24:00+01:00', ev100: 11 },
      ],
    },
    { date: '2026-10-26' }, // a full moon rises at dusk
    { intervalS: 5 },
  ];
  const small = { cardGB: 1, batteryFrames: 100 };
  const cold = { cardGB: 23.5, batteryFrames: 1100, coldFactor: 0.7 };
  const full = { batteryFrames: 1000, coldFactor: 0.75 };
  const camera = { lens: { focalMm: 50 }, sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 } };
  const turn = { axis: 'pan', mode: 'stopped', ease: 'smoothstep', gear: { settleS: 1, moveS: 1 } } as const;
  const going = { ...turn, mode: 'continuous' } as const;
  const slide = { axis: 'slide', by: { m: 2 }, toward: 'side', nearestM: 5 } as const;
  const moves: Move[][] = [
    [{ ...turn, by: { deg: 150 } }],
    [{ ...turn, by: { deg: 4 }, gear: { settleS: 0.5, moveS: 1, smallestStepDeg: 0.05 } }],
    [{ ...turn, axis: 'tilt', by: { deg: 4 }, gear: { settleS: 0, moveS: 1, smallestStepDeg: 0.001 } }],
    [
      { ...going, by: { deg: -200 }, gear: { settleS: 0, topSpeedDegPerS: 0.01 } },
      { ...slide, mode: 'stopped', ease: 'linear', gear: { settleS: 1, moveS: 1 } },
    ],
  ];
  const shoots: [Partial<Shoot>, Partial<Camera>][] = [
    ...changes.map((change): [Partial<Shoot>, Partial<Camera>] => [change, small]),
    [{}, cold],
    [{}, full],
    [
      { span: { fromSunAltitudeDeg: -8, toSunAltitudeDeg: -13 } },
      { lens: camera.lens, sensor: { widthMm: 36, heightMm: 24 } },
    ],
    ...moves.map((each): [Partial<Shoot>, Partial<Camera>] => [{ moves: each }, camera]),
    // No more than the forecast needs: little is in reserve at the dark end.
    [{}, { iso: { lowest: 100, highest: 400 } }],
  ];
  return shoots.flatMap(([change, kit]) => {
    const plan = planShoot(shootWith('dusk', change, kit));
    return plan.kind === 'infeasible' ? [] : plan.notes;
  });
}
