import { planEvenings, writeEvenings, writeEveningsCsv } from '@evenfall/core';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { published, schemaReader } from '../../reference/json-schema.js';
import { shootFrom } from '../shoots.js';

// Evenings of every kind: some can be done, some are too dark; in June there is no such span, nor a sunset.
const camera = {
  shutter: { shortest: '1/4000', longest: '15' },
  iso: { lowest: 100, highest: 320 },
  aperture: '4',
};
const place = { latitudeDeg: 69.65, longitudeDeg: 18.96, timeZone: 'Europe/Oslo' };
const mixed = planEvenings(shootFrom({ date: '2026-09-12', intervalS: 120, camera }), { days: 24 });
const none = planEvenings(shootFrom({ place, date: '2026-06-20', camera }), { days: 1 });

test('the file holds everything, by the published schema', () => {
  expect(new Set(mixed.evenings.map(({ kind }) => kind)).size).toBe(2);
  for (const evenings of [mixed, none]) {
    const text = writeEvenings(evenings);
    expect(JSON.parse(text)).toEqual(evenings);
    expect(schemaReader(published('evenings'))(JSON.parse(text))).toEqual([]);
    // An evening a line, so that people can skim and compare.
    expect(text.match(/^ {4}\{"kind":"\w+","date":"\d{4}-\d\d-\d\d",.*\},?$/gm)).toHaveLength(
      evenings.evenings.length,
    );
  }
});

// Read by a library that others will read it with; every value against the evening it stands for.
test('the table has a row an evening', () => {
  const rowsOf = (csv: string) => Papa.parse(csv, { header: true, skipEmptyLines: true }).data;
  const rows = [...rowsOf(writeEveningsCsv(mixed)), ...rowsOf(writeEveningsCsv(none))];
  const evenings = [...mixed.evenings, ...none.evenings];
  expect(rows).toHaveLength(25);
  const text = (value: unknown) => (value === undefined ? '' : String(value));
  for (const [i, evening] of evenings.entries()) {
    const { date, horizonAt, light } = evening;
    const plan = evening.kind === 'ok' ? evening.plan : undefined;
    const infeasible = evening.kind === 'ok' ? undefined : evening.infeasible;
    const short = infeasible !== undefined && 'frame' in infeasible ? infeasible.worstShortfallEv : undefined;
    expect(rows[i]).toEqual({
      date,
      horizonAt: text(horizonAt),
      steepestAt: text(light?.steepest?.at),
      steepestEvPerMin: text(light?.steepest?.evPerMin),
      moonLitFraction: text(light?.moonLitFraction),
      moonWaxing: text(light?.moonWaxing),
      moonAltitudeDeg: text(light?.moonAltitudeDeg),
      moonAzimuthDeg: text(light?.moonAzimuthDeg),
      rampStops: text(light?.rampStops),
      possible: String(plan !== undefined),
      startAt: text(plan?.startAt),
      endAt: text(plan?.endAt),
      frameCount: text(plan?.frameCount),
      cueCount: text(plan?.cueCount),
      worstErrorEv: text(plan?.worstErrorEv),
      reserveDarkEv: text(plan?.reserveDarkEv),
      reserveBrightEv: text(plan?.reserveBrightEv),
      eveningsHeldShare: text(plan?.eveningsHeldShare),
      reason: text(infeasible?.reason),
      worstShortfallEv: text(short),
      text: text(infeasible?.text),
    });
  }
});
