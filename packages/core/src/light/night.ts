// What is left when sun and moon are gone: the natural night sky and the glow of towns.
// Source: docs/sources.md#night-sky.

import { within } from '../check.js';
import { smoothstep } from './smooth.js';

/** Night light of a place under a clear moonless sky. */
export interface Night {
  /** Luminance of the sky, cd/m², taken as even over the dome, > 0. */
  readonly skyCdM2: number;
  /** On level ground, lux, > 0. */
  readonly groundLx: number;
  /** Whether stated cloud changes it; not where the light was metered as it is. */
  readonly cloudChanges: boolean;
}

/**
 * Luminance of a sky of so many magnitudes in a square arcsecond: 1.08e5 · 10^(-0.4 m). Source:
 * L = 1.08e5 · 10^(−0.4 m) cd/m², the usual conversion of magnitudes.
 *
 * @param magArcsec2 magnitudes in a square arcsecond
 * @returns cd/m²
 */
export function magToLuminanceCdM2(magArcsec2: number): number {
  return 1.08e5 * 10 ** (-0.4 * magArcsec2);
}

const NATURAL_CDM2 = magToLuminanceCdM2(22);
// On level ground under it, measured: half as much again as an even sky of the zenith's luminance gives, because the
// natural sky brightens toward the horizon. What towns add is counted as even.
const NATURAL_LX = 0.0008;

/**
 * A night by the brightness of its zenith: 22 where there are no towns, 18 in a bright suburb. Source:
 * L = 1.08e5 · 10^(−0.4 m) cd/m², the usual conversion of magnitudes.
 *
 * @param zenithMagArcsec2 magnitudes in a square arcsecond, 14 to 23
 * @returns a night that stated cloud changes
 * @throws RangeError unless zenithMagArcsec2 is from 14 to 23
 */
export function nightOfZenith(zenithMagArcsec2: number): Night {
  const skyCdM2 = magToLuminanceCdM2(within('zenithMagArcsec2', zenithMagArcsec2, 14, 23));
  const natural = Math.min(skyCdM2, NATURAL_CDM2);
  const groundLx = Math.PI * (skyCdM2 - natural) + NATURAL_LX * (natural / NATURAL_CDM2);
  return { skyCdM2, groundLx, cloudChanges: true };
}

/**
 * A night by the light a town lays on level ground, as metered: stated cloud does not change it.
 *
 * @param groundLx lux, above 0 to 200
 * @returns a night that stated cloud does not change
 * @throws RangeError unless groundLx is above 0 and no more than 200
 */
export function nightOfGroundLx(groundLx: number): Night {
  within('groundLx', groundLx, Number.MIN_VALUE, 200);
  return { skyCdM2: groundLx / Math.PI, groundLx, cloudChanges: false };
}

// Overcast over clear, measured: a dark place a third; 2.8 times 32 km outside a large city, where the
// clear zenith was taken as 21, ten times in it, taken as 18.
const NATURAL_UNDER_CLOUD = 0.33;
const FAR_MAG = { mag: 21, log2Gain: Math.log2(2.8) };
const NEAR_MAG = { mag: 18, log2Gain: Math.log2(10.1) };

/** How many times brighter a closed cloud deck makes this night: below 1 where it is natural, up to 10 over towns. */
export function overcastNightFactor(night: Night): number {
  if (!night.cloudChanges) return 1;
  const natural = Math.min(night.skyCdM2, NATURAL_CDM2);
  const mag = -2.5 * Math.log10(night.skyCdM2 / 1.08e5);
  const nearness = Math.min(1, Math.max(0, (FAR_MAG.mag - mag) / (FAR_MAG.mag - NEAR_MAG.mag)));
  const gain = 2 ** (FAR_MAG.log2Gain + nearness * (NEAR_MAG.log2Gain - FAR_MAG.log2Gain));
  // The gain was measured on whole skies, towns and nature together; a natural sky only loses.
  const town = (night.skyCdM2 - natural) / night.skyCdM2;
  return NATURAL_UNDER_CLOUD * (1 - town) + gain * town;
}

/** How far it is dark enough for cloud to act on the night's light rather than the sun's: 0 at -8°, 1 from -12°. */
export function nightShare(sunAltitudeDeg: number): number {
  return smoothstep(-8, -12, sunAltitudeDeg);
}
