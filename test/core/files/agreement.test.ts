// Schema and reader take and refuse the same files. A schema cannot say everything; what the reader alone knows is
// named here, one rule a row, and nothing but these may part the two.

import {
  type FileError,
  lightTable,
  type Plan,
  planShoot,
  readPlan,
  readShoot,
  writeLight,
  writePlan,
} from '@evenfall/core';
import fc from 'fast-check';
import * as v from 'valibot';
import { expect, test } from 'vitest';
import { lightSchema } from '../../../packages/core/src/files/light-schema.js';
import { keyFaults } from '../../../packages/core/src/files/walk.js';
import { shootArbitrary } from '../../../packages/tools/any-shoot.mjs';
import { casesOf, seedOf } from '../../reference/cases.js';
import { published, schemaReader } from '../../reference/json-schema.js';
import { brokenArbitrary, endsIn } from './broken.js';
import { PLAN, shootOf } from './sample.js';

const SEED = 20260912;

/** What the reader knows and the schema does not: where it is told, and in which words. docs/formats.md lists them. */
const SHOOT_RULES: Readonly<Record<string, readonly [where: RegExp, text: RegExp]>> = {
  'the zone is known': [/^place\.timeZone$/, /is not a time zone known here/],
  'the date exists': [/^date$/, /is not in the calendar|is out of reach|was skipped by the calendar/],
  'a time exists': [
    /^span\.(startAt|endAt)$|^readings\[\d+\]\.at$|^scene\.lamps\.on\.fromAt$/,
    /is no time in the years/,
  ],
  'the sun moves the way of the direction': [/^span\.toSunAltitudeDeg$/, /is not (below|above) .* the sun/],
  'the span ends after it starts': [/^span\.endAt$/, /is before startAt/],
  'the span starts on the date': [/^span\.startAt$/, /falls on .* at the place, not on date/],
  'the frames are few enough': [/^intervalS$/, /makes more than \d+ frames/],
  'the kit is small enough for the frames': [/^intervalS$/, /too many to plan with/],
  'the shutter fits the interval': [/^intervalS$/, /is too short for (the shortest shutter|a bracket)/],
  'a bracket goes by clicks': [/^camera\.bracket\.stepEv$/, /is no whole number of clicks/],
  'a bracket fits the shutter': [/^camera\.bracket$/, /does not fit between the shortest and the longest/],
  'a freely timed shutter is a rig’s': [/^camera\.bulb$/, /needs crew "rig"/],
  'the mark is on its dial': [
    /^camera\.(shutter|iso|aperture)(\.\w+)?$/,
    /is not on the (shutter|ISO|aperture) dial/,
  ],
  'a range of the dial runs upward': [
    /^camera\.(shutter|iso|aperture)\.\w+$/,
    /swap the two or give another/,
  ],
  'each filter has a name of its own': [/^filters\[\d+\]\.name$/, /is the name of another filter too/],
  'a filter is not misread in a cue': [/^filters\[\d+\]\.name$/, /would be misread in a cue/],
  'the start filter is among the filters': [/^startFilter$/, /is not among the filters/],
  'surface or reflectance': [/^scene\.reflectance$/, /does not go together with surface/],
  'lamps come on as the sun sinks': [
    /^scene\.lamps\.on\.toSunAltitudeDeg$/,
    /is not below fromSunAltitudeDeg/,
  ],
  'the look rises with the sun': [/^look\[\d+\]\.sunAltitudeDeg$/, /is not above the row before/],
  'a reading belongs to the shoot': [
    /^readings\[\d+\]\.at$/,
    /is (long before the first|after the last) frame/,
  ],
  'one move an axis': [/^moves\[\d+\]\.axis$/, /a second (pan|tilt|slide)/],
  'a tilt has no bearings': [/^moves\[\d+\]\.by$/, /compass bearings turn a pan/],
  'points need lens and sensor': [/^moves\[\d+\]\.by$/, /points need camera\.lens and camera\.sensor/],
  'a track is longer than its carriage': [/^moves\[\d+\]\.by\.trackM$/, /leaves no way beside carriage/],
  'a move goes somewhere': [/^moves\[\d+\]\.by$/, /goes nowhere/],
  'a stopped move has time': [/^moves\[\d+\]\.gear$/, /a stopped move needs time/],
};

const PLAN_RULES: typeof SHOOT_RULES = {
  'the summary counts right': [/^summary\.(frame|cue)Count$/, /does not fit the rest of the plan/],
  'frames count from 0': [/^frames\[\d+\]\.frame$/, /does not fit the rest of the plan/],
  'frames start an interval apart': [/^frames\[\d+\]\.at$/, /is not when this frame starts/],
  'a cue lies among the frames': [/^(cues|shutterTimes)\[\d+\]\.frame$/, /is not a frame after/],
};

/** Asserts that the two agree on a file but for the rules, and notes the rules met. */
function agreeing(rules: typeof SHOOT_RULES, check: (value: unknown) => string[]) {
  const met = new Set<string>();
  const counts = { taken: 0, refused: 0, byRule: 0 };
  const agree = (value: unknown, errors: readonly FileError[] | undefined) => {
    const faults = check(value);
    if (errors === undefined) {
      counts.taken++;
      expect(faults).toEqual([]);
    } else if (faults.length > 0) counts.refused++;
    else {
      counts.byRule++;
      for (const { path, text } of errors) {
        // A plan's shoot is a shoot file.
        const where = path
          .filter((key, i) => i > 0 || key !== 'shoot')
          .reduce<string>(
            (at, key) => (typeof key === 'number' ? `${at}[${key}]` : at === '' ? key : `${at}.${key}`),
            '',
          );
        const rule = Object.entries(rules).find(([, [at, says]]) => at.test(where) && says.test(text));
        expect(rule?.[0], `a rule for ${where}: ${text}`).toBeDefined();
        met.add(rule![0]);
      }
    }
  };
  return { agree, met, counts };
}

const errorsOf = (read: { kind: 'ok' } | { kind: 'wrong'; errors: readonly FileError[] }) =>
  read.kind === 'ok' ? undefined : read.errors;

test('9,000 shoot files: taken and refused alike, but for the rules named here', () => {
  const { agree, met, counts } = agreeing(SHOOT_RULES, schemaReader(published('shoot')));
  fc.assert(
    fc.property(
      shootArbitrary,
      brokenArbitrary(shootArbitrary, endsIn(published('shoot'))),
      (sound, broken) => {
        agree(sound, errorsOf(readShoot(sound)));
        agree(broken, errorsOf(readShoot(broken)));
      },
    ),
    { seed: seedOf(SEED), numRuns: casesOf(4500), endOnFailure: true },
  );
  expect(counts.taken).toBeGreaterThan(2000);
  expect(counts.refused).toBeGreaterThan(1000);
  expect(counts.byRule).toBeGreaterThan(200);
  expect([...Object.keys(SHOOT_RULES)].filter((rule) => !met.has(rule))).toEqual([]);
});

/** Shoots with few frames, so that plan and light are made in a moment. */
const QUICK = fc
  .sample(shootArbitrary, { seed: seedOf(SEED), numRuns: 60 })
  .map((file) => shootOf({ ...file, intervalS: 86_400 }));

test('4,000 plan files: taken and refused alike, but for the rules named here', () => {
  const rules = { ...PLAN_RULES, ...SHOOT_RULES };
  const { agree, met, counts } = agreeing(rules, schemaReader(published('plan')));
  const made = [...QUICK.map((shoot) => planShoot(shoot)), ...Array<Plan>(20).fill(PLAN)];
  const plans = made.map((plan) => JSON.parse(writePlan(plan)) as object);
  expect(new Set(plans.map((plan) => 'infeasible' in plan)).size).toBe(2);
  for (const plan of plans) agree(plan, errorsOf(readPlan(plan)));
  fc.assert(
    fc.property(brokenArbitrary(fc.constantFrom(...plans), endsIn(published('plan'))), (broken) => {
      agree(broken, errorsOf(readPlan(broken)));
    }),
    { seed: seedOf(SEED), numRuns: casesOf(4000), endOnFailure: true },
  );
  expect(counts.taken).toBeGreaterThan(300);
  expect(counts.refused).toBeGreaterThan(1000);
  expect([...Object.keys(PLAN_RULES)].filter((rule) => !met.has(rule))).toEqual([]);
});

test('1,000 light tables: taken and refused alike', () => {
  const { agree, counts } = agreeing({}, schemaReader(published('light')));
  const tables = QUICK.map((shoot) => lightTable(shoot)).flatMap((table) =>
    table.kind === 'infeasible' ? [] : [JSON.parse(writeLight(table)) as object],
  );
  const faults = (value: unknown) =>
    v.is(lightSchema, value) && keyFaults(lightSchema, value).length === 0 ? undefined : [];
  for (const table of tables) agree(table, faults(table));
  fc.assert(
    fc.property(brokenArbitrary(fc.constantFrom(...tables), endsIn(published('light'))), (broken) => {
      agree(broken, faults(broken));
    }),
    { seed: seedOf(SEED), numRuns: casesOf(1000), endOnFailure: true },
  );
  expect(counts.byRule).toBe(0);
  expect(counts.taken).toBeGreaterThan(200);
  expect(counts.refused).toBeGreaterThan(300);
});
