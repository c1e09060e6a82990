// Moonlight on level ground and on the clear sky.
// Source: docs/sources.md#circular-171 (ground), docs/sources.md#moonlit-sky (sky).

import { positive, within } from '../check.js';
import { clearAir } from './air.js';
import { smoothstep } from './smooth.js';

const DEG = Math.PI / 180;
const EARTH_RADIUS_KM = 6378.14;
const MEAN_PARALLAX_DEG = 0.951;

/**
 * Distance at which the moon's light is counted as average, kilometres. Source: P. M. Janiczek and J. A. DeYoung, Computer Programs for Sun and Moon Illuminance, USNO Circular 171 (1987).
 */
export const MEAN_DISTANCE_KM = EARTH_RADIUS_KM / Math.sin(MEAN_PARALLAX_DEG * DEG);

/** The moon as seen from the place. */
export interface Moon {
  /** True altitude of its centre as the place sees it, no refraction, -90 to 90. */
  readonly altitudeDeg: number;
  /** Sun-moon-observer: 0 full, 90 quarter, 180 new. */
  readonly phaseAngleDeg: number;
  /** From the centre of the Earth, kilometres; 384,400 on average. */
  readonly distanceKm: number;
}

/** Moonlight of the phase against the brightest possible: 1 at full, 0.54 ten degrees off, 0.066 at the quarter. */
export function moonPhaseLight(phaseAngleDeg: number): number {
  const elongation = (180 - within('phaseAngleDeg', phaseAngleDeg, 0, 180)) * DEG;
  if (elongation === 0) return 0;
  const sin = Math.sin(elongation / 2);
  const cos = Math.cos(elongation / 2);
  const lit = 0.892 * Math.exp(-3.343 * Math.exp(-0.632 * Math.log(sin / cos)));
  return lit + 0.0344 * (2 * sin * cos - elongation * (cos * cos - sin * sin));
}

/**
 * Lux that the moon lays on level ground under a clear sky: about 0.4 at most. Falls away smoothly as the
 * moon sets. Clear-night measurements are met within 0.42 stop, most within 0.2. Source: P. M. Janiczek and J. A. DeYoung, Computer Programs for Sun and Moon Illuminance, USNO Circular 171 (1987).
 *
 * @param moon as seen from the place
 * @returns lux, >= 0
 * @throws RangeError unless altitudeDeg is from -90 to 90, the phase angle from 0 to 180 and the distance
 *   above 6378 km
 */
export function moonIlluminanceLx({ altitudeDeg, phaseAngleDeg, distanceKm }: Moon): number {
  within('altitudeDeg', altitudeDeg, -90, 90);
  if (altitudeDeg < -18) return 0; // 3e-11 lx there
  const elongation = (180 - phaseAngleDeg) * DEG;
  const geometry = 1 - 0.005 * Math.cos(elongation) - 0.03 * Math.sin(altitudeDeg * DEG);
  const { beam, scattered } = clearAir(altitudeDeg);
  return ((0.418 * moonPhaseLight(phaseAngleDeg)) / geometry) * nearness(distanceKm) * (beam + scattered);
}

const NANOLAMBERT_CDM2 = 1e-5 / Math.PI;
const RAYLEIGH = 10 ** 5.36;

/** Stellar magnitudes that clear air takes from light of the zenith, visual band; clean lowland air. */
export const VISUAL_EXTINCTION_MAG = 0.172;

/** At this altitude of the moon and below, {@link moonlitSkyCdM2} is nothing: 1e-9 of a high moon's. */
export const MOONLIT_FROM_DEG = -18;

// The sky formula ends with the moon on the horizon. Below 10° it passes to the way the scattered light of
// clear air dies away, to which it is tied at 5°.
const FADE_FROM_DEG = 10;
const TIED_AT_DEG = 5;
const SCATTERED_WHERE_TIED = clearAir(TIED_AT_DEG).scattered;

/** How much of the formula's sky is left of a low moon: 1 from 10° up, 0.27 on the horizon, 0.001 at -6°. */
function leftOfLowMoon(altitudeDeg: number): number {
  const fading = smoothstep(FADE_FROM_DEG, 0, altitudeDeg);
  if (fading === 0) return 1;
  return Math.exp(fading * Math.log(clearAir(altitudeDeg).scattered / SCATTERED_WHERE_TIED));
}

function skyAirMass(altitudeDeg: number): number {
  return 1 / Math.sqrt(1 - 0.96 * squared(Math.cos(altitudeDeg * DEG)));
}

// Powers written out: the plain operator costs several times as much, and a frame needs ten of them.
function tenTo(x: number): number {
  return Math.exp(Math.LN10 * x);
}

function squared(x: number): number {
  return x * x;
}

function nearness(distanceKm: number): number {
  const parallaxDeg = Math.asin(EARTH_RADIUS_KM / positive('distanceKm', distanceKm)) / DEG;
  return squared(parallaxDeg / MEAN_PARALLAX_DEG);
}

/**
 * Luminance in cd/m² that the moon adds to a piece of clear sky, for one view: sets up once, then takes the moon and
 * the angle between moon and piece of sky (0 to 180). Authors' accuracy 8 to 23 %.
 * The formula is for a moon above the horizon at 10° or more from the view; nearer it is carried on without
 * the disc, and below 10° of altitude it dies away as clear air's scattered light does.
 *
 * @param viewAltitudeDeg altitude of the piece of sky, 0 to 90
 * @param extinctionMag magnitudes an air mass takes, > 0
 */
export function moonlitSkyToward(
  viewAltitudeDeg: number,
  extinctionMag = VISUAL_EXTINCTION_MAG,
): (moon: Moon, angleFromMoonDeg: number) => number {
  const skyCdM2 = (1 - tenTo(-0.4 * extinctionMag * skyAirMass(viewAltitudeDeg))) * NANOLAMBERT_CDM2;
  return ({ altitudeDeg, phaseAngleDeg, distanceKm }, angleFromMoonDeg) => {
    if (altitudeDeg <= MOONLIT_FROM_DEG) return 0;
    const moonMag = 3.84 + 0.026 * phaseAngleDeg + 4e-9 * squared(squared(phaseAngleDeg));
    const scatter =
      RAYLEIGH * (1.06 + squared(Math.cos(angleFromMoonDeg * DEG))) + tenTo(6.15 - angleFromMoonDeg / 40);
    const pathMag = extinctionMag * skyAirMass(Math.max(0, altitudeDeg));
    return (
      leftOfLowMoon(altitudeDeg) *
      nearness(distanceKm) *
      scatter *
      tenTo(-0.4 * (moonMag + pathMag)) *
      skyCdM2
    );
  };
}

/**
 * Luminance that the moon adds to a piece of clear sky. Authors' accuracy 8 to 23 %. The formula is for a
 * moon above the horizon at 10° or more from the view; nearer it is carried on without the disc, and below
 * 10° of altitude it dies away as clear air's scattered light does. Source: K. Krisciunas and B. E. Schaefer, A model of the brightness of moonlight, PASP 103 (1991) 1033.
 *
 * @param moon as seen from the place
 * @param viewAltitudeDeg of the piece of sky, 0 to 90
 * @param angleFromMoonDeg between the moon and it, 0 to 180
 * @param extinctionMag stellar magnitudes that an air mass takes, > 0; 0.172 in clean lowland air
 * @returns cd/m², >= 0
 * @throws RangeError on a distance of the moon that is not above 6378 km
 */
export function moonlitSkyCdM2(
  moon: Moon,
  viewAltitudeDeg: number,
  angleFromMoonDeg: number,
  extinctionMag = VISUAL_EXTINCTION_MAG,
): number {
  return moonlitSkyToward(viewAltitudeDeg, extinctionMag)(moon, angleFromMoonDeg);
}
