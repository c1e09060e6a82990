// What clear air lets through: the beam and the scattered part of light that comes from sun or moon,
// by their altitude. Source: docs/sources.md#circular-171.

const EARTH_RADIUS_IN_SCALE_HEIGHTS = 753.66156;
const DEG = Math.PI / 180;
const HORIZON_SQUARED = (EARTH_RADIUS_IN_SCALE_HEIGHTS / (EARTH_RADIUS_IN_SCALE_HEIGHTS + 1)) ** 2;

/** Air masses of a homogeneous shell: 1 at the zenith, 38.8 at the horizon, finite below it. */
function airMassOfSine(sin: number): number {
  const x = EARTH_RADIUS_IN_SCALE_HEIGHTS;
  const top = Math.sqrt(1 - HORIZON_SQUARED * (1 - sin * sin));
  return x * (top - sin) + top;
}

/** Shares of a body's light outside the air. */
export interface ClearAir {
  readonly facing: number; // straight from the body, on a surface turned to it
  readonly beam: number; // the same on level ground; negligibly below zero under the horizon
  readonly scattered: number; // from the sky on level ground, > 0
}

/**
 * Shares of a body's light that reach level ground through clear air, straight and by way of the sky.
 *
 * @param altitudeDeg true altitude of the body's centre, -90 to 90; below -10 the scattered part dies too
 *   fast to stand for twilight. The beam is left a hair negative below the horizon, where clipping it
 *   would put a corner into the sum.
 */
export function clearAir(altitudeDeg: number): ClearAir {
  const sin = Math.sin(altitudeDeg * DEG);
  const m = airMassOfSine(sin);
  const facing = Math.exp(-0.21 * m);
  return {
    facing,
    beam: facing * sin,
    scattered: 0.0289 * Math.exp(-0.042 * m) * (1 + (altitudeDeg + 90) * DEG * sin),
  };
}

const LEAST_REFRACTED_DEG = -1.9; // below it the formula ends, and no light comes straight

/**
 * By how much the air lifts a body, degrees: 0.48 on the true horizon, 0.09 at 10°. Source: G. G. Bennett's formula in T. Saemundsson's form, Sky & Telescope 72 (1986) 70.
 */
export function refractionDeg(trueAltitudeDeg: number): number {
  const h = Math.max(LEAST_REFRACTED_DEG, trueAltitudeDeg);
  return 1.02 / 60 / Math.tan((h + 10.3 / (h + 5.11)) * DEG);
}

/** Share of a body's light on level ground that comes straight from it, 0 to 1. */
export function beamPart(altitudeDeg: number): number {
  const { beam, scattered } = clearAir(altitudeDeg);
  return Math.max(0, beam) / (beam + scattered);
}
