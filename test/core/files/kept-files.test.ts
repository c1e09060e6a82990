// Files that earlier versions wrote are read by this one, and mean what they meant. docs/formats.md promises it; the
// files in test/data/formats never change. Origin: written by the version whose folder they stand in.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  followLines,
  type PlanMade,
  readPlan,
  readShoot,
  writeCalendar,
  writeCuesCsv,
  writeFramesCsv,
  writePlan,
  writeShoot,
} from '@evenfall/core';
import ICAL from 'ical.js';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { published, schemaReader } from '../../reference/json-schema.js';

const home = fileURLToPath(new URL('../../data/formats/', import.meta.url));
const core = fileURLToPath(new URL('../../../packages/core/', import.meta.url));
const versions = readdirSync(home);
const json = (path: string) => JSON.parse(readFileSync(path, 'utf8')) as unknown;

test('this version has its folder', () => {
  const { version } = json(`${core}package.json`) as { version: string };
  expect(versions, 'npm run format-fixtures').toContain(version);
});

describe.each(versions)('files of version %s', (version) => {
  const text = (name: string) => readFileSync(`${home}${version}/${name}`, 'utf8');
  const value = (name: string) => JSON.parse(text(name)) as unknown;
  const names = readdirSync(home + version);
  const shoots = names.filter((name) => name.endsWith('.shoot.json'));
  const plans = names.filter((name) => name.endsWith('.plan.json'));
  const planOf = (name: string) => {
    const read = readPlan(value(name));
    if (read.kind === 'wrong') throw new Error(read.errors.map(({ message }) => message).join('\n'));
    return read.plan;
  };
  const evening = planOf('evening.plan.json') as PlanMade;

  test('there are shoots and plans', () => {
    expect(shoots).toEqual(['evening.shoot.json', 'morning.shoot.json']);
    expect(plans).toEqual(['evening.plan.json', 'morning.plan.json', 'too-dark.plan.json']);
  });

  test.each(shoots)('%s is read, with all it says', (name) => {
    const read = readShoot(value(name));
    if (read.kind === 'wrong') throw new Error(read.errors.map(({ message }) => message).join('\n'));
    // A later version may add keys with their defaults; it may take none away.
    expect(JSON.parse(writeShoot(read.shoot))).toMatchObject(value(name) as object);
  });

  test.each(plans)('%s is read, with all it says', (name) => {
    expect(JSON.parse(writePlan(planOf(name)))).toMatchObject(value(name) as object);
  });

  test.each(names.filter((name) => /\.(shoot|plan|light)\.json$/.test(name)))(
    '%s is right by the schema of its version and by the one published now',
    (name) => {
      const format = name.split('.')[1] as 'shoot' | 'plan' | 'light';
      const then = json(`${home}${version}/evenfall-${format}-1.schema.json`) as object;
      for (const schema of [then, published(format)]) expect(schemaReader(schema)(value(name))).toEqual([]);
    },
  );

  test('an impossible evening keeps its reason, and remedies that can be applied', () => {
    const plan = planOf('too-dark.plan.json');
    if (plan.kind !== 'infeasible') throw new Error('a plan was not expected');
    expect(plan.infeasible.reason).toBe('too-dark');
    expect(plan.infeasible.remedies.length).toBeGreaterThan(2);
    for (const { apply } of plan.infeasible.remedies) {
      expect(readShoot({ ...plan.shoot, ...apply })).toMatchObject({ kind: 'ok' });
    }
  });

  test.each([
    ['evening.cues.csv', writeCuesCsv],
    ['evening.frames.csv', writeFramesCsv],
  ])('%s: its columns are there still, in their order, with the same values', (name, write) => {
    const rowsOf = (csv: string) => Papa.parse(csv, { header: true, skipEmptyLines: true }).data;
    const rows = rowsOf(text(name));
    const rowsNow = rowsOf(write(evening));
    const columns = Object.keys(rows[0]!);
    expect(Object.keys(rowsNow[0]!).filter((column) => columns.includes(column))).toEqual(columns);
    expect(rowsNow).toHaveLength(rows.length);
    for (const [i, row] of rows.entries()) expect(rowsNow[i]).toMatchObject(row);
    expect(rows.length).toBeGreaterThan(10);
  });

  test('evening.ics: the same events under the same names, so that a calendar renews them', () => {
    const eventsOf = (calendar: string) =>
      new ICAL.Component(ICAL.parse(calendar)).getAllSubcomponents('vevent').map((event) => ({
        uid: event.getFirstPropertyValue('uid'),
        start: String(event.getFirstPropertyValue('dtstart')),
      }));
    expect(eventsOf(text('evening.ics')).length).toBeGreaterThan(10);
    // An event may be added, under a name of its own: the end is.
    const kept = eventsOf(text('evening.ics'));
    const now = eventsOf(writeCalendar(evening));
    expect(now.slice(0, kept.length)).toEqual(kept);
    expect(now.slice(kept.length).map(({ uid }) => String(uid).replace(/^\w+/, ''))).toEqual([
      '-end@evenfall',
    ]);
  });

  test('lines of an evening that was followed are understood, and answered in the same keys', () => {
    const { start, next, end } = followLines(evening);
    let state = start;
    const linesOf = (name: string) => text(name).trim().split('\n');
    const answers = linesOf('evening.follow-in.jsonl').flatMap((line) => {
      const step = next(state, line);
      state = step.state;
      return step.out;
    });
    const keysOf = (line: string) => Object.keys(JSON.parse(line) as object);
    const before = linesOf('evening.follow-out.jsonl');
    const now = [...answers, ...end(state)];
    expect(now).toHaveLength(before.length);
    // The last but one may lie after the last cue, the last sums up.
    for (const i of [0, before.length - 1])
      expect(keysOf(now[i]!)).toEqual(expect.arrayContaining(keysOf(before[i]!)));
    expect(JSON.parse(now.at(-1)!)).toMatchObject({ linesNotUnderstood: 0 });
  });
});
