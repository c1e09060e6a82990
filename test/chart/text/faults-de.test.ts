// What is wrong with a file, in German: every kind, with every number it names, and no English but the words and keys of
// the formats, which stand in quotes.

import { faultText, wordsFor } from '@evenfall/chart';
import { type FileError, readPlan, readShoot, writePlan } from '@evenfall/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { englishFaults } from '../../../packages/core/src/files/english-faults.js';
import { shootArbitrary } from '../../../packages/tools/any-shoot.mjs';
import { withValue } from '../../../packages/web/src/state/path.js';
import { brokenArbitrary, endsIn } from '../../core/files/broken.js';
import { LEAST, PLAN } from '../../core/files/sample.js';
import { published } from '../../reference/json-schema.js';

const german = wordsFor({ language: 'de' });
const EVENING = {
  ...LEAST,
  place: { ...LEAST.place, timeZone: 'Europe/Copenhagen' },
  span: { fromSunAltitudeDeg: 3, toSunAltitudeDeg: -9 },
  filters: [{ name: 'ND 6', stops: 6 }],
};

/** What can be typed on the page. */
const TYPED: readonly (readonly [path: readonly (string | number)[], values: readonly unknown[]])[] = [
  [
    ['place', 'latitudeDeg'],
    [95, 'north', '52,1', '52 °'],
  ],
  [['format'], ['evenfall-shoot/2']],
  [['place', 'longitudeDeg'], [-200.5]],
  [['place', 'elevationM'], [9001]],
  [['place', 'aboveHorizonM'], [-1]],
  [
    ['place', 'timeZone'],
    ['', 'Mars/Base'],
  ],
  [['date'], ['', '12.9.2026', '2026-02-30', '1700-01-01']],
  [['title'], ['a'.repeat(200)]],
  [['intervalS'], [0, -3, 'often', 0.5, 100_000]],
  [['clipFps'], [0, 2000]],
  [
    ['camera', 'gapS'],
    [-1, 10],
  ],
  [
    ['camera', 'frameMB'],
    [0, '30 MB'],
  ],
  [['camera', 'cardGB'], [-1]],
  [
    ['camera', 'batteryFrames'],
    [0.5, 0],
  ],
  [['camera', 'shutter', 'longest'], ['1/8000']],
  [['camera', 'iso', 'highest'], [50]],
  [['camera', 'bulb'], [true]],
  [
    ['span', 'fromSunAltitudeDeg'],
    [-12, 100],
  ],
  [['span', 'toSunAltitudeDeg'], [8]],
  [['span'], [{ startAt: '2026-09-12T21:00:00+02:00', endAt: '2026-09-12T20:00:00+02:00' }]],
  [['scene', 'viewAltitudeDeg'], [91]],
  [['scene', 'skyShare'], [1.4]],
  [['scene', 'uprightShare'], [1.4]],
  [['scene', 'facing'], [{ azimuthDeg: 400 }]],
  [['look', 'nightEv'], [-20]],
  [['limits', 'toleranceEv'], [0]],
  [['limits', 'largestStepEv'], [11]],
  [['limits', 'secondsBetweenCues'], [-1]],
  [['limits', 'maxFilterChanges'], [1.5]],
  [
    ['limits', 'framesLostPerFilterChange'],
    [2.5, 1001],
  ],
  [['filters', 0, 'stops'], [31]],
  [
    ['filters', 0, 'name'],
    ['', 'none', ' ND'],
  ],
  [
    ['filters', 0],
    [
      { name: 'ND', density: 10 },
      { name: 'ND', factor: 0.5 },
    ],
  ],
  [
    ['readings'],
    [[{ at: '2026-09-12T20:00:00+02:00', ev100: 40 }], [{ at: '2026-09-14T20:00:00+02:00', ev100: 4 }]],
  ],
];

/** What only a file can hold. */
const WRITTEN: readonly object[] = [
  { camera: { ...EVENING.camera, bracket: { frames: 3, stepEv: 1.1, betweenS: 0 } } },
  { camera: { ...EVENING.camera, stepsPerStop: 2, bracket: { frames: 3, stepEv: 1.1, betweenS: 0 } } },
  { camera: { ...EVENING.camera, bracket: { frames: 9, stepEv: 3, betweenS: 0 } } },
  { intervlaS: 5 },
  { 'intervalS:5': null },
  { '05': null },
  { scene: { lamps: { word: 'street', on: { fromSunAltitudeDeg: -9, toSunAltitudeDeg: -3 } } } },
  { place: { latitudeDeg: -13.8, longitudeDeg: -171.8, timeZone: 'Pacific/Apia' }, date: '2011-12-30' },
  { filters: Array.from({ length: 13 }, (_, i) => ({ name: `${i}`, stops: i })) },
  { readings: Array.from({ length: 30_000 }, () => 0) },
  { look: Array.from({ length: 40 }).reduce<unknown>((inner) => [inner], 0) },
  {
    crew: 'rig',
    stackFilters: true,
    filters: Array.from({ length: 12 }, (_, i) => ({ name: `${i}`, stops: i })),
    camera: {
      ...LEAST.camera,
      bulb: true,
      iso: { lowest: 50, highest: 102_400 },
      aperture: { widest: '1', narrowest: '32' },
    },
    limits: { maxFilterChanges: 30 },
  },
  { camera: { ...LEAST.camera, aperture: { widest: '8', narrowest: '2.8' } } },
  { startFilter: 'ND 7' },
  { startFilter: 'ND 7', filters: [] },
  { title: 7 },
  { moves: {} },
];

const found = (read: { kind: 'ok' } | { kind: 'wrong'; errors: readonly FileError[] }) =>
  read.kind === 'ok' ? [] : read.errors;

const TYPED_FAULTS = TYPED.flatMap(([path, values]) =>
  values.map((value) => {
    const errors = found(readShoot(withValue(EVENING, path, value)));
    expect(errors, `${path.join('.')} ${JSON.stringify(value)}`).not.toEqual([]);
    return errors;
  }),
).flat();
const WRITTEN_FAULTS = WRITTEN.flatMap((over) => {
  const errors = found(readShoot({ ...EVENING, ...over }));
  expect(errors, JSON.stringify(over).slice(0, 80)).not.toEqual([]);
  return errors;
});

/** Of a thousand files and plans spoilt in one place or two. */
const SPOILT_FAULTS = [
  ...fc.sample(brokenArbitrary(shootArbitrary, endsIn(published('shoot'))), {
    seed: 20260912,
    numRuns: 1000,
  }),
].flatMap((value) => found(readShoot(value)));
const SPOILT_PLANS = fc
  .sample(brokenArbitrary(fc.constant(JSON.parse(writePlan(PLAN))), endsIn(published('plan'))), {
    seed: 20260912,
    numRuns: 500,
  })
  .flatMap((value) => found(readPlan(value)));
const FAULTS = [...TYPED_FAULTS, ...WRITTEN_FAULTS, ...SPOILT_FAULTS, ...SPOILT_PLANS];

const withoutQuotes = (text: string) => text.replaceAll(/"(?:[^"\\]|\\.)*"/g, '');
const numbers = (text: string) =>
  text
    .replaceAll('−', '-')
    .replaceAll(/(\d),(\d)/g, '$1.$2')
    .match(/-?\d+(\.\d+)?/g) ?? [];

test('every kind of fault is told in German, with its numbers', () => {
  expect(FAULTS.length).toBeGreaterThan(1000);
  for (const fault of FAULTS) {
    const told = faultText(fault, german);
    expect(withoutQuotes(told), `${fault.text} – ${told}`).not.toMatch(
      /\b(the|is|not|give|from|to|or|at|and|of|with|no|such|key|than|more|one)\b/,
    );
    // A reader of German needs no word for what the value should have been: its key stands beside it.
    for (const n of numbers(fault.text.replace(/ is not 2 or 3;| in a day|YYYY-MM-DD/, ''))) {
      expect(numbers(told), `${fault.text} – ${told}`).toContain(n);
    }
  }
  const kinds = new Set(FAULTS.map(({ kind }) => kind));
  expect(Object.keys(englishFaults).filter((kind) => !kinds.has(kind as FileError['kind']))).toEqual([]);
});

test('the place of a fault and its sentence make up its message', () => {
  for (const { where, text, message } of FAULTS.slice(0, 200)) {
    expect(message).toBe(where === '' ? text : `${where}: ${text}`);
  }
});
