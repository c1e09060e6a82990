// When to go: the list of evenings, against the plans of those evenings.

import { type Evenings, planShoot, shootOnDate } from '@evenfall/core';
import { expect, test } from 'vitest';
import { EVENING, evenfall, eveningPlan, folder, IMPOSSIBLE } from './run.js';

const { shoot } = eveningPlan();
const days = 5;

test('a line an evening, as its own plan has it', async () => {
  const { status, out, err } = await evenfall(['evenings', '-', '--days', String(days)], EVENING);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  expect(out).toContain('Saturday 12 September 2026 to Wednesday 16 September 2026\n');
  expect(out).toContain('5 of 5 evenings can be done with this kit.\n');
  const rows = [
    ...out.matchAll(
      /^(\w{3} \d+ \w{3}) {2}(\d\d:\d\d) {2}(\d\d:\d\d) (\d\.\d\d) +(new|full|[+-]\d+ %) +(-?\d+) +([\d.]+) +(\d+) +([\d.]+) +([\d.]+)\/([\d.]+) +(>?\d+)$/gm,
    ),
  ];
  expect(rows.map((row) => row[1])).toEqual([
    'Sat 12 Sep',
    'Sun 13 Sep',
    'Mon 14 Sep',
    'Tue 15 Sep',
    'Wed 16 Sep',
  ]);
  for (const [i, row] of rows.entries()) {
    const plan = planShoot(shootOnDate(shoot, `2026-09-${12 + i}`));
    if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
    const { summary, events } = plan;
    expect(events.find(({ name }) => name === 'sunset')!.at.slice(11, 16)).toBe(row[2]);
    expect(row.slice(7, 10)).toEqual([
      summary.rampStops.toFixed(1),
      String(summary.cueCount),
      summary.worstErrorEv.toFixed(2),
    ]);
    expect(Number(row[10])).toBeCloseTo(summary.reserveDarkEv, 0);
    expect(Math.abs(Number(row[10]) - summary.reserveDarkEv)).toBeLessThan(0.051);
    expect(row[12]).toBe(
      summary.eveningsHeldShare > 0.99 ? '>99' : String(Math.round(100 * summary.eveningsHeldShare)),
    );
  }
  // New on the 11th at 03:27 UT, first quarter on the 18th (U.S. Naval Observatory): young, growing, and down at the end.
  expect(rows.every((row) => /^\+/.test(row[5]!) && Number(row[6]) < 0)).toBe(true);
});

test('an evening that cannot be done says why; where none can, the status is 2', async () => {
  const { status, out } = await evenfall(['evenings', '-', '--days', '2'], IMPOSSIBLE);
  expect(status).toBe(2);
  expect(out).toContain('0 of 2 evenings can be done with this kit.');
  expect(out).toMatch(/^Sat 12 Sep {2}19:47 .* no: too dark by \d\.\d from \d\d:\d\d$/m);
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  const north = EVENING.replace('57.05', '69.65').replace('2026-09-12', '2026-06-20');
  const summer = await evenfall(['evenings', '-', '--days', '1'], north);
  expect(summer.status).toBe(2);
  expect(summer.out).toMatch(/^Sat 20 Jun {2}none .* no: the sun does not go so far$/m);
});

test('mornings are called so', async () => {
  const dawn = EVENING.replace('intervalS', 'direction: dawn\nintervalS');
  const { out } = await evenfall(['evenings', '-', '--days', '1'], dawn);
  expect(out).toContain('1 of 1 morning can be done');
  expect(out).toMatch(/^day +rise /m);
  expect(out.replaceAll(/\s+/g, ' ')).toContain('as on so many mornings in 100');
});

test('for a program and for a spreadsheet', async () => {
  const argv = ['evenings', '-', '--from', '2026-12-31', '--days', '2'];
  const json = await evenfall([...argv, '--json'], EVENING);
  const { format, evenings } = JSON.parse(json.out) as Evenings;
  expect(format).toBe('evenfall-evenings/1');
  expect(evenings.map(({ date }) => date)).toEqual(['2026-12-31', '2027-01-01']);
  const csv = await evenfall([...argv, '--csv'], EVENING);
  expect(csv.out.split('\r\n').map((line) => line.slice(0, 10))).toEqual([
    'date,horiz',
    '2026-12-31',
    '2027-01-01',
    '',
  ]);
  expect([json.status, csv.status]).toEqual([0, 0]);
});

test.each([
  [['--days', '0'], 'Give a whole number from 1 to 366.'],
  [['--days', '367'], 'Give a whole number from 1 to 366.'],
  [['--days', '1.5'], 'Give a whole number from 1 to 366.'],
  [['--from', '2027-02-29'], '--from: "2027-02-29" is not in the calendar; give a real date as YYYY-MM-DD'],
  [['--from', 'tomorrow'], '--from: '],
  [['--csv', '--json'], '--csv does not go with --json; leave one out'],
])('refused in one line: %j', async (options, why) => {
  const at = folder({ 'evening.yaml': EVENING }).at('evening.yaml');
  const { status, out, err } = await evenfall(['evenings', at, ...options]);
  expect([status, out]).toEqual([1, '']);
  expect(err).toContain(why);
  expect(err.trimEnd()).not.toContain('\n');
});
