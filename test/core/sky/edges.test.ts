// Numbers of the sky that no almanac table holds closely enough: each by hand, or a published value.

import { getPosition } from 'suncalc';
import { expect, test, vi } from 'vitest';
import { clocksNear } from '../../../packages/core/src/sky/border.js';
import { zoneOf } from '../../../packages/core/src/sky/clock.js';
import { sampleCurve } from '../../../packages/core/src/sky/crossing.js';
import { eclipseAt } from '../../../packages/core/src/sky/eclipse.js';
import { skyEvents, sunAndMoon, sunPosition } from '../../../packages/core/src/sky/sun.js';
import { passInDay } from '../../../packages/core/src/sky/sun-pass.js';

test('a border of zones is near within 25 km: 0.2248° of latitude at 111.2 km a degree', () => {
  const near = (borderDeg: number) => {
    const zoneAt = (north: number) => (north > borderDeg ? 'Europe/Madrid' : 'Europe/Lisbon');
    const place = { latitudeDeg: 0, longitudeDeg: 0, timeZone: 'Europe/Lisbon' };
    return clocksNear(place, '2026-09-18', zoneAt).others.length;
  };
  expect(near(0.22)).toBe(1);
  expect(near(0.23)).toBe(0);
});

test.each([
  // 959.63" at one astronomical unit (Auwers; IAU), over the earth's distance: 0.98331 of it on 3 January 2026, 1.01664 on
  // 6 July (Meeus, Astronomical Algorithms, chapter 38, to five digits).
  { at: '2026-01-03T17:00:00Z', sunRadiusDeg: 959.63 / 3600 / 0.98331 },
  { at: '2026-07-06T17:00:00Z', sunRadiusDeg: 959.63 / 3600 / 1.01664 },
])('the sun is as large as it is near, $at', ({ at, sunRadiusDeg }) => {
  // Both discs on one another, on the horizon: covered is (sun + moon) / (2 sun). The moon's radius is asin(1737.4 / 384,400).
  const both = { sunAltitudeDeg: 0, moonAltitudeDeg: 0, sunAzimuthDeg: 90, moonAzimuthDeg: 90 };
  const sky = { ...both, moonPhaseAngleDeg: 180, moonLitFraction: 0, moonDistanceKm: 384_400 };
  const moonRadiusDeg = (Math.asin(1737.4 / 384_400) * 180) / Math.PI;
  const { magnitude } = eclipseAt(sky, Date.parse(at))!;
  expect(Math.abs(moonRadiusDeg / (2 * magnitude - 1) / sunRadiusDeg - 1)).toBeLessThan(0.0006);
});

const RAD = Math.PI / 180;

test.each(['1987-04-10T07:00:00Z', '2001-11-02T15:00:00Z', '2026-09-18T16:00:00Z'])(
  'the sun is that of suncalc, turned by the main term of the nutation and lowered by its parallax: %s',
  (at) => {
    const [latitudeDeg, longitudeDeg] = [12, 5];
    const atMs = Date.parse(at);
    // Meeus, Astronomical Algorithms, chapter 22: -17.20" sin of the moon's node, times the cosine of the obliquity.
    const centuries = (atMs - Date.parse('2000-01-01T12:00:00Z')) / 86_400_000 / 36_525;
    const node = (125.04452 - 1934.136261 * centuries) * RAD;
    const shiftDeg = ((-17.2 * Math.sin(node)) / 3600) * Math.cos(23.4393 * RAD);
    const bare = getPosition(new Date(atMs), latitudeDeg, longitudeDeg + shiftDeg);
    const { altitudeDeg, azimuthDeg } = sunPosition(atMs, { latitudeDeg, longitudeDeg });
    expect(Math.abs(azimuthDeg - bare.azimuth)).toBeLessThan(2e-5);
    // 8.794" on the horizon (IAU 1976); suncalc's altitude has refraction in it (Saemundsson 1986, as there).
    const centred = altitudeDeg + (8.794 / 3600) * Math.cos(altitudeDeg * RAD);
    const h = centred * RAD;
    const refractionDeg = 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179)) / RAD;
    expect(Math.abs(centred + refractionDeg - bare.altitude)).toBeLessThan(5e-5);
  },
);

test('the phase of the moon is an angle of its triangle with the eye and the sun, 149,597,870.7 km away (IAU 2012)', () => {
  // A first quarter: seen at right angles to the sun, the moon is lit to less than a half by the tangent of that triangle.
  const sky = sunAndMoon(Date.parse('2026-09-18T20:00:00Z'), { latitudeDeg: 0, longitudeDeg: -40 });
  const [sun, moon] = [sky.sunAltitudeDeg * RAD, sky.moonAltitudeDeg * RAD];
  const apart = Math.acos(
    Math.sin(sun) * Math.sin(moon) +
      Math.cos(sun) * Math.cos(moon) * Math.cos((sky.sunAzimuthDeg - sky.moonAzimuthDeg) * RAD),
  );
  // The eye, the Earth's centre (6378.14 km off, WGS 84) and the moon are another.
  const moonKm =
    Math.sqrt(sky.moonDistanceKm ** 2 - (6378.14 * Math.cos(moon)) ** 2) - 6378.14 * Math.sin(moon);
  const sunKm = 149_597_870.7;
  const betweenKm = Math.sqrt(sunKm ** 2 + moonKm ** 2 - 2 * sunKm * moonKm * Math.cos(apart));
  const phaseDeg = Math.acos((moonKm ** 2 + betweenKm ** 2 - sunKm ** 2) / (2 * moonKm * betweenKm)) / RAD;
  expect(Math.abs(sky.moonPhaseAngleDeg - phaseDeg)).toBeLessThan(0.00005);
});

test('events are told of 400 days at most', () => {
  const place = { latitudeDeg: 39, longitudeDeg: -105 };
  const days = (count: number) => skyEvents(0, count * 86_400_000, place).events.length;
  expect(days(395)).toBeGreaterThan(395 * 4);
  expect(() => days(405)).toThrow('at most 400 days');
});

test('a curve is sampled every ten minutes, a step beyond both ends', () => {
  const HOUR_MS = 3_600_000;
  const { startMs, stepMs, values } = sampleCurve((atMs) => atMs, 0, HOUR_MS);
  expect({ startMs, stepMs }).toEqual({ startMs: -HOUR_MS / 6, stepMs: HOUR_MS / 6 });
  expect(values).toHaveLength(1 + 6 + 2);
});

test('a fall of the sun is followed 36 hours beyond the day, and looked at every half hour', () => {
  // A sun that falls by a tenth of a degree an hour, from 10° as the day begins: from 13.6° to 10 - 2.4 - 3.6 = 4°.
  let looks = 0;
  const sun = (atMs: number) => {
    looks++;
    return 10 - atMs / 36_000_000;
  };
  const pass = passInDay('dusk', 80, 70, 0, 24 * 3_600_000, sun);
  expect(pass).toMatchObject({ kind: 'none' });
  if (pass.kind !== 'none') return;
  expect(pass.reachedHighDeg).toBeCloseTo(13.6, 9);
  expect(pass.reachedLowDeg).toBeCloseTo(4, 9);
  // 24 + 2 · 36 hours are 192 half hours: 193 looks, one beyond either end, and both ends themselves.
  expect(looks).toBe(197);
});

test('formats of 64 zones are kept', () => {
  const made = vi.spyOn(Intl, 'DateTimeFormat');
  const zones = Intl.supportedValuesOf('timeZone').slice(0, 300);
  // A zone asked for a second time is made a second time where all were dropped in between.
  const dropped = zones.flatMap((timeZone, i) => {
    if (i === 0) return [];
    zoneOf({ longitudeDeg: 0, timeZone });
    const before = made.mock.calls.length;
    zoneOf({ longitudeDeg: 0, timeZone: zones[i - 1]! });
    return made.mock.calls.length > before ? [i] : [];
  });
  made.mockRestore();
  // Dropped while an older one is asked for, that one is left; then come a new one and the one before it, and 61 new ones.
  const apart = dropped.slice(2).map((at, i) => at - dropped[i + 1]!);
  expect(apart.length).toBeGreaterThan(1);
  expect(apart).toEqual(apart.map(() => 62));
});
