import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bandAfterReading,
  bandWithLamps,
  forecastBand,
  type Known,
  METER_EV,
} from '../../../packages/core/src/light/band.js';
import { driftEv } from '../../../packages/core/src/light/drift.js';
import { CLOUD_MEMORY_MIN, PASSING_CLOUD_EV } from '../../../packages/core/src/light/offset.js';
import { readRows } from '../../../packages/tools/light-accuracy.mjs';
import { expectSmooth } from './smoothness.js';

const NATURAL = -1.6;
const known = (cloud: Known['cloud'], towardSun = false, overcastNightEv = NATURAL) => ({
  cloud,
  towardSun,
  overcastNightEv,
});

describe('with nothing known', () => {
  test('the band is the 5 to 95 % of measured minutes at each class of sun altitude (Lyngby, all weather)', () => {
    const rows = readRows('dtu_allweather_stops_vs_clear');
    expect(rows.length).toBe(9);
    for (const row of rows) {
      const middleDeg = (Number(row.sun_alt_from) + Number(row.sun_alt_to)) / 2;
      const band = forecastBand(middleDeg);
      expect(Math.abs(band.lowEv - Number(row.p05))).toBeLessThan(0.01);
      expect(Math.abs(band.highEv - Number(row.p95))).toBeLessThan(0.01);
    }
  });

  test('it is carried on below the horizon, then passes to what cloud does to the night', () => {
    for (const h of [1, -2, -5, -8]) {
      expect(forecastBand(h).lowEv).toBeCloseTo(-3, 1);
      expect(forecastBand(h).highEv).toBeCloseTo(0.5, 1);
    }
    expect(forecastBand(-12).lowEv).toBeCloseTo(-1.9, 6);
    expect(forecastBand(-20, known('unknown', false, 3.3)).highEv).toBeCloseTo(3.6, 6);
  });

  test('it has no steps', () => {
    for (const side of ['lowEv', 'highEv'] as const) {
      const edge = (h: number) => forecastBand(h)[side];
      expectSmooth(edge, { from: -30, to: 80, step: 0.01, mostPerUnit: 0.5, mostTurn: 0.01 });
    }
  });
});

test('a clear sky that was seen is known to 0.3 stop, on the sunward glow to 0.7', () => {
  expect(forecastBand(-4, known('clear'))).toEqual({ lowEv: -0.3, highEv: 0.3 });
  expect(forecastBand(-4, known('clear', true))).toEqual({ lowEv: -0.7, highEv: 0.7 });
});

test('a stated cloud narrows the band from below', () => {
  const stated = forecastBand(0, known('cloudy'));
  expect(stated.lowEv).toBeGreaterThan(forecastBand(0).lowEv);
  expect(stated.highEv).toBeGreaterThan(0);
});

describe('after a reading', () => {
  const rows = readRows('dtu_cloud_jitter_stops');

  test('the light wanders as far as 95 and 99 % of measured minutes (Lyngby)', () => {
    expect(rows.length).toBe(15);
    for (const row of rows) {
      const sunDeg = (Number(row.sun_alt_from) + Number(row.sun_alt_to)) / 2;
      const minutes = Number(row.minutes_apart);
      expect(Math.abs(driftEv(minutes, sunDeg) - Number(row.abs_p95))).toBeLessThan(0.01);
      expect(Math.abs(driftEv(minutes, sunDeg, 99) - Number(row.abs_p99))).toBeLessThan(0.01);
    }
    expect(driftEv(120, 6)).toBeCloseTo(2 * driftEv(30, 6), 9);
    expect(driftEv(0, 6)).toBe(0);
  });

  test('passing cloud as the readings are weighed by it has the measured spread', () => {
    const low = rows.filter((row) => row.sun_alt_from === '2');
    expect(low.length).toBe(5);
    for (const row of low) {
      const sd =
        PASSING_CLOUD_EV * Math.sqrt(2 * (1 - Math.exp(-Number(row.minutes_apart) / CLOUD_MEMORY_MIN)));
      expect(Math.abs(sd - Number(row.sd))).toBeLessThan(0.025);
    }
  });

  test('the band is the drift, within what the weather leaves', () => {
    const weather = { lowEv: -3, highEv: 0.5 };
    expect(bandAfterReading(weather, -1, 5, 6)).toEqual({ lowEv: -0.77, highEv: 0.77 });
    expect(bandAfterReading(weather, 0.2, 5, 6).highEv).toBeCloseTo(0.3, 9);
    expect(bandAfterReading(weather, -2.8, 5, 6).lowEv).toBeCloseTo(-0.2, 9);
    expect(bandAfterReading(weather, -1, 0, 6)).toEqual({ lowEv: -METER_EV, highEv: METER_EV });
  });

  test('it widens with the minutes', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(-4, 2),
        number(0, 200),
        number(0, 60),
        number(-20, 60),
        (offset, minutes, more, h) => {
          const soon = bandAfterReading(forecastBand(h), offset, minutes, h);
          const later = bandAfterReading(forecastBand(h), offset, minutes + more, h);
          expect(later.lowEv).toBeLessThanOrEqual(soon.lowEv);
          expect(later.highEv).toBeGreaterThanOrEqual(soon.highEv);
          expect(soon.highEv).toBeGreaterThanOrEqual(METER_EV);
        },
      ),
      { seed: 95 },
    );
  });
});

describe('where lamps give part of the light', () => {
  const weather = { lowEv: -3, highEv: 0.5 };

  // By hand: log2(0.5 · 2^-0.3 + 0.5 / 8) = -1.0935; log2(0.5 · 2^0.3 + 0.5 · 2^0.5) = 0.4035.
  test('weather moves the rest alone, and the lamps are known to 0.3 stop', () => {
    const half = bandWithLamps(weather, 0.5);
    expect(half.lowEv).toBeCloseTo(-1.0935, 4);
    expect(half.highEv).toBeCloseTo(0.4035, 4);
    const all = bandWithLamps(weather, 1);
    expect(all.lowEv).toBeCloseTo(-0.3, 9);
    expect(all.highEv).toBeCloseTo(0.3, 9);
  });

  test('without lamps it is the weather’s, and after a reading no wider than before', () => {
    expect(bandWithLamps(weather, 0)).toEqual(weather);
    const read = { lowEv: -0.2, highEv: 0.2 };
    for (const share of [0.1, 0.5, 1]) {
      expect(bandWithLamps(read, share).lowEv).toBeCloseTo(-0.2, 9);
      expect(bandWithLamps(read, share).highEv).toBeCloseTo(0.2, 9);
    }
  });
});
