// What cloud takes from sun and moon, as one number of stops for the whole transition.
// Source: docs/sources.md#cloud.

import { within } from '../check.js';
import { cieSky } from './cie-sky.js';

/** Cloud as numbers. */
export interface Cloud {
  /** Change of illuminance from sun and moon, stops, <= 0. */
  readonly stops: number;
  /** Share of the sky that is cloud, 0 to 1: how much of the pattern around the sun it hides. */
  readonly cover: number;
}

/**
 * Cloud by eighths of sky covered: 8 takes 2 stops, 4 a tenth. Fitted to the sun above 5°, carried on below.
 * Source: F. Kasten and G. Czeplak, Solar Energy 24 (1980) 177, and USNO Circular 171 (1987).
 *
 * @param eighths 0 to 8, whole or not
 * @returns stops that cloud takes, and the share of the sky it covers
 * @throws RangeError unless eighths is from 0 to 8
 */
export function cloudOfEighths(eighths: number): Cloud {
  const cover = within('eighths', eighths, 0, 8) / 8;
  return { stops: Math.log2(1 - 0.75 * cover ** 3.4), cover };
}

/**
 * Luminance of a piece of overcast sky for each lux it lays on level ground, in 1/sr: 0.41 at the zenith, a
 * third of that at the horizon, the same whichever way one looks. Source: ISO 15469:2004 / CIE S 011, Spatial distribution of daylight.
 *
 * @param viewAltitudeDeg 0 to 90
 * @returns 1/sr
 * @throws RangeError unless viewAltitudeDeg is from 0 to 90
 */
export function overcastSkyToward(viewAltitudeDeg: number): number {
  // The overcast sky has no sun in it, so where it stands does not matter.
  return OVERCAST(0, within('viewAltitudeDeg', viewAltitudeDeg, 0, 90), 90);
}

const OVERCAST = cieSky(1);

const CLOUD_REFLECTS = 0.7; // of the light from below, a closed deck: from memory, 0.6 to 0.7
const USUAL_GROUND = 0.18; // under which the words' stops were measured

/**
 * By how much ground brighter than usual raises the light under a closed deck of cloud: 1 / (1 - r a), the sum of what
 * goes to and fro, against the usual ground's. Fresh snow nearly doubles it. Source: F. Kasten and G. Czeplak, Solar Energy 24 (1980) 177, and USNO Circular 171 (1987).
 *
 * @param reflectance of the ground, 0 to 1
 */
export function toAndFro(reflectance: number): number {
  return Math.max(1, (1 - CLOUD_REFLECTS * USUAL_GROUND) / (1 - CLOUD_REFLECTS * reflectance));
}
