// Numbers of the sky that no almanac table holds closely enough: each by hand, or a published value.

import { expect, test } from 'vitest';
import { clocksNear } from '../../../packages/core/src/sky/border.js';
import { eclipseAt } from '../../../packages/core/src/sky/eclipse.js';

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
