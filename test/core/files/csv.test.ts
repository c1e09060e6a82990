import { type PlanMade, writeCuesCsv, writeFramesCsv } from '@evenfall/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PLAN } from './sample.js';

/**
 * A reader by the grammar of RFC 4180, section 2: records end in CRLF; a field may stand in quotes; in quotes a
 * quote is doubled. Throws on anything else, a bare CR, LF or quote among it.
 */
function readCsv(text: string): string[][] {
  const records: string[][] = [];
  let at = 0;
  while (at < text.length) {
    const record: string[] = [];
    for (;;) {
      const field = /^(?:"((?:[^"]|"")*)"|([^",\r\n]*))/.exec(text.slice(at))!;
      record.push(field[1]?.replaceAll('""', '"') ?? field[2] ?? '');
      at += field[0].length;
      if (text[at] === ',') at++;
      else if (text.startsWith('\r\n', at)) break;
      else throw new Error(`no comma and no CRLF at ${at}: ${JSON.stringify(text.slice(at, at + 20))}`);
    }
    at += 2;
    records.push(record);
  }
  return records;
}

test('cues are rows of what changes and what stands after', () => {
  const [header, ...rows] = readCsv(writeCuesCsv(PLAN));
  const records = rows.map((row) => Object.fromEntries(row.map((field, i) => [header![i], field])));
  expect(records).toHaveLength(2);
  expect(records[0]).toMatchObject({
    frame: '2',
    at: '2026-09-12T19:30:12+02:00',
    shutterFrom: '1/30',
    shutterTo: '1/250',
    isoFrom: '',
    isoTo: '',
    filterFrom: 'ND 0.9',
    filterTo: 'none',
    shutter: '1/250',
    shutterS: '0.00390625',
    iso: '100',
    aperture: '5.6',
    filters: '',
  });
  expect(records[1]).toMatchObject({ frame: '4', shutterFrom: '1/250', shutterTo: '1/125', filterFrom: '' });
});

// OWASP, CSV Injection: what a field may not begin with, and the apostrophe before it.
test.each(['=HYPERLINK("http://x")', '+1', '-2', '@SUM(A1)', '\tx', '\rx'])(
  'a filter called %j is no formula',
  (name) => {
    const frames = PLAN.frames.map((frame) => ({ ...frame, filters: [name, '=ND'] }));
    const changes = [{ control: 'filter' as const, from: name, to: 'none' }];
    const plan = { ...PLAN, frames, cues: PLAN.cues.map((cue) => ({ ...cue, changes })) };
    const columns = (csv: string, column: string) => {
      const [header, ...rows] = readCsv(csv);
      return rows.map((row) => row[header!.indexOf(column)]);
    };
    for (const field of columns(writeFramesCsv(plan), 'filters')) expect(field).toBe(`'${name} + =ND`);
    expect(columns(writeCuesCsv(plan), 'filterFrom')).toEqual(PLAN.cues.map(() => `'${name}`));
    // A number is one, below zero too.
    const errors = columns(writeFramesCsv(PLAN), 'errorEv');
    expect(errors.some((field) => field!.startsWith('-'))).toBe(true);
  },
);

test('frames are rows with every key of a frame of the plan file', () => {
  const [header, ...rows] = readCsv(writeFramesCsv(PLAN));
  expect([...header!].sort()).toEqual(Object.keys(PLAN.frames[0]!).sort());
  expect(rows).toHaveLength(PLAN.frames.length);
  for (const [i, row] of rows.entries()) {
    const { filters, ...rest } = PLAN.frames[i]!;
    const record = Object.fromEntries(row.map((field, j) => [header![j], field]));
    expect(record).toMatchObject(
      Object.fromEntries(Object.entries(rest).map(([key, each]) => [key, String(each)])),
    );
    expect(record.filters).toBe(filters.join(' + '));
  }
});

test('any filter name comes back whole', () => {
  let quoted = 0;
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom('"', ',', '\r', '\n', 'a', ' ', 'é') }), (name) => {
      const plan: PlanMade = { ...PLAN, frames: PLAN.frames.map((frame) => ({ ...frame, filters: [name] })) };
      const [header, ...rows] = readCsv(writeFramesCsv(plan));
      const column = header!.indexOf('filters');
      expect(rows.map((row) => row[column])).toEqual(
        plan.frames.map(() => (name.startsWith('\r') ? `'${name}` : name)),
      );
      if (/[",\r\n]/.test(name)) quoted++;
    }),
    { seed: 20260912, numRuns: 200 },
  );
  expect(quoted).toBeGreaterThan(50);
});

test('where a rig times the shutter, its thirds of a stop are rows among the cues', () => {
  const shutter = (frame: number, from: string, to: string) => {
    const { at, sunAltitudeDeg } = PLAN.frames[frame]!;
    return { frame, at, sunAltitudeDeg, changes: [{ control: 'shutter' as const, from, to }] };
  };
  const plan = { ...PLAN, shutterTimes: [shutter(1, '1/40', '1/30'), shutter(3, '1/250', '1/190')] };
  const [header, ...rows] = readCsv(writeCuesCsv(plan));
  const records = rows.map((row) => Object.fromEntries(row.map((field, i) => [header![i], field])));
  expect(
    records.map(({ frame, shutterFrom, shutterTo, filterFrom }) => [
      frame,
      shutterFrom,
      shutterTo,
      filterFrom,
    ]),
  ).toEqual([
    ['1', '1/40', '1/30', ''],
    ['2', '1/30', '1/250', 'ND 0.9'],
    ['3', '1/250', '1/190', ''],
    ['4', '1/250', '1/125', ''],
  ]);
});
