// Sunlight on level ground under a clear sky, by the sun's true altitude.
// Source: docs/sources.md#supplement; split into beam and sky after docs/sources.md#circular-171.

import { within } from '../check.js';
import { clearAir } from './air.js';
import { smoothstep } from './smooth.js';

// log10 of lux = l0 + l1 x + l2 x² + l3 x³ with x = altitude / 90°, from `from` up to the next row.
const PIECES = [
  { fromDeg: -18, l: [13.84, 262.72, 1447.42, 2797.93] },
  { fromDeg: -12, l: [2.7, 12.17, -431.69, -1899.83] },
  { fromDeg: -5, l: [2.88, 21.81, -258.11, -858.36] },
  { fromDeg: -0.8, l: [2.88, 22.26, -207.64, 1034.3] },
  { fromDeg: 5, l: [3.05, 13.28, -45.98, 64.33] },
  { fromDeg: 20, l: [3.74, 3.97, -4.07, 1.47] },
] as const;

// The published pieces miss each other by up to 0.014 stop; half a degree on each side joins them.
const JOINT_HALF_WIDTH_DEG = 0.5;

// The published twilight contains the natural night sky, which it meets at -18°: taken off, what is left is the sun's.
const NIGHT_AT_DEG = -18;

/** Below this altitude of the sun nothing was measured apart from the night: its light dies away as {@link lastLightEv}. */
export const LAST_LIGHT_DEG = -15;
/** From here down nothing is left of it: less than a millionth of a natural night. */
export const NO_LIGHT_DEG = -30;
// What a survey telescope measured of the twilight above the night: 1.33 EV a degree. docs/sources.md#last-light
const LAST_SLOPE = 1.33;
const LAST_OVER_DEG = 3;

/**
 * Stops that the sun's light has lost `belowDeg` below -15°, where it fell by `slope` a degree: over three degrees it
 * comes to fall as fast as measured above the night, and goes on steepening.
 */
export function lastLightEv(slope: number, belowDeg: number): number {
  const steepening = Math.max(0, LAST_SLOPE - slope) / LAST_OVER_DEG;
  return belowDeg * (slope + (steepening / 2) * belowDeg);
}

function piece(index: number, altitudeDeg: number): number {
  const [l0, l1, l2, l3] = PIECES[index]!.l;
  const x = altitudeDeg / 90;
  return l0 + x * (l1 + x * (l2 + x * l3));
}

/**
 * Illuminance on level ground under a clear sky with the natural night sky in it, no moon, no town. Error
 * about 0.3 stop above -12°, 0.5 to -15°. Below -18° it stays at the value there, 0.00064 lx. Source:
 * P. K. Seidelmann (ed.), Explanatory Supplement to the Astronomical Almanac (1992), p. 491.
 *
 * @param sunAltitudeDeg true altitude of the sun's centre (no refraction), -90 to 90
 * @returns lux
 * @throws RangeError unless sunAltitudeDeg is from -90 to 90
 */
export function clearIlluminanceLx(sunAltitudeDeg: number): number {
  within('sunAltitudeDeg', sunAltitudeDeg, -90, 90);
  const h = Math.max(-18, sunAltitudeDeg);
  let i = PIECES.length - 1;
  while (i > 0 && h < PIECES[i]!.fromDeg - JOINT_HALF_WIDTH_DEG) i--;
  const jointDeg = PIECES[i]!.fromDeg;
  const joined =
    i === 0 ? 1 : smoothstep(jointDeg - JOINT_HALF_WIDTH_DEG, jointDeg + JOINT_HALF_WIDTH_DEG, h);
  const log10Lx = joined === 1 ? piece(i, h) : piece(i - 1, h) * (1 - joined) + piece(i, h) * joined;
  return Math.exp(Math.LN10 * log10Lx);
}

/**
 * Illuminance that the sun alone adds on level ground under a clear sky: {@link clearIlluminanceLx} less the natural
 * night in it; below -15° it dies away. Add the night's own light to it. Source: P. K. Seidelmann (ed.), Explanatory Supplement to the Astronomical Almanac (1992), p. 491,
 * Yoachim and others, twilight sky brightness for a survey telescope (2016).
 *
 * @param sunAltitudeDeg true altitude of the sun's centre, -90 to 90
 * @returns lux, >= 0
 * @throws RangeError unless sunAltitudeDeg is from -90 to 90
 */
export function sunIlluminanceLx(sunAltitudeDeg: number): number {
  within('sunAltitudeDeg', sunAltitudeDeg, -90, 90);
  if (sunAltitudeDeg <= NO_LIGHT_DEG) return 0;
  const lx = clearIlluminanceLx(Math.max(LAST_LIGHT_DEG, sunAltitudeDeg)) - NIGHT_IN_IT_LX;
  return lx * 2 ** -lastLightEv(SLOPE_AT_LAST, Math.max(0, LAST_LIGHT_DEG - sunAltitudeDeg));
}

const NIGHT_IN_IT_LX = clearIlluminanceLx(NIGHT_AT_DEG);
const aboveNightEv = (sunAltitudeDeg: number) =>
  Math.log2(clearIlluminanceLx(sunAltitudeDeg) - NIGHT_IN_IT_LX);
const SLOPE_AT_LAST = (aboveNightEv(LAST_LIGHT_DEG + 0.01) - aboveNightEv(LAST_LIGHT_DEG - 0.01)) / 0.02;

/**
 * Share of clear-sky illuminance that comes from the sky rather than straight from the sun:
 * 1 with the sun down, about 0.69 at 5°, 0.12 at the zenith.
 *
 * @param sunAltitudeDeg true altitude of the sun's centre, -90 to 90
 */
export function skyPartOfSunlight(sunAltitudeDeg: number): number {
  // By -5° the beam is below 1e-9 of the whole; at 0° itself a cut would leave a corner.
  if (sunAltitudeDeg < -5) return 1;
  const { beam, scattered } = clearAir(sunAltitudeDeg);
  return scattered / (beam + scattered);
}
