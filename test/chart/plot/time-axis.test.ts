import { expect, test } from 'vitest';
import { altitudeTicks, clockTicks, timeAxis } from '../../../packages/chart/src/plot/time-axis.js';
import { twilightBands } from '../../../packages/chart/src/plot/twilight.js';
import { english } from '../../../packages/chart/src/text/words.js';

const moment = (at: string, sunAltitudeDeg: number) => ({ at, sunAltitudeDeg });

test('ticks stand on round local clock times, past midnight and in a half-hour zone', () => {
  const moments = [moment('2026-06-20T23:10:00+05:30', 1), moment('2026-06-21T01:10:00+05:30', -9)];
  const axis = timeAxis(moments, 0, 240); // 2 a minute
  const ticks = clockTicks(moments, axis, { spacing: 60, words: english });
  expect(ticks.map((t) => t.label)).toEqual(['23:30', '00:00', '00:30', '01:00']);
  expect(ticks.map((t) => t.x)).toEqual([40, 100, 160, 220]);
});

test('after the clocks go back the labels follow the new offset', () => {
  const moments = [
    moment('2026-10-25T00:30:00+01:00', -20),
    moment('2026-10-25T01:00:00+00:00', -22),
    moment('2026-10-25T01:30:00+00:00', -24),
  ];
  const ticks = clockTicks(moments, timeAxis(moments, 0, 120), { spacing: 25, words: english });
  expect(ticks.map((t) => t.label)).toEqual(['00:30', '01:00', '01:30', '01:00', '01:30']);
});

test('the second scale marks where the sun passes round altitudes, both times where it turns', () => {
  const moments = [
    moment('2026-06-20T22:00:00Z', 2.5),
    moment('2026-06-21T00:00:00Z', -2.5),
    moment('2026-06-21T02:00:00Z', 2.5),
  ];
  const ticks = altitudeTicks(moments, timeAxis(moments, 0, 400), { spacing: 39, words: english });
  expect(ticks.map((t) => t.label)).toEqual(['2°', '1°', '0°', '−1°', '−2°', '−2°', '−1°', '0°', '1°', '2°']);
  // 5 degrees in 200 units.
  expect(ticks.map((t) => Math.round(t.x))).toEqual([20, 60, 100, 140, 180, 220, 260, 300, 340, 380]);
});

test('ticks keep their distance', () => {
  const moments = [moment('2026-06-20T22:00:00Z', 20), moment('2026-06-20T23:00:00Z', -30)];
  const xs = altitudeTicks(moments, timeAxis(moments, 0, 200), { spacing: 40, words: english }).map(
    (t) => t.x,
  );
  expect(xs.length).toBeGreaterThan(2);
  for (let i = 1; i < xs.length; i++) expect(xs[i]! - xs[i - 1]!).toBeGreaterThanOrEqual(40);
});

// Borders of the twilights: docs/sources.md#sun-events.
test('a fast sun passes through every twilight in order, borders in proportion', () => {
  const bands = twilightBands([moment('2026-03-20T18:00:00Z', 2), moment('2026-03-20T20:00:00Z', -22)]);
  expect(bands.map((b) => b.name)).toEqual(['day', 'civil', 'nautical', 'astronomical', 'night']);
  const minutes = bands.map((b) => (b.fromMs - Date.parse('2026-03-20T18:00:00Z')) / 60_000);
  // 24 degrees in 120 minutes: five minutes a degree below +2.
  [0, 14.165, 40, 70, 100].forEach((want, i) => {
    expect(minutes[i]).toBeCloseTo(want, 6);
  });
  expect(
    twilightBands([moment('2026-03-20T18:00:00Z', -22), moment('2026-03-20T20:00:00Z', 2)]).map(
      (b) => b.name,
    ),
  ).toEqual(['night', 'astronomical', 'nautical', 'civil', 'day']);
});
