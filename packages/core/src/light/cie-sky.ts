// The CIE standard general sky: how luminance spreads over the dome for fifteen kinds of sky.
// Source: docs/sources.md#cie-general-sky.

import { within } from '../check.js';
import { hermite } from './smooth.js';

const DEG = Math.PI / 180;

/** Type 1 to 15; 1 is the CIE overcast sky, 5 is uniform, 12 the clear sky of clean air. */
export type CieSkyType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 15;

// a, b: gradation from zenith to horizon; c, d, e: indicatrix by angle from the sun. Row i is type i + 1.
const PARAMETERS = [
  [4, -0.7, 0, -1, 0],
  [4, -0.7, 2, -1.5, 0.15],
  [1.1, -0.8, 0, -1, 0],
  [1.1, -0.8, 2, -1.5, 0.15],
  [0, -1, 0, -1, 0],
  [0, -1, 2, -1.5, 0.15],
  [0, -1, 5, -2.5, 0.3],
  [0, -1, 10, -3, 0.45],
  [-1, -0.55, 2, -1.5, 0.15],
  [-1, -0.55, 5, -2.5, 0.3],
  [-1, -0.55, 10, -3, 0.45],
  [-1, -0.32, 10, -3, 0.45],
  [-1, -0.32, 16, -3, 0.3],
  [-1, -0.15, 16, -3, 0.3],
  [-1, -0.15, 24, -2.8, 0.15],
] as const;

const AT_RIGHT_ANGLE = PARAMETERS.map(([, , , d]) => Math.exp((d * Math.PI) / 2));

/**
 * Gradation φ: how a CIE sky rises or falls from zenith to horizon. Source: ISO 15469:2004 / CIE S 011, Spatial distribution of daylight.
 *
 * @param type of sky, 1 to 15
 * @param viewAltitudeDeg 0 to 90
 * @returns relative to the horizon, where it is 1
 */
export function cieGradation(type: CieSkyType, viewAltitudeDeg: number): number {
  return gradationAt(type, Math.sin(viewAltitudeDeg * DEG));
}

function gradationAt(type: CieSkyType, sin: number): number {
  const [a, b] = PARAMETERS[type - 1]!;
  return sin <= 0 ? 1 : 1 + a * Math.exp(b / sin);
}

/**
 * Indicatrix f: how a CIE sky brightens toward the sun. Source: ISO 15469:2004 / CIE S 011, Spatial distribution of daylight.
 *
 * @param type of sky, 1 to 15
 * @param angleFromSunDeg 0 to 180
 * @returns relative to a right angle from the sun, where it is 1
 */
export function cieIndicatrix(type: CieSkyType, angleFromSunDeg: number): number {
  const chi = angleFromSunDeg * DEG;
  return indicatrixAt(type, chi, Math.cos(chi));
}

/** By the angle from the sun, rad, and its cosine. */
function indicatrixAt(type: CieSkyType, chi: number, cos: number): number {
  const [, , c, d, e] = PARAMETERS[type - 1]!;
  return 1 + c * (Math.exp(d * chi) - AT_RIGHT_ANGLE[type - 1]!) + e * cos * cos;
}

/** Angle in degrees between two directions given by altitude and by the azimuth between them. */
export function angleBetweenDeg(altitudeADeg: number, altitudeBDeg: number, azimuthDeg: number): number {
  return angleFrom(altitudeADeg)(altitudeBDeg, azimuthDeg);
}

/** {@link angleBetweenDeg} from one altitude to many directions, at half its cost. */
export function angleFrom(altitudeADeg: number): (altitudeBDeg: number, azimuthDeg: number) => number {
  const sin = Math.sin(altitudeADeg * DEG);
  const level = Math.cos(altitudeADeg * DEG);
  return (altitudeBDeg, azimuthDeg) => {
    const cos =
      sin * Math.sin(altitudeBDeg * DEG) + level * Math.cos(altitudeBDeg * DEG) * Math.cos(azimuthDeg * DEG);
    return Math.acos(Math.min(1, Math.max(-1, cos))) / DEG;
  };
}

// Every 5° of sun altitude; between them the dome integral is smooth enough for a cubic: with these patches within 1 %.
const SUN_STEP_DEG = 5;
const ZENITH = 90 / SUN_STEP_DEG;
const RINGS = 16;
const SECTORS = 18;

/** Sine and cosine of the altitude of each ring: rings of equal sin² altitude throw equal shares of a uniform dome's light on the ground. */
const RING = Array.from({ length: RINGS }, (_, ring) => {
  const share = (ring + 0.5) / RINGS;
  return { sin: Math.sqrt(share), cos: Math.sqrt(1 - share) };
});

/** Cosine of each sector's azimuth from the sun, on one side of it. */
const SECTOR_COS = Array.from({ length: SECTORS }, (_, sector) =>
  Math.cos((Math.PI * (sector + 0.5)) / SECTORS),
);

/** Horizontal illuminance of a dome with gradation times indicatrix as its luminance, by summing patches. */
function domeIlluminance(type: CieSkyType, sunAltitudeDeg: number): number {
  const sunSin = Math.sin(sunAltitudeDeg * DEG);
  const sunCos = Math.cos(sunAltitudeDeg * DEG);
  let sum = 0;
  for (const { sin, cos } of RING) {
    let ring = 0;
    for (const sectorCos of SECTOR_COS) {
      const angleCos = sin * sunSin + cos * sunCos * sectorCos; // below 1: no sector's middle is the sun's azimuth
      ring += indicatrixAt(type, Math.acos(angleCos), angleCos);
    }
    sum += gradationAt(type, sin) * ring;
  }
  return (Math.PI * sum) / (RINGS * SECTORS);
}

/**
 * Luminance of a piece of a CIE sky for each lux the whole sky throws on level ground. Sets up once. Source:
 * ISO 15469:2004 / CIE S 011, Spatial distribution of daylight.
 *
 * @param type of sky, 1 to 15
 * @returns a function of the sun's altitude (0 to 90°), the view's altitude (0 to 90°) and the angle between
 *   the two (0 to 180°); it gives 1/sr
 * @throws RangeError unless type is a whole number from 1 to 15
 */
export function cieSky(
  type: CieSkyType,
): (sunAltitudeDeg: number, viewAltitudeDeg: number, angleFromSunDeg: number) => number {
  if (PARAMETERS[within('type', type, 1, 15) - 1] === undefined) {
    throw new RangeError(`type must be a whole number from 1 to 15, got ${type}`);
  }
  // A shoot sees few of the altitudes, and a sum takes its time: each is made when it is first asked for.
  const sums: number[] = [];
  const dome = (i: number) => {
    sums[i] ??= domeIlluminance(type, SUN_STEP_DEG * i);
    return sums[i]!;
  };
  // A step's rise along the parabola through three neighbours.
  const inner = (i: number) => (dome(i + 1) - dome(i - 1)) / 2;
  const rise = (i: number) => {
    if (i === 0) return 2 * (dome(1) - dome(0)) - inner(1);
    if (i === ZENITH) return 2 * (dome(ZENITH) - dome(ZENITH - 1)) - inner(ZENITH - 1);
    return inner(i);
  };
  const domeAt = (sunAltitudeDeg: number) => {
    const x = Math.min(ZENITH, Math.max(0, sunAltitudeDeg / SUN_STEP_DEG));
    const i = Math.min(ZENITH - 1, Math.floor(x));
    return hermite(x - i, 1, dome(i), dome(i + 1), rise(i), rise(i + 1));
  };
  return (sunAltitudeDeg, viewAltitudeDeg, angleFromSunDeg) =>
    (cieGradation(type, viewAltitudeDeg) * cieIndicatrix(type, angleFromSunDeg)) / domeAt(sunAltitudeDeg);
}
