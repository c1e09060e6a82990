// Positions joined between knots, held against the ephemeris asked at every frame.

import { expect, test } from 'vitest';
import { type SkyPosition, sunAndMoon } from '../../../packages/core/src/sky/sun.js';
import { skyTrack } from '../../../packages/core/src/sky/track.js';

const PLACES = [
  { name: 'equator, sun and moon through the zenith', latitudeDeg: 0.5, longitudeDeg: 12 },
  { name: 'middle latitude', latitudeDeg: 47, longitudeDeg: -71 },
  { name: 'far south, across north', latitudeDeg: -52, longitudeDeg: 170 },
  { name: 'near the pole', latitudeDeg: 89, longitudeDeg: 0 },
];
// A day of each: new moon and full moon with eclipses (2026-08-12, 2026-08-28), a quarter, an equinox.
const DAYS = ['2026-08-12', '2026-08-28', '2026-12-02', '2027-03-20'];

function framesOf(day: string, intervalS: number): Float64Array {
  const startMs = Date.parse(`${day}T00:00:00Z`) + 12_345;
  return Float64Array.from(
    { length: Math.floor(86_400 / intervalS) },
    (_, i) => startMs + i * 1000 * intervalS,
  );
}

const RAD = Math.PI / 180;

/** Angle between two directions, degrees. */
function apartDeg(altitudeA: number, azimuthA: number, altitudeB: number, azimuthB: number): number {
  const level = 2 * Math.cos(altitudeA * RAD) * Math.cos(altitudeB * RAD);
  const high = Math.sin(((altitudeA - altitudeB) * RAD) / 2) ** 2;
  const turn = Math.sin(((azimuthA - azimuthB) * RAD) / 2) ** 2;
  return (2 * Math.asin(Math.sqrt(high + (level / 2) * turn))) / RAD;
}

for (const place of PLACES) {
  test(`${place.name}: within 0.0001° of the ephemeris, phase and distance too`, () => {
    let worstDeg = 0;
    let worstPhaseDeg = 0;
    let worstKm = 0;
    for (const day of DAYS) {
      const times = framesOf(day, 37);
      const track = skyTrack(times, place);
      expect(track).toHaveLength(times.length);
      track.forEach((sky, i) => {
        const exact = sunAndMoon(times[i], place);
        const sun = apartDeg(
          sky.sunAltitudeDeg,
          sky.sunAzimuthDeg,
          exact.sunAltitudeDeg,
          exact.sunAzimuthDeg,
        );
        const moon = apartDeg(
          sky.moonAltitudeDeg,
          sky.moonAzimuthDeg,
          exact.moonAltitudeDeg,
          exact.moonAzimuthDeg,
        );
        worstDeg = Math.max(worstDeg, sun, moon);
        worstPhaseDeg = Math.max(worstPhaseDeg, Math.abs(sky.moonPhaseAngleDeg - exact.moonPhaseAngleDeg));
        worstKm = Math.max(worstKm, Math.abs(sky.moonDistanceKm - exact.moonDistanceKm));
      });
    }
    expect(worstDeg).toBeLessThan(1e-4);
    expect(worstDeg).toBeGreaterThan(0);
    expect(worstPhaseDeg).toBeLessThan(1e-4);
    expect(worstKm).toBeLessThan(0.1);
  });
}

test('no step and no corner in altitude where one cubic passes to the next', () => {
  const altitudes: ((sky: SkyPosition) => number)[] = [(s) => s.sunAltitudeDeg, (s) => s.moonAltitudeDeg];
  // A grid of 5 s that meets every knot. What the ephemeris itself bends by (7e-6° a frame) is taken off.
  const place = { latitudeDeg: 47, longitudeDeg: -71 };
  const times = framesOf('2026-12-02', 5);
  const track = skyTrack(times, place);
  const exact = Array.from(times, (atMs) => sunAndMoon(atMs, place));
  for (const altitude of altitudes) {
    const off = track.map((sky, i) => altitude(sky) - altitude(exact[i]));
    const bends = off.slice(2).map((ev, i) => Math.abs(ev - 2 * off[i + 1] + off[i]));
    expect(bends.length).toBeGreaterThan(17_000);
    expect(Math.max(...bends)).toBeLessThan(3e-7);
  }
});

test('a few frames far apart are asked of the ephemeris itself', () => {
  const times = Float64Array.from([0, 600_000, 1_200_000], (ms) => Date.parse('2026-08-28T18:00:00Z') + ms);
  const place = { latitudeDeg: 47, longitudeDeg: -71 };
  expect(skyTrack(times, place)).toEqual(Array.from(times, (atMs) => sunAndMoon(atMs, place)));
});
