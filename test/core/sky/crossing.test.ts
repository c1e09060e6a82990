import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crossings, rangeOf } from '../../../packages/core/src/sky/crossing.js';
import { skyEvents, sunPosition } from '../../../packages/core/src/sky/sun.js';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;

describe('crossings', () => {
  test('a sine of one day is met where the arcsine says, however near its top the level lies', () => {
    let grazed = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }), // where in the day the sine starts
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.oneof(
          fc.double({ min: -0.99, max: 0.99, noNaN: true }),
          fc.constantFrom(-1 + 1e-9, -1 + 1e-7, -1 + 1e-5, 1 - 1e-5, 1 - 1e-7, 1 - 1e-9),
        ),
        (shift, amplitudeDeg, share) => {
          const curve = (ms: number) => amplitudeDeg * Math.sin(2 * Math.PI * (ms / DAY_MS + shift));
          // A day that starts away from both passages: above zero they lie from 0 to 0.5, below from 0.5 to 1.
          const startTurn = share > 0 ? -0.1 : 0.4;
          const startMs = Math.round((startTurn - shift) * DAY_MS);
          const riseTurn = Math.asin(share) / (2 * Math.PI) + (share > 0 ? 0 : 1);
          const rise = (riseTurn - shift) * DAY_MS;
          const fall = (0.5 - Math.asin(share) / (2 * Math.PI) - shift) * DAY_MS;
          const found = crossings(curve, amplitudeDeg * share, startMs, startMs + DAY_MS);
          expect(found).toHaveLength(2);
          // Near the top a rounding of the last bit moves the crossing itself by some milliseconds.
          const toleranceMs = 1.1 + 1e-9 / Math.sqrt(1 - share * share) ** 2;
          expect(Math.abs(found.find(({ rising }) => rising)!.atMs - rise)).toBeLessThan(toleranceMs);
          expect(Math.abs(found.find(({ rising }) => !rising)!.atMs - fall)).toBeLessThan(toleranceMs);
          if (Math.abs(share) > 0.999) grazed++;
        },
      ),
      { seed: 12, numRuns: 1000 },
    );
    expect(grazed).toBeGreaterThan(100);
  });

  test('a peaked curve, like the noon sun overhead, is met on both sides of its peak', () => {
    for (const peakMs of [0.5 * DAY_MS, 0.5 * DAY_MS + 123_456, 0.5 * DAY_MS + 300_000]) {
      const curve = (ms: number) => 90 - Math.abs(ms - peakMs) / 240_000;
      // 0.01 degree under the peak is 2.4 s before and after it.
      const found = crossings(curve, 89.99, 0, DAY_MS);
      expect(found.map(({ rising }) => rising)).toEqual([true, false]);
      expect(Math.abs(found[0]!.atMs - (peakMs - 2400))).toBeLessThanOrEqual(1);
      expect(Math.abs(found[1]!.atMs - (peakMs + 2400))).toBeLessThanOrEqual(1);
    }
  });

  test('a peak in the first or last minutes of a stretch is not lost', () => {
    const curve = (ms: number) => 90 - Math.abs(ms - HOUR_MS) / 240_000;
    const around = [HOUR_MS - 2400, HOUR_MS + 2400];
    for (const [fromMs, toMs] of [
      [HOUR_MS - 180_000, HOUR_MS - 180_000 + 12 * 600_000],
      [HOUR_MS + 180_000 - 12 * 600_000, HOUR_MS + 180_000],
    ] as const) {
      const found = crossings(curve, 89.99, fromMs, toMs);
      expect(found.map(({ atMs }) => Math.round(atMs / 10) * 10)).toEqual(around);
    }
  });

  test('a level that the curve misses by a hair is not crossed', () => {
    const curve = (ms: number) => 10 * Math.sin((2 * Math.PI * ms) / DAY_MS);
    expect(crossings(curve, 10.000001, 0, DAY_MS)).toEqual([]);
    expect(crossings(curve, -10.000001, 0, DAY_MS)).toEqual([]);
  });

  test('a stretch holds its first instant and not its last, so neighbours share nothing and lose nothing', () => {
    const curve = (ms: number) => (ms - 5 * HOUR_MS) / HOUR_MS;
    expect(crossings(curve, 0, 0, 5 * HOUR_MS)).toEqual([]);
    expect(crossings(curve, 0, 5 * HOUR_MS, 9 * HOUR_MS)).toEqual([{ atMs: 5 * HOUR_MS, rising: true }]);
    expect(crossings(curve, 0, 0, 5 * HOUR_MS + 1)).toEqual([{ atMs: 5 * HOUR_MS, rising: true }]);
  });

  test('a stretch that runs backwards is refused', () => {
    expect(() => crossings(Math.sin, 0, 5, 3)).toThrow(
      new RangeError('toMs must not come before fromMs, got 5 to 3'),
    );
    expect(() => skyEvents(0, -DAY_MS, { latitudeDeg: 0, longitudeDeg: 0 })).toThrow(/must not come before/);
    expect(() => skyEvents(Number.NaN, 0, { latitudeDeg: 0, longitudeDeg: 0 })).toThrow(
      /fromMs must be finite/,
    );
  });

  test('stretches cut anywhere give together what the whole gives', () => {
    const curve = (ms: number) =>
      sunPosition(Date.UTC(2025, 5, 20) + ms, { latitudeDeg: 55.9, longitudeDeg: -3.2 }).altitudeDeg;
    const whole = crossings(curve, -10.6, 0, 3 * DAY_MS);
    expect(whole).toHaveLength(6);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3 * DAY_MS - 1 }), (cutMs) => {
        const parts = [...crossings(curve, -10.6, 0, cutMs), ...crossings(curve, -10.6, cutMs, 3 * DAY_MS)];
        // The halving starts elsewhere, and the altitude's last bit may move a crossing by a few milliseconds.
        expect(parts.map(({ rising }) => rising)).toEqual(whole.map(({ rising }) => rising));
        parts.forEach(({ atMs }, i) => {
          expect(Math.abs(atMs - whole[i]!.atMs)).toBeLessThanOrEqual(10);
        });
      }),
      { seed: 13, numRuns: 200 },
    );
  });
});

describe('twilight that only just happens', () => {
  // Reference: the sun's altitude once a second over the night, no cleverness.
  const startMs = Date.UTC(2025, 5, 20, 12);
  const endMs = startMs + DAY_MS;
  function everySecond(latitudeDeg: number) {
    const altitude = (ms: number) =>
      sunPosition(ms, { latitudeDeg: latitudeDeg, longitudeDeg: 0 }).altitudeDeg;
    const fallsMs: number[] = [];
    const risesMs: number[] = [];
    let lowest = Number.POSITIVE_INFINITY;
    let before = altitude(startMs);
    for (let ms = startMs + 1000; ms < endMs; ms += 1000) {
      const here = altitude(ms);
      if (before >= -12 && here < -12) fallsMs.push(ms);
      if (before < -12 && here >= -12) risesMs.push(ms);
      lowest = Math.min(lowest, here);
      before = here;
    }
    return { fallsMs, risesMs, lowest };
  }

  // The sun's lowest altitude is 12 degrees below the horizon at latitude 54.56391: at 54.5639 the twilight's night
  // lasts 23 s.
  test.each([54.5625, 54.5638, 54.5639, 54.564, 54.57])(
    'nautical dusk and dawn at latitude %d on the night of the solstice',
    (latitudeDeg) => {
      const { fallsMs, risesMs, lowest } = everySecond(latitudeDeg);
      const { events, missing } = skyEvents(startMs, endMs, { latitudeDeg, longitudeDeg: 0 });
      for (const [name, expected] of [
        ['nautical-dusk', fallsMs],
        ['nautical-dawn', risesMs],
      ] as const) {
        const found = events.filter((event) => event.name === name);
        expect(found).toHaveLength(expected.length);
        expect(missing.some((event) => event.name === name)).toBe(expected.length === 0);
        expected.forEach((ms, i) => {
          expect(ms - found[i]!.atMs).toBeGreaterThanOrEqual(0);
          expect(ms - found[i]!.atMs).toBeLessThan(1000);
        });
      }
      expect(Math.abs(lowest + 12)).toBeLessThan(0.02);
    },
  );

  test('the latitudes above lie on both sides of the edge', () => {
    const counts = [54.5625, 54.5638, 54.5639, 54.564, 54.57].map((lat) => everySecond(lat).fallsMs.length);
    expect(new Set(counts)).toEqual(new Set([0, 1]));
  });

  test('an altitude that falls short by less than a tenth says so', () => {
    const { lowest } = everySecond(54.57);
    expect(lowest).toBeGreaterThan(-12.05);
    const { missing } = skyEvents(startMs, endMs, { latitudeDeg: 54.57, longitudeDeg: 0 });
    const { why } = missing.find(({ name }) => name === 'nautical-dusk')!;
    expect(why).toMatch(/^the sun reaches only -11\.99°$/);
  });
});

test('the range of a stretch knows nothing of a turn just before or just after it', () => {
  // Lowest at 0 h, highest at 12 h. Samples lie up to twenty minutes outside the stretch.
  const curve = (ms: number) => -Math.cos((2 * Math.PI * ms) / DAY_MS);
  const minute = 60_000;
  const after = rangeOf(curve, 5 * minute, 6 * HOUR_MS);
  expect(after.low).toBe(curve(5 * minute));
  expect(after.high).toBeCloseTo(0, 12);
  const before = rangeOf(curve, 6 * HOUR_MS, 12 * HOUR_MS - 5 * minute);
  expect(before.high).toBe(curve(12 * HOUR_MS - 5 * minute));
  const across = rangeOf(curve, -HOUR_MS, 13 * HOUR_MS);
  expect([across.low, across.high]).toEqual([expect.closeTo(-1, 9), expect.closeTo(1, 9)]);
});
