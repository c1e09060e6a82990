import { describe, expect, test } from 'vitest';
import { horizonAzimuthDeg, type SunPass, sunPass, sunPosition } from '../../../packages/core/src/sky/sun.js';
import { readTable } from '../../reference/csv.js';
import { seeded } from '../../reference/random.js';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
const days = readTable('sun/sun_day_summary.csv');

function dayOf(id: string) {
  const row = days.find((day) => day.id === id)!;
  return {
    row,
    startMs: Date.parse(row.local_midnight_start_utc!),
    endMs: Date.parse(row.local_midnight_end_utc!),
    place: { latitudeDeg: Number(row.lat), longitudeDeg: Number(row.lon) },
  };
}

function passOn(id: string, direction: 'dusk' | 'dawn', fromDeg: number, toDeg: number): SunPass {
  const { startMs, endMs, place } = dayOf(id);
  return sunPass(direction, fromDeg, toDeg, startMs, endMs, place);
}

describe('sunPass', () => {
  // Source: sun_events.csv, Swiss Ephemeris DE431.
  const events = readTable('sun/sun_events.csv').filter((row) => row.status === 'ok');
  const eventMs = (id: string, event: string) =>
    Number(events.find((row) => row.id === id && row.event === event)!.utc_swisseph) * 1000;

  test.each(['P01', 'P04', 'P05', 'P11', 'P17', 'P18'])('%s: civil to nautical, both ways', (id) => {
    // The slowest of these suns, at Tromso, takes 15 s for 0.02 degree.
    for (const [direction, from, to, first, last] of [
      ['dusk', -6, -12, 'civil_dusk', 'nautical_dusk'],
      ['dawn', -12, -6, 'nautical_dawn', 'civil_dawn'],
    ] as const) {
      const pass = passOn(id, direction, from, to);
      if (pass.kind !== 'ok') throw new Error(pass.why);
      expect(Math.abs(pass.startMs - eventMs(id, first))).toBeLessThan(15_000);
      expect(Math.abs(pass.endMs - eventMs(id, last))).toBeLessThan(15_000);
    }
  });

  test('a dusk that begins before midnight may end after it', () => {
    // Anchorage: sunset 23:42 local, lowest -5.35 at 02:01 (sun_day_summary.csv).
    const pass = passOn('P13', 'dusk', 6, -5);
    if (pass.kind !== 'ok') throw new Error(pass.why);
    const { startMs, endMs } = dayOf('P13');
    expect(pass.startMs).toBeGreaterThan(startMs);
    expect(pass.startMs).toBeLessThan(eventMs('P13', 'sunset'));
    expect(pass.endMs).toBeGreaterThan(endMs);
    expect(pass.endMs).toBeLessThan(Date.parse(dayOf('P13').row.lower_transit_after_utc!));
  });

  // Source: sun_day_summary.csv: how high and how low the sun goes.
  test.each([
    ['P08', 'dusk', 6, -12, 57.4832, -10.6135, 'the sun falls only from 57.5° to -10.6°'],
    ['P08', 'dawn', -12, 6, 57.4832, -10.6108, 'the sun rises only from -10.6° to 57.5°'],
    ['P06', 'dusk', 6, -12, 43.787, 3.0827, 'the sun falls only from 43.8° to 3.1°'],
    ['P06', 'dusk', 50, 10, 43.787, 3.0827, 'the sun falls only from 43.8° to 3.1°'],
    ['P18', 'dusk', 6, -12, -3.0898, -43.7904, 'the sun falls only from -3.1° to -43.8°'],
    ['P18', 'dawn', -12, 6, -3.0898, -43.789, 'the sun rises only from -43.8° to -3.1°'],
  ] as const)(
    '%s, %s from %d to %d: none, and says what is reached',
    (id, direction, from, to, high, low, why) => {
      const pass = passOn(id, direction, from, to);
      if (pass.kind === 'ok') throw new Error('unexpected pass');
      expect(Math.abs(pass.reachedHighDeg - high)).toBeLessThan(0.01);
      expect(Math.abs(pass.reachedLowDeg - low)).toBeLessThan(0.01);
      expect(pass.why).toBe(why);
      // What it says would work, works.
      const [highest, lowest] = [pass.reachedHighDeg - 0.001, pass.reachedLowDeg + 0.001];
      const cured =
        direction === 'dusk'
          ? passOn(id, direction, highest, lowest)
          : passOn(id, direction, lowest, highest);
      // A rise that begins the evening before has its lowest point on the day before.
      if (id !== 'P18' || direction === 'dusk') expect(cured.kind).toBe('ok');
    },
  );

  /** Reference: the altitude minute by minute, no cleverness. */
  function byTheMinute(
    dusk: boolean,
    from: number,
    to: number,
    startMs: number,
    altitude: (ms: number) => number,
  ) {
    const height = (ms: number) => (dusk ? altitude(ms) : -altitude(ms));
    const [start, end] = dusk ? [from, to] : [-from, -to];
    for (let ms = startMs; ms < startMs + DAY_MS; ms += MINUTE_MS) {
      if (!(height(ms) >= start && height(ms + MINUTE_MS) < start)) continue;
      let fallMs = ms + MINUTE_MS;
      while (height(fallMs + MINUTE_MS) < height(fallMs) && height(fallMs) >= end) fallMs += MINUTE_MS;
      if (height(fallMs) < end) return { startMs: ms, endMs: fallMs - MINUTE_MS };
    }
    return undefined;
  }

  test('agrees with a search minute by minute, at any latitude but the last half degree', () => {
    const random = seeded(31);
    let ok = 0;
    let none = 0;
    for (let i = 0; i < 400; i++) {
      const place = { latitudeDeg: random.between(-89.5, 89.5), longitudeDeg: random.between(-180, 180) };
      const startMs = Math.floor(random.between(Date.UTC(1950, 0), Date.UTC(2050, 0)));
      const high = random.between(-10, 20);
      const low = high - random.between(1, 20);
      const dusk = random.chance(0.5);
      const [from, to] = dusk ? [high, low] : [low, high];
      const altitude = (ms: number) => sunPosition(ms, place).altitudeDeg;
      const pass = sunPass(dusk ? 'dusk' : 'dawn', from, to, startMs, startMs + DAY_MS, place);
      const expected = byTheMinute(dusk, from, to, startMs, altitude);
      expect(pass.kind, JSON.stringify({ place, startMs, from, to })).toBe(expected ? 'ok' : 'none');
      if (pass.kind === 'ok') {
        ok++;
        expect(pass.startMs - expected!.startMs).toBeGreaterThanOrEqual(0);
        expect(pass.startMs - expected!.startMs).toBeLessThanOrEqual(MINUTE_MS);
        expect(pass.endMs - expected!.endMs).toBeGreaterThanOrEqual(0);
        expect(pass.endMs - expected!.endMs).toBeLessThanOrEqual(MINUTE_MS);
        expect(altitude(pass.startMs)).toBeCloseTo(from, 4);
        expect(altitude(pass.endMs)).toBeCloseTo(to, 4);
      } else {
        none++;
        expect(pass.reachedHighDeg).toBeGreaterThan(pass.reachedLowDeg);
        expect(pass.why).toMatch(/^the sun .*(falls|rises)/);
      }
    }
    expect(ok).toBeGreaterThan(100);
    expect(none).toBeGreaterThan(50);
  });

  test('a start that another day has is not this day’s', () => {
    // Greenwich, 30 March 2025, sunset 18:30:13 UTC (sun_events.csv): the stretch ends ten minutes before it.
    const place = { latitudeDeg: 51.4769, longitudeDeg: -0.0005 };
    const endMs = Date.parse('2025-03-30T18:20:00Z');
    const pass = sunPass('dusk', -0.8333, -6, endMs - 10 * 3_600_000, endMs, place);
    expect(pass).toMatchObject({
      kind: 'none',
      why: expect.stringMatching(/falls through -0.8° .*not on this one/),
    });
    expect(sunPass('dusk', -0.8333, -6, endMs, endMs + DAY_MS, place).kind).toBe('ok');
  });

  test('at a pole the sun of spring never falls', () => {
    const north = { latitudeDeg: 90, longitudeDeg: 0 };
    const april = Date.UTC(2025, 3, 20);
    expect(sunPass('dusk', 6, -6, april, april + DAY_MS, north)).toMatchObject({
      kind: 'none',
      why: expect.stringMatching(/^the sun, at 11\.\d°, never falls on this day$/),
    });
  });

  test.each([
    ['dusk', -12, 6, 'toAltitudeDeg must be below fromAltitudeDeg at dusk, got -12 to 6'],
    ['dawn', 6, -12, 'toAltitudeDeg must be above fromAltitudeDeg at dawn, got 6 to -12'],
    ['dusk', 6, 6, 'toAltitudeDeg must be below fromAltitudeDeg at dusk, got 6 to 6'],
    ['dusk', 91, 6, 'fromAltitudeDeg must be from -90 to 90, got 91'],
    ['dusk', 6, Number.NaN, 'toAltitudeDeg must be from -90 to 90, got NaN'],
  ] as const)('refuses %s from %d to %d', (direction, from, to, message) => {
    expect(() => passOn('P01', direction, from, to)).toThrow(new RangeError(message));
  });

  test('refuses a latitude off the Earth', () => {
    expect(() => sunPass('dusk', 6, -12, 0, DAY_MS, { latitudeDeg: 95, longitudeDeg: 0 })).toThrow(
      /latitudeDeg must be from -90 to 90, got 95/,
    );
  });
});

describe('horizonAzimuthDeg', () => {
  const at = (id: string, direction: 'dusk' | 'dawn') => {
    const { startMs, endMs, place } = dayOf(id);
    return horizonAzimuthDeg(direction, startMs, endMs, place);
  };

  // Source: sun_moon_track.csv, airless altitude and azimuth every ten minutes, read off at altitude 0.
  test.each(['P01', 'P04', 'P05', 'P08', 'P11', 'P17'])('%s at dusk', (id) => {
    const track = readTable('sun/sun_moon_track.csv').filter((row) => row.id === id);
    const altitude = (i: number) => Number(track[i]!.sun_alt_airless_deg);
    const azimuth = (i: number) => Number(track[i]!.sun_az_deg);
    const i = track.findIndex((_, j) => j > 0 && altitude(j - 1) >= 0 && altitude(j) < 0);
    expect(i).toBeGreaterThan(0);
    const share = altitude(i - 1) / (altitude(i - 1) - altitude(i));
    const expected = azimuth(i - 1) + share * (azimuth(i) - azimuth(i - 1));
    expect(Math.abs(at(id, 'dusk') - expected)).toBeLessThan(0.02);
  });

  // At the equinox the sun rises due east and sets due west, wherever the place (here 10 and 15 h from it).
  test('east and west at the equinox', () => {
    expect(Math.abs(at('P04', 'dawn') - 90)).toBeLessThan(0.1);
    expect(Math.abs(at('P04', 'dusk') - 270)).toBeLessThan(0.4);
  });

  test('where the sun does not cross the horizon, toward the end of its way that comes nearest', () => {
    // Tromso: the midnight sun stands in the north, the polar night's noon glow in the south.
    for (const direction of ['dusk', 'dawn'] as const) {
      const midnight = at('P06', direction);
      expect(Math.min(midnight, 360 - midnight)).toBeLessThan(0.02);
      expect(Math.abs(at('P18', direction) - 180)).toBeLessThan(0.02);
    }
  });

  test('a pole has one too', () => {
    const azimuth = horizonAzimuthDeg('dusk', Date.UTC(2025, 3, 20), Date.UTC(2025, 3, 21), {
      latitudeDeg: 90,
      longitudeDeg: 0,
    });
    expect(azimuth).toBeGreaterThanOrEqual(0);
    expect(azimuth).toBeLessThanOrEqual(360);
  });
});
