// Sun and moon against published and independently computed tables. Where each comes from stands in its source
// column and in test/data/README.md.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sunAndMoon, sunPosition } from '../../../packages/core/src/sky/sun.js';
import { readTable } from '../../reference/csv.js';

/** Difference of two directions round the circle, degrees, 0 to 180. */
function apart(aDeg: number, bDeg: number): number {
  const d = Math.abs(aDeg - bDeg) % 360;
  return Math.min(d, 360 - d);
}

const cosDeg = (deg: number) => Math.cos((deg * Math.PI) / 180);

describe('position', () => {
  const track = readTable('sun/sun_moon_track.csv').map((row) => ({
    row,
    sky: sunAndMoon(Date.parse(row.utc!), { latitudeDeg: Number(row.lat), longitudeDeg: Number(row.lon) }),
  }));

  test('the track table has sun and moon above and below the horizon', () => {
    expect(track).toHaveLength(198);
    expect(track.filter(({ row }) => Number(row.sun_alt_airless_deg) > 0).length).toBeGreaterThan(50);
    expect(track.filter(({ row }) => Number(row.sun_alt_airless_deg) < 0).length).toBeGreaterThan(50);
    expect(track.filter(({ row }) => Number(row.moon_alt_airless_deg) > 0).length).toBeGreaterThan(50);
    expect(track.filter(({ row }) => Number(row.moon_alt_airless_deg) < 0).length).toBeGreaterThan(50);
  });

  // Source: sun_moon_track.csv, Swiss Ephemeris DE431, three engines within 4".
  test.each(track)('sun and moon at $row.place, $row.utc', ({ row, sky }) => {
    expect(Math.abs(sky.sunAltitudeDeg - Number(row.sun_alt_airless_deg))).toBeLessThan(0.01);
    expect(apart(sky.sunAzimuthDeg, Number(row.sun_az_deg)) * cosDeg(sky.sunAltitudeDeg)).toBeLessThan(0.01);
    expect(Math.abs(sky.moonAltitudeDeg - Number(row.moon_alt_airless_deg))).toBeLessThan(0.005);
    expect(apart(sky.moonAzimuthDeg, Number(row.moon_az_deg)) * cosDeg(sky.moonAltitudeDeg)).toBeLessThan(
      0.005,
    );
    // The table's own fraction is rounded to 0.0001.
    expect(Math.abs(sky.moonLitFraction - Number(row.moon_illum_topocentric))).toBeLessThan(0.0003);
    // The table's phase angle is seen from the Earth's centre: parallax moves ours by a degree at most.
    expect(Math.abs(sky.moonPhaseAngleDeg - Number(row.moon_phase_angle_deg))).toBeLessThan(1);
  });

  test('the worked example of the solar position algorithm (NREL/TP-560-34302)', () => {
    const value = Object.fromEntries(readTable('sun/spa_published.csv').map((r) => [r.quantity, r.value]));
    const { altitudeDeg } = sunPosition(Date.parse('2003-10-17T19:30:30Z'), {
      latitudeDeg: Number(value.latitude),
      longitudeDeg: Number(value.longitude),
    });
    // Its zenith angle is apparent: take its own refraction out again.
    const airless = 90 - Number(value.zenith) - Number(value['delta e refraction']);
    expect(Math.abs(altitudeDeg - airless)).toBeLessThan(0.01);
  });

  // Source: sun_day_summary.csv, solar noon and lower transit with their airless altitudes.
  test.each(readTable('sun/sun_day_summary.csv'))('noon and midnight at $place, $local_date', (row) => {
    const at = (utc: string) =>
      sunPosition(Date.parse(utc), { latitudeDeg: Number(row.lat), longitudeDeg: Number(row.lon) });
    expect(
      Math.abs(at(row.solar_noon_utc!).altitudeDeg - Number(row.noon_altitude_airless_deg)),
    ).toBeLessThan(0.01);
    expect(
      Math.abs(at(row.lower_transit_before_utc!).altitudeDeg - Number(row.altitude_there_deg)),
    ).toBeLessThan(0.01);
    expect(
      Math.abs(at(row.lower_transit_after_utc!).altitudeDeg - Number(row.altitude_after_deg)),
    ).toBeLessThan(0.01);
    // Transit times are to the second: 0.0042 degree of hour angle, more of azimuth near the zenith.
    const noon = at(row.solar_noon_utc!);
    expect(apart(noon.azimuthDeg, Number(row.noon_azimuth_deg)) * cosDeg(noon.altitudeDeg)).toBeLessThan(
      0.01,
    );
  });

  // Source: usno_moon_phases.csv, U.S. Naval Observatory, to the minute. The moon moves 0.5 degree an hour.
  test.each(readTable('sun/usno_moon_phases.csv'))('$phase of $usno_ut_minute', (row) => {
    const sky = sunAndMoon(Date.parse(row.usno_ut_minute!.replace('Z', ':00Z')), {
      latitudeDeg: 0,
      longitudeDeg: 0,
    });
    // Apart by the moon's ecliptic latitude (5.3 degrees) and parallax (1 degree) at most.
    if (row.phase === 'Full Moon') expect(sky.moonPhaseAngleDeg).toBeLessThan(6.4);
    else expect(sky.moonPhaseAngleDeg).toBeGreaterThan(180 - 6.4);
  });

  test('refraction leaves no step: the true altitude falls evenly through the horizon', () => {
    const start = Date.parse('2025-03-20T17:30:00Z');
    const altitudes = Array.from(
      { length: 120 },
      (_, i) => sunPosition(start + i * 30_000, { latitudeDeg: 0, longitudeDeg: 0 }).altitudeDeg,
    );
    expect(altitudes[0]).toBeGreaterThan(5);
    expect(altitudes.at(-1)).toBeLessThan(-5);
    // On the equator at the equinox the sun drops straight down, 15 degrees an hour: 0.125 in 30 s.
    for (let i = 1; i < altitudes.length; i++) {
      expect(Math.abs(altitudes[i - 1]! - altitudes[i]! - 0.125)).toBeLessThan(0.0005);
    }
  });

  test('sunPosition and sunAndMoon agree on the sun', () => {
    const place = [Date.parse('2026-11-25T16:03:20Z'), { latitudeDeg: 48.1, longitudeDeg: 11.6 }] as const;
    const sky = sunAndMoon(...place);
    expect(sunPosition(...place)).toEqual({ altitudeDeg: sky.sunAltitudeDeg, azimuthDeg: sky.sunAzimuthDeg });
  });

  test('every place on Earth has a position in range, the poles and the date line too', () => {
    const edge = (...values: number[]) => fc.constantFrom(...values);
    fc.assert(
      fc.property(
        fc.integer({ min: Date.UTC(1950, 0), max: Date.UTC(2050, 0) }),
        fc.oneof(fc.double({ min: -90, max: 90, noNaN: true }), edge(-90, -89.9999, 0, 89.9999, 90)),
        fc.oneof(fc.double({ min: -180, max: 180, noNaN: true }), edge(-180, 0, 180)),
        (atMs, latitudeDeg, longitudeDeg) => {
          const sky = sunAndMoon(atMs, { latitudeDeg, longitudeDeg });
          for (const altitude of [sky.sunAltitudeDeg, sky.moonAltitudeDeg]) {
            expect(Math.abs(altitude)).toBeLessThanOrEqual(90);
          }
          for (const azimuth of [sky.sunAzimuthDeg, sky.moonAzimuthDeg]) {
            expect(azimuth).toBeGreaterThanOrEqual(0);
            expect(azimuth).toBeLessThanOrEqual(360);
          }
          // Perigee and apogee of the century: 356,375 and 406,720 km (Meeus, Astronomical Algorithms, ch. 50).
          expect(sky.moonDistanceKm).toBeGreaterThan(356_350);
          expect(sky.moonDistanceKm).toBeLessThan(406_745);
          expect(sky.moonLitFraction).toBeCloseTo(Math.cos((sky.moonPhaseAngleDeg * Math.PI) / 360) ** 2, 9);
        },
      ),
      { seed: 11, numRuns: 500 },
    );
  });

  test.each([
    [Number.NaN, 0, 0, /atMs must be finite, got NaN/],
    [0, 95, 0, /latitudeDeg must be from -90 to 90, got 95/],
    [0, Number.NaN, 0, /latitudeDeg must be from -90 to 90, got NaN/],
    [0, 0, 180.5, /longitudeDeg must be from -180 to 180, got 180.5/],
  ])('refuses %d, %d, %d', (atMs, latitudeDeg, longitudeDeg, message) => {
    expect(() => sunPosition(atMs, { latitudeDeg, longitudeDeg })).toThrow(message);
    expect(() => sunAndMoon(atMs, { latitudeDeg, longitudeDeg })).toThrow(message);
  });

  test('refuses a latitude where the place belongs', () => {
    for (const of of [sunPosition, sunAndMoon] as readonly ((atMs: number, place: never) => unknown)[]) {
      expect(() => of(0, 52 as never)).toThrow(
        /place must be a group with latitudeDeg, longitudeDeg, got 52/,
      );
    }
  });
});
