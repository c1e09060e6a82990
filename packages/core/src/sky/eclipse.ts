// Eclipses of sun and moon as a place sees them, from where the two stand. How deep, not how dark: light is not modelled.

import type { SkyPosition } from './sun.js';

const DEG = Math.PI / 180;
const SUN_RADIUS_DEG = 0.2666; // at the mean distance
const ORBIT = { eccentricity: 0.0167, nearestMs: Date.UTC(2000, 0, 3), yearMs: 365.2596 * 86_400_000 };
const MOON_RADIUS_KM = 1737.4;
const EARTH_RADIUS_KM = 6378.14;
/** The umbra at the moon, its parallax less the sun's radius plus the sun's parallax, a fiftieth wider for the air. */
const UMBRA_GROWTH = 1.02;

/** Share of the disc's width that is covered, 0 outside an eclipse; 1 and more in a total one. */
export interface Eclipse {
  readonly body: 'sun' | 'moon';
  readonly magnitude: number;
}

/** The eclipse at one moment, of what stands above the horizon. Source: J. Meeus, Astronomical Algorithms. */
export function eclipseAt(sky: SkyPosition, atMs: number): Eclipse | undefined {
  const { sunAltitudeDeg, moonAltitudeDeg, moonDistanceKm } = sky;
  const parallaxDeg = Math.asin(EARTH_RADIUS_KM / moonDistanceKm) / DEG;
  const turn = (2 * Math.PI * (atMs - ORBIT.nearestMs)) / ORBIT.yearMs;
  const sunRadiusDeg = SUN_RADIUS_DEG * (1 + ORBIT.eccentricity * Math.cos(turn));
  // A moon overhead is nearer to the place than to the Earth's centre.
  const nearerKm = EARTH_RADIUS_KM * Math.sin(moonAltitudeDeg * DEG);
  const moonRadiusDeg = Math.asin(MOON_RADIUS_KM / (moonDistanceKm - nearerKm)) / DEG;
  if (sunAltitudeDeg > -1) {
    const apart = apartDeg(sunAltitudeDeg, moonAltitudeDeg, sky.sunAzimuthDeg - sky.moonAzimuthDeg);
    const covered = (sunRadiusDeg + moonRadiusDeg - apart) / (2 * sunRadiusDeg);
    if (covered > 0) return { body: 'sun', magnitude: covered };
  }
  if (moonAltitudeDeg > -1) {
    // The shadow is opposite the sun as the Earth's centre sees it, from where the moon stands higher.
    const centredDeg = moonAltitudeDeg + parallaxDeg * Math.cos(moonAltitudeDeg * DEG);
    const apart = apartDeg(-sunAltitudeDeg, centredDeg, sky.sunAzimuthDeg + 180 - sky.moonAzimuthDeg);
    const umbraDeg = UMBRA_GROWTH * (parallaxDeg - sunRadiusDeg + 0.0024);
    const covered = (umbraDeg + moonRadiusDeg - apart) / (2 * moonRadiusDeg);
    if (covered > 0) return { body: 'moon', magnitude: covered };
  }
  return undefined;
}

function apartDeg(altitudeADeg: number, altitudeBDeg: number, azimuthDeg: number): number {
  const [a, b] = [altitudeADeg * DEG, altitudeBDeg * DEG];
  // The half-angle form keeps its digits where the two all but meet.
  const sinHalf = Math.hypot(
    Math.sin((a - b) / 2),
    Math.sin((azimuthDeg * DEG) / 2) * Math.sqrt(Math.cos(a) * Math.cos(b)),
  );
  return (2 * Math.asin(Math.min(1, sinHalf))) / DEG;
}
