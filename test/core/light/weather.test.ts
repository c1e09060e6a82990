// How much light the weather of an evening takes, and on how many evenings: against whole measured evenings.

import { describe, expect, test } from 'vitest';
import { clearIlluminanceLx } from '../../../packages/core/src/light/sunlight.js';
import {
  readEveningsShare,
  skyOfLoss,
  weatherRange,
  wholeEveningsShare,
} from '../../../packages/core/src/light/weather.js';
import { CLOUDS } from '../../../packages/core/src/light/words.js';
import { readRows } from '../../../packages/tools/light-accuracy.mjs';
import { seeded } from '../../reference/random.js';

// DTU solar station, Lyngby, 1,943 evenings and mornings from 10° to 1° of sun altitude; see test/data/README.md.
const pairs = readRows('dtu_whole_evenings_share').map((row) => ({
  darkEv: row.dark_stops === '' ? Number.POSITIVE_INFINITY : Number(row.dark_stops),
  brightEv: row.bright_stops === '' ? Number.POSITIVE_INFINITY : Number(row.bright_stops),
  whole: Number(row.whole_evenings_held_share),
  butFiveMinutes: Number(row.evenings_held_but_5_minutes_share),
}));
const percentiles = Object.fromEntries(
  readRows('dtu_whole_evenings_percentiles').map(({ statistic, ...row }) => [statistic!, row]),
);
const { darkest_minute: darkest, brightest_minute: brightest, any_minute: minute } = percentiles;

describe('any weather', () => {
  test('the share of whole evenings lies between "no minute outside" and "five minutes outside", for every pair', () => {
    expect(pairs.length).toBe(112);
    for (const { darkEv, brightEv, whole, butFiveMinutes } of pairs) {
      const share = wholeEveningsShare(darkEv, brightEv, 'unknown');
      expect(share).toBeGreaterThan(whole - 0.005);
      expect(share).toBeLessThan(butFiveMinutes + 0.005);
    }
  });

  // A minute is easier than an evening and five minutes are forgiven above, so that percentiles of single
  // minutes are met with the room that those leave.
  test.each(['p05', 'p10', 'p25', 'p50', 'p75', 'p90'])(
    '%s of the darkest and of the brightest minutes',
    (key) => {
      const percent = Number(key.slice(1)) / 100;
      const dark = Number(darkest![key]);
      const bright = Number(brightest![key]);
      if (dark < 0) {
        const below = 1 - wholeEveningsShare(-dark, Number.POSITIVE_INFINITY, 'unknown');
        expect(Math.abs(below - percent)).toBeLessThan(0.06);
      }
      if (bright > 0) {
        const below = wholeEveningsShare(Number.POSITIVE_INFINITY, bright, 'unknown');
        expect(Math.abs(below - percent)).toBeLessThan(0.06);
      }
    },
  );

  test('nine minutes in ten lie in its range', () => {
    const { lowStops, highStops } = weatherRange('unknown', CLOUDS.clear);
    expect(lowStops).toBeCloseTo(Number(minute!.p05), 2);
    expect(highStops).toBeCloseTo(Number(minute!.p95), 2);
  });

  test('more in reserve never holds fewer evenings, and the table is followed without steps', () => {
    for (const cloud of ['unknown', 'clear', 'cloudy'] as const) {
      let before = 0;
      for (let ev = 0.01; ev < 8; ev += 0.01) {
        const share = wholeEveningsShare(ev, ev / 4, cloud);
        expect(share).toBeGreaterThanOrEqual(before);
        expect(share - before).toBeLessThan(0.02);
        before = share;
      }
      expect(before).toBeGreaterThan(0.85);
    }
    expect(wholeEveningsShare(0, 0, 'unknown')).toBe(0);
    expect(wholeEveningsShare(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 'unknown')).toBe(1);
  });
});

// Another place and other instruments: Balakrishnan 2019, Singapore, rows of any weather; none was used above.
test('other data: nine rows of Singapore in ten and more lie in the range', () => {
  const { lowStops, highStops } = weatherRange('unknown', CLOUDS.clear);
  const stops = readRows('singapore_balakrishnan_2019').map((row) =>
    Math.log2(Number(row.illuminance_lx) / clearIlluminanceLx(Number(row.sun_altitude_deg))),
  );
  expect(stops.length).toBe(44);
  expect(stops.filter((ev) => ev >= lowStops && ev <= highStops).length / 44).toBeGreaterThan(0.9);
});

describe('a sky that somebody saw', () => {
  // The same data: of 319 steady clear evenings 13 % stayed within 0.3 stop throughout, 67 % within 0.7.
  test('clear: as many whole evenings as were measured', () => {
    expect(wholeEveningsShare(0.3, 0.3, 'clear')).toBeCloseTo(0.13, 2);
    expect(wholeEveningsShare(0.7, 0.7, 'clear')).toBeCloseTo(0.67, 1);
  });

  // 78 % of their minutes lie within 0.3 stop: nine in ten need more, a normal spread 0.40 and one with longer tails more still.
  test('clear: nine minutes in ten need more than the 0.3 that hold 78 of 100', () => {
    const { lowStops, highStops } = weatherRange('clear', CLOUDS.clear);
    expect(highStops).toBeGreaterThan(0.4);
    expect(lowStops).toBe(-highStops);
    expect(highStops).toBeLessThan(0.6);
  });

  test('a word for cloud holds no fewer evenings than the same stops about the median of any weather', () => {
    const median = Number(minute!.p50);
    const any = wholeEveningsShare(1.7 - median, 1.7 + median, 'unknown');
    expect(wholeEveningsShare(1.7, 1.7, 'cloudy')).toBeCloseTo(any, 1);
  });

  // Kishida 1989: cloudy sunsets 1.0 to 2.7 stops below fine ones. Balakrishnan 2019, Singapore: rows labelled overcast.
  test('overcast: measured overcast skies lie in its range', () => {
    const { lowStops, highStops } = weatherRange('cloudy', CLOUDS.overcast);
    const measured = readRows('singapore_balakrishnan_2019')
      .filter(({ conditions }) => conditions!.includes('overcast'))
      .map((row) => Number(row.stops_vs_seidelmann));
    expect(measured.length).toBeGreaterThan(10);
    const inside = [...measured, -1, -2.7].filter((stops) => stops >= lowStops && stops <= highStops);
    expect(inside.length / (measured.length + 2)).toBeGreaterThan(0.9);
  });

  test('after a reading, limits count in widths of the range', () => {
    expect(readEveningsShare(1, 1)).toBeCloseTo(wholeEveningsShare(1.7, 1.7, 'cloudy'), 9);
    expect(readEveningsShare(0, 5)).toBe(0);
    expect(readEveningsShare(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY)).toBe(1);
  });
});

describe('the sky that a loss implies', () => {
  test('passes through the words for cloud', () => {
    for (const cloud of Object.values(CLOUDS)) {
      expect(skyOfLoss(cloud.stops, CLOUDS.clear).cover).toBeCloseTo(cloud.cover, 9);
    }
    expect(skyOfLoss(0.5, CLOUDS.clear)).toEqual({ stops: 0.5, cover: 0 });
    expect(skyOfLoss(-5, CLOUDS.clear).cover).toBe(1);
  });

  test('and through what was stated, covering more the more it takes', () => {
    const random = seeded(20261);
    for (let i = 0; i < 300; i++) {
      const stated = { stops: -random.between(0, 4), cover: random.between(0, 1) };
      expect(skyOfLoss(stated.stops, stated).cover).toBeCloseTo(stated.cover, 9);
      const [a, b] = [random.between(-6, 1), random.between(-6, 1)].sort((x, y) => x - y);
      expect(skyOfLoss(a!, stated).cover).toBeGreaterThanOrEqual(skyOfLoss(b!, stated).cover);
    }
  });
});
