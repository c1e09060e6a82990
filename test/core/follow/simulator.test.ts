// The evenings that following is measured on are those that were measured themselves.

import { describe, expect, test } from 'vitest';
import { readTable } from '../../reference/csv.js';
import { passingCloud, simulateEvening } from '../../reference/evening-simulator.js';
import { seeded } from '../../reference/random.js';

// Source of the rows: test/data/README.md.
const MEASURED = readTable('light/dtu_cloud_jitter_stops.csv').filter((row) => row.sun_alt_from === '2');
const ANY_WEATHER = readTable('light/dtu_allweather_stops_vs_clear.csv').find(
  (row) => row.sun_alt_from === '3',
)!;

const EVENINGS = 1500;
const STEP_MIN = 0.25;
const MINUTES = 120;

/** Absolute changes of cloud over so many minutes, in rising order, of many evenings. */
function changes(minutes: number): Float64Array {
  const apart = minutes / STEP_MIN;
  const found: number[] = [];
  for (let seed = 0; seed < EVENINGS; seed++) {
    const cloud = passingCloud(seeded(seed), MINUTES / STEP_MIN + 1, STEP_MIN);
    for (let i = apart; i < cloud.length; i += 8) found.push(Math.abs(cloud[i]! - cloud[i - apart]!));
  }
  return Float64Array.from(found).sort();
}

describe('passing cloud', () => {
  test('five spans of time were measured', () => {
    expect(MEASURED.map((row) => Number(row.minutes_apart))).toEqual([1, 2, 5, 10, 30]);
  });

  for (const row of MEASURED) {
    // Six numbers were fitted to 25: each is met within a quarter, most within a tenth.
    test(`over ${row.minutes_apart} minutes it changes as measured, within a quarter`, () => {
      const sorted = changes(Number(row.minutes_apart));
      const share = (p: number) => sorted[Math.floor(p * sorted.length)]!;
      const spread = Math.sqrt(sorted.reduce((sum, ev) => sum + ev * ev, 0) / sorted.length);
      const simulated = [spread, share(0.5), share(0.9), share(0.95), share(0.99)];
      const measured = [row.sd, row.abs_p50, row.abs_p90, row.abs_p95, row.abs_p99].map(Number);
      for (const [i, value] of simulated.entries()) {
        expect(value / measured[i]!).toBeGreaterThan(0.75);
        expect(value / measured[i]!).toBeLessThan(1.25);
      }
    });
  }
});

test('offsets are those of any weather', () => {
  const offsets = Array.from({ length: 2000 }, (_, seed) => simulateEvening(seed, 1, 8, false).offsetEv[0]!);
  const sorted = offsets.sort((a, b) => a - b);
  for (const [key, share] of [
    ['p05', 0.05],
    ['p25', 0.25],
    ['p50', 0.5],
    ['p75', 0.75],
    ['p95', 0.95],
  ] as const) {
    // 0.15 stop is the bend's own spread.
    expect(Math.abs(sorted[Math.floor(share * sorted.length)]! - Number(ANY_WEATHER[key]))).toBeLessThan(
      0.25,
    );
  }
});

test('the same seed is the same evening, with clouds on top or without', () => {
  const clear = simulateEvening(7, 400, 8, false);
  const again = simulateEvening(7, 400, 8, false);
  const clouded = simulateEvening(7, 400, 8, true);
  expect(again).toEqual(clear);
  expect(clouded.meterEv).toEqual(clear.meterEv);
  expect(clouded.offsetEv).not.toEqual(clear.offsetEv);
  expect(simulateEvening(8, 400, 8, false).offsetEv[0]).not.toBe(clear.offsetEv[0]);
});
