import { describe, expect, test } from 'vitest';
import {
  dialLabel,
  dialLabels,
  dialStep,
  fNumberOfStep,
  isoOfStep,
  type StepsPerStop,
  timeOfStep,
} from '../../../packages/core/src/exposure/dial.js';
import { readTable } from '../../reference/csv.js';

const scale = (row: Record<string, string>): StepsPerStop => (row.series === 'third' ? 3 : 2);

// Sources of the three tables: exact values are powers of two of the APEX scale (ASA PH2.5-1960; CIPA DC-008);
// marked labels from the tables that libgphoto2 and exiftool carry.
describe('marked series against their exact values', () => {
  const shutters = readTable('exposure/shutter_stops.csv');
  test.each(shutters)('shutter $series $marked', (row) => {
    const step = Number(row.stops_from_1s_num);
    expect(dialLabel('shutter', step, scale(row))).toBe(row.marked);
    expect(dialStep('shutter', row.marked, scale(row))).toBe(step);
    if (row.exact_seconds !== '')
      expect(timeOfStep(step, scale(row)) / Number(row.exact_seconds)).toBeCloseTo(1, 8);
  });

  const apertures = readTable('exposure/aperture_stops.csv');
  test.each(apertures)('aperture $series f/$marked', (row) => {
    const step = Number(row.stops_num);
    expect(dialLabel('aperture', step, scale(row))).toBe(row.marked);
    expect(dialStep('aperture', row.marked, scale(row))).toBe(step);
    if (row.exact_f_number !== '')
      expect(fNumberOfStep(step, scale(row))).toBeCloseTo(Number(row.exact_f_number), 6);
  });

  const isos = readTable('exposure/iso_stops.csv');
  test.each(isos)('ISO $series $marked', (row) => {
    const step = (Number(row.thirds_from_100) * scale(row)) / 3;
    expect(dialLabel('iso', step, scale(row))).toBe(row.marked);
    expect(dialStep('iso', row.marked, scale(row))).toBe(step);
    if (row.exact_iso_2pow !== '')
      expect(isoOfStep(step, scale(row))).toBeCloseTo(Number(row.exact_iso_2pow), 3);
  });

  test('no dial has a mark the tables lack', () => {
    const count = (rows: { series: string }[], series: string) =>
      rows.filter((r) => r.series === series).length;
    for (const [control, rows] of [
      ['shutter', shutters],
      ['aperture', apertures],
      ['iso', isos],
    ] as const) {
      const table = rows as unknown as { series: string }[];
      expect(dialLabels(control, 3).length).toBe(count(table, 'third'));
      // The half-stop table of shutters ends at "30"; "45" and "60" are added here.
      expect(dialLabels(control, 2).length).toBe(count(table, 'half') + (control === 'shutter' ? 2 : 0));
    }
  });
});

test('a label on both scales is resolved by the dial, never by the text', () => {
  expect(timeOfStep(dialStep('shutter', '0.3', 3) as number, 3)).toBeCloseTo(2 ** (-5 / 3), 12);
  expect(timeOfStep(dialStep('shutter', '0.3', 2) as number, 2)).toBeCloseTo(2 ** -1.5, 12);
  // Source: aperture_stops.csv, column ambiguous_label.
  expect(fNumberOfStep(dialStep('aperture', '13', 3) as number, 3)).toBeCloseTo(12.69920842, 8);
  expect(fNumberOfStep(dialStep('aperture', '13', 2) as number, 2)).toBeCloseTo(13.4543, 4);
});

test('above 60 s labels go on by doubling, each a stop longer', () => {
  for (const [scaleOf, labels] of [
    [3, ['60', '80', '100', '120', '160', '200', '240']],
    [2, ['60', '90', '120', '180', '240']],
  ] as const) {
    const steps = labels.map((label) => dialStep('shutter', label, scaleOf) as number);
    expect(steps).toEqual(labels.map((_, i) => (steps[0] as number) - i));
  }
  expect(timeOfStep(dialStep('shutter', '120', 3) as number, 3)).toBe(128);
});

test('a label the dial does not have is undefined, and a step beyond it an error', () => {
  expect(dialStep('shutter', '1/180', 3)).toBeUndefined();
  expect(dialStep('shutter', '32', 3)).toBeUndefined();
  expect(dialStep('aperture', '5.657', 3)).toBeUndefined();
  expect(() => dialLabel('iso', 31, 3)).toThrow('step 31 is not on the iso dial');
  expect(() => dialLabel('shutter', 40, 3)).toThrow('step 40 is not on the shutter dial');
  // Doubled from 30 s on, to 2^14 s and no farther.
  expect(dialLabel('shutter', -42, 3)).toBe('15360');
  expect(() => dialLabel('shutter', -43, 3)).toThrow('step -43 is not on the shutter dial');
  expect(dialLabel('shutter', -28, 2)).toBe('15360');
  expect(() => dialLabel('shutter', -29, 2)).toThrow('step -29 is not on the shutter dial');
  expect(() => dialLabel('shutter', 0.5, 3)).toThrow('step must be a whole number, got 0.5');
});
