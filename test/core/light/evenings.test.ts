// How often an evening's light lies within a range, against the measured minutes it is taken from.

import { describe, expect, test } from 'vitest';
import { forecastBand, NOTHING_KNOWN } from '../../../packages/core/src/light/band.js';
import { shareOfEvenings } from '../../../packages/core/src/light/evenings.js';
import { readRows } from '../../../packages/tools/light-accuracy.mjs';

const ANY = { lowEv: -2.96, highEv: 0.51 };
const FAR = 100;

describe('any weather', () => {
  // DTU climate station, Lyngby; see test/data/README.md.
  const [low] = readRows('dtu_allweather_stops_vs_clear').filter((row) => row.sun_alt_from === '1');
  const percents = ['p01', 'p02', 'p05', 'p10', 'p25', 'p50', 'p75', 'p90', 'p95', 'p98'];

  test.each(percents)('%s of the measured minutes is met', (key) => {
    const ev = Number(low![key]);
    const below =
      ev < 0
        ? 1 - shareOfEvenings({ darkEv: -ev, brightEv: FAR }, ANY, 'any-weather')
        : shareOfEvenings({ darkEv: FAR, brightEv: ev }, ANY, 'any-weather');
    expect(below).toBeCloseTo(Number(key.slice(1)) / 100, 9);
  });

  test('the band of an unknown sky holds nine evenings in ten', () => {
    for (const towardSun of [false, true]) {
      const band = forecastBand(0, { ...NOTHING_KNOWN, towardSun });
      const within = { darkEv: -band.lowEv, brightEv: band.highEv };
      expect(shareOfEvenings(within, band, 'any-weather')).toBeCloseTo(0.9, 9);
    }
  });

  test('a kit with nothing to spare holds almost none, a great one all', () => {
    expect(shareOfEvenings({ darkEv: 0, brightEv: 0 }, ANY, 'any-weather')).toBe(0);
    expect(shareOfEvenings({ darkEv: FAR, brightEv: FAR }, ANY, 'any-weather')).toBe(1);
  });
});

// Table of the normal distribution: 68.27 % within one deviation, 50 % within 0.6745, the 95 % point at 1.6449.
describe('a sky that was stated', () => {
  const band = { lowEv: -1.1, highEv: 1.1 };
  const within = (deviations: number) => {
    const ev = (1.1 * deviations) / 1.6449;
    return shareOfEvenings({ darkEv: ev, brightEv: ev }, band, 'bell');
  };

  test('spreads as a normal distribution with the band as its 5 and 95 %', () => {
    expect(within(1.6449)).toBeCloseTo(0.9, 6);
    expect(within(0.6745)).toBeCloseTo(0.5, 3);
    expect(within(1)).toBeCloseTo(0.683, 1);
    expect(within(1.2816)).toBeCloseTo(0.8, 3);
  });

  test('each side by its own width', () => {
    const lopsided = { lowEv: -2, highEv: 0.5 };
    expect(shareOfEvenings({ darkEv: 2, brightEv: 0 }, lopsided, 'bell')).toBeCloseTo(0.45, 9);
    expect(shareOfEvenings({ darkEv: 0, brightEv: 0.5 }, lopsided, 'bell')).toBeCloseTo(0.45, 9);
  });
});

test('more reserve on either side never holds fewer evenings', () => {
  for (const spread of ['any-weather', 'bell'] as const) {
    let before = -1;
    for (let ev = 0; ev < 6; ev += 0.05) {
      const share = shareOfEvenings({ darkEv: ev, brightEv: ev / 4 }, ANY, spread);
      expect(share).toBeGreaterThanOrEqual(before);
      before = share;
    }
    expect(before).toBeGreaterThan(0.9);
  }
});
