// What following warns of: every kind in English and German, with every value that it carries.

import { expect, test } from 'vitest';
import { warningText } from '../../../packages/chart/src/text/sentences.js';
import { wordsFor } from '../../../packages/chart/src/text/words.js';
import type { FollowWarningFacts, FollowWarningKind } from '../../../packages/core/src/index.js';

const at = '2026-10-14T18:47:20+01:00';

type WithoutKind<Said> = Said extends unknown ? Omit<Said, 'kind'> : never; // of each record of a union
type Facts<Kind extends FollowWarningKind> = WithoutKind<Extract<FollowWarningFacts, { kind: Kind }>>;
type Case<Kind extends FollowWarningKind> = readonly [Facts<Kind>, ...values: string[]];

/** At least one record of every kind, and what of it must be read in any language; numbers as English writes them. */
const CASES: { readonly [Kind in FollowWarningKind]: readonly Case<Kind>[] } = {
  'reading-doubted': [
    [{ ev100: 7.31, differsEv: 2.62 }, '7.3', '2.6'],
    [{ ev100: -3.44, differsEv: -4.57 }, '-3.4', '4.6'],
  ],
  'reading-believed': [[{ differsEv: -2.62 }, '2.6']],
  'reading-impossible': [
    [
      { because: { reason: 'impossible', ev100: -9.24, sunAltitudeDeg: 3.1, limitEv100: 1.27 } },
      '-9.2',
      '3°',
      '1.3',
    ],
  ],
  'reading-old': (['older-than-used', 'to-come', 'another-day', 'doubtful-time'] as const).map((reason) => [
    { ev100: 7.31, reason },
    '7.3',
  ]),
  'reading-failed': [
    [{ what: 'ev', given: '-Infinity' }, '-Infinity'],
    [{ what: 'time', given: 'NaN' }, 'NaN'],
  ],
  'no-reading': [[{ minutes: 37 }, '37']],
  'clock-back': [
    [{ frames: 41, frame: 211, at, believed: false }, '41', '18:47'],
    [{ frames: 41, frame: 211, at, believed: true }, '41', '18:47'],
  ],
  'clock-ahead': [
    [{ reason: 'past-cues-told', frames: 311, toldFrames: 149 }, '311', '149'],
    [{ reason: 'cues-not-done', cues: 13 }, '13'],
  ],
  'jump-doubted': [
    [{ reason: 'far-ahead', frame: 411, at, minutes: 37 }, '412', '18:47', '37', '"jump": true'],
    [{ reason: 'past-the-last', frame: 1411, frameCount: 902 }, '1412', '902', '"jump": true'],
  ],
  'time-unknown': [
    [{ what: 'frame', given: '1.5' }, '1.5'],
    [{ what: 'time', given: 'NaN' }, 'NaN'],
  ],
  'joined-late': [[{ frame: 411 }, '412']],
  over: [[{ frameCount: 902 }, '902']],
  'cue-late': [[{ cue: 13, lateFrames: 7, frame: 411 }, '13', '7', '412']],
  'cue-missed': [
    [{ cue: 13, sinceFrame: 411 }, '13', '412'],
    [{ cue: 13, sinceFrame: 411, untilFrame: 427 }, '13', '412', '427'],
    [{ cue: 13 }, '13'],
  ],
  'cue-unknown': [
    [{ cue: 13, reason: 'neither-last-nor-next' }, '13'],
    [{ cue: 13, reason: 'not-told' }, '13'],
    [{ reason: 'none-then', at: '2026-09-22T19:46:41+02:00' }, '19:46'],
  ],
  'outside-kit': [
    [
      {
        outside: [
          { control: 'iso', mark: '12800' },
          { control: 'aperture', mark: '5.6' },
          { control: 'shutter', mark: '1/60' },
        ],
      },
      'ISO 12800',
      'f/5.6',
      '1/60',
    ],
  ],
  'setting-unknown': [
    [{ unknown: [{ control: 'shutter', given: '"1/77"' }] }, '"1/77"'],
    [
      {
        unknown: [
          { control: 'iso', given: '"123"' },
          { control: 'aperture', given: '"4.4"' },
          { control: 'filter', given: '["ND 9"]', stacks: [[], ['ND 1.8', 'GND 0.9']] },
        ],
      },
      '"123"',
      '"4.4"',
      '["ND 9"]',
      '[], ["ND 1.8", "GND 0.9"]',
    ],
  ],
  'kit-unknown': [
    [{ unknown: [{ control: 'iso', given: '77' }] }, '77'],
    [{ unknown: [{ control: 'filter', given: '["ND 9"]', stacks: [[], ['ND 6']] }] }, 'ND 9', 'ND 6'],
  ],
  'kit-empty': [[{ control: 'iso' }, 'ISO'], [{ control: 'shutter' }]],
  'filter-refused': [
    [
      { times: 2, filters: ['ND 6'], standing: ['ND 10'] },
      '2',
      'ND 6',
      'ND 10',
      '"lost"',
      '"kit": {"maxFilterChanges": 0}',
    ],
  ],
  'within-reach': [[{ end: 'dark' }], [{ end: 'bright' }]],
  'too-fast': [[{ frame: 411, at, worstEv: 1.23 }, '412', '18:47', '1.2']],
  'out-of-reach': [
    [{ now: false, frame: 411, at, end: 'dark', worstEv: 1.27 }, '412', '18:47', '1.3'],
    [{ now: true, frame: 411, at, end: 'bright', worstEv: 1.27 }, '1.3'],
  ],
};

const ENGLISH =
  /\b(the|is|are|of|not|used|and|frames?|cues?|light|than|reading|dark|bright|setting|now|last|next|minutes)\b/i;
/** Numbers that are worked with; what is quoted, a mark or a count is written as it was given. */
const inGerman = (value: string) =>
  /^-?\d+\.\d$/.test(value) ? value.replace('-', '−').replace('.', ',') : value;

for (const [kind, cases] of Object.entries(CASES)) {
  test(`${kind}: every value in both languages, and each case a sentence of its own`, () => {
    const told = (cases as readonly Case<FollowWarningKind>[]).map(([facts, ...values]) => {
      const said = { kind, ...facts } as FollowWarningFacts;
      const english = warningText(said, wordsFor());
      const german = warningText(said, wordsFor({ language: 'de' }));
      const asGiven = 'given' in said;
      for (const value of values) {
        expect(english).toContain(value);
        expect(german).toContain(asGiven ? value : inGerman(value));
      }
      expect(german).not.toMatch(ENGLISH);
      for (const text of [english, german]) {
        expect(text).toMatch(/^\S.*\.$/);
        expect(text).not.toMatch(/undefined|\[object|\d{4}-\d\d-\d\d/);
      }
      if (values.includes('18:47'))
        expect(warningText(said, wordsFor({ language: 'de', clock: 12 }))).toContain('6:47 PM');
      return [english, german];
    });
    expect(new Set(told.flat()).size).toBe(2 * cases.length);
  });
}

test('one of a kind is said in the singular', () => {
  const says = (said: FollowWarningFacts) => [
    warningText(said, wordsFor()),
    warningText(said, wordsFor({ language: 'de' })),
  ];
  expect(says({ kind: 'cue-late', cue: 3, lateFrames: 1, frame: 9 })).toEqual([
    'Cue 3 came 1 frame late, at frame 10.',
    'Einsatz 3 kam 1 Bild zu spät, bei Bild 10.',
  ]);
  for (const text of says({ kind: 'clock-ahead', reason: 'cues-not-done', cues: 1 }))
    expect(text).toMatch(/ a cue was | war ein Einsatz fällig: /);
});
