// What files print, against the tables of marked values and what two other programs print of one time.

import { expect, test } from 'vitest';
import { markReader } from '../../../packages/core/src/review/marks.js';
import { readTable } from '../../reference/csv.js';

const read = { 3: markReader(3), 2: markReader(2) };
const stepsPerStop = (series: string) => (series === 'third' ? 3 : 2);
const numberOf = (label: string) => {
  const [over, under = 1] = label.split('/').map(Number);
  return over! / under;
};

test.each([
  { control: 'shutter', table: 'shutter_stops', exact: 'exact_seconds' },
  { control: 'iso', table: 'iso_stops', exact: 'exact_iso_2pow' },
  { control: 'aperture', table: 'aperture_stops', exact: 'exact_f_number' },
] as const)('every mark of $control, printed, is its exact value', ({ control, table, exact }) => {
  const rows = readTable(`exposure/${table}.csv`).filter((row) => row[exact] !== '' && row.marked !== '');
  const marks = rows.filter((row) => ['third', 'half'].includes(row.series!));
  expect(marks.length).toBeGreaterThan(20);
  let found = 0;
  for (const { series, marked, [exact]: value } of marks) {
    const mark = read[stepsPerStop(series!)](control, numberOf(marked!));
    // The tables hold marks beyond a camera's dial, which are no marks here.
    if (mark.label !== marked) continue;
    found++;
    expect(mark.exact / Number(value), `${series} ${marked}`).toBeCloseTo(1, 4);
  }
  expect(found).toBeGreaterThan(15);
});

test('a time, as files hold it and as two other programs print it, is one and the same step', () => {
  const rows = readTable('review/exif_exposure_time_print.csv');
  let steps = 0;
  for (const { decimal_seconds, exif_rational, exiftool_prints } of rows) {
    const [over, under] = exif_rational!.split('/').map(Number);
    const mark = read[3]('shutter', over! / under!);
    expect(read[3]('shutter', Number(decimal_seconds)).label).toBe(mark.label);
    // 0.26 s is a quarter by its exact value, and printed it would be 0.3, another step.
    if (decimal_seconds === '0.26') continue;
    steps++;
    const printed = read[3]('shutter', numberOf(exiftool_prints!));
    expect(printed.label, decimal_seconds).toBe(mark.label);
  }
  expect(steps).toBe(18);
});

test.each([
  // Exif, CIPA DC-008, and hand: 2^-3, 2^(-5/3), 2^(-3/2), 2^5, 2^(14/3); f/5.6 is 2^(5/2).
  { control: 'shutter', dial: 3, printed: 0.125, label: '1/8', exact: 2 ** -3 },
  { control: 'shutter', dial: 3, printed: 0.3, label: '0.3', exact: 2 ** (-5 / 3) },
  { control: 'shutter', dial: 3, printed: 1 / 3, label: '0.3', exact: 2 ** (-5 / 3) },
  { control: 'shutter', dial: 2, printed: 0.3, label: '0.3', exact: 2 ** (-3 / 2) },
  { control: 'shutter', dial: 3, printed: 30, label: '30', exact: 32 },
  { control: 'shutter', dial: 3, printed: 25.3984, label: '25', exact: 2 ** (14 / 3) },
  { control: 'shutter', dial: 3, printed: 120, label: '120', exact: 128 },
  { control: 'shutter', dial: 3, printed: 1 / 750, label: '1/750', exact: 2 ** (-19 / 2) },
  { control: 'iso', dial: 3, printed: 125, label: '125', exact: 100 * 2 ** (1 / 3) },
  { control: 'aperture', dial: 3, printed: 5.6, label: '5.6', exact: 2 ** 2.5 },
  { control: 'shutter', dial: 3, printed: 0.28, label: '1/3.57', exact: 0.28 },
  { control: 'shutter', dial: 3, printed: 14, label: '14', exact: 14 },
] as const)('$control $printed on a dial of 1/$dial stop', ({ control, dial, printed, label, exact }) => {
  const mark = read[dial](control, printed);
  expect(mark.label).toBe(label);
  expect(mark.exact).toBeCloseTo(exact, 12);
});
