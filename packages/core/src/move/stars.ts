// The longest shutter before stars trail, by the rules that are published. Advice beside the chosen limit.
// Source: docs/sources.md#star-rules.

import { positive, within } from '../check.js';
import { type Optics, pixelPitchUm } from './angle.js';
import { type SkyView, trailingDeclinationDeg } from './sky-view.js';

/** The sky turns once in a sidereal day of 86,164.09 s: arcseconds in a second, at the celestial equator. */
const SKY_ARCSEC_PER_S = (360 * 3600) / 86_164.0905;

/** Diagonal of the 36 × 24 mm frame that the 500 rule was made for. */
const FULL_DIAGONAL_MM = Math.hypot(36, 24);

const DEG = Math.PI / 180;

/** Arcseconds a second that a star moves: 15.041 cos declination. 7.5205 at 60°, 0 at the poles. */
export function starDriftArcsecPerS(declinationDeg: number): number {
  return SKY_ARCSEC_PER_S * cosOf(declinationDeg);
}

/** Seconds by the 500 rule: 500 over the focal length as 36 × 24 mm would frame it. 24 mm there: 20.8 s. */
export function rule500S({ lens, sensor }: Optics): number {
  const crop =
    FULL_DIAGONAL_MM / Math.hypot(positive('widthMm', sensor.widthMm), positive('heightMm', sensor.heightMm));
  return 500 / (crop * positive('focalMm', lens.focalMm));
}

/** What the NPF rule asks: f-number N, pixel pitch P, focal length F. */
export interface Npf {
  readonly fNumber: number;
  /** Micrometres. */
  readonly pitchUm: number;
  readonly focalMm: number;
}

/** Seconds by the simplified NPF rule, (35 N + 30 p) / f. It knows no declination and can be too long. */
export function npfSimpleS({ fNumber, pitchUm, focalMm }: Npf): number {
  return (
    (35 * positive('fNumber', fNumber) + 30 * positive('pitchUm', pitchUm)) / positive('focalMm', focalMm)
  );
}

/**
 * Seconds by the full NPF rule, k (16.9 N + 0.1 f + 13.7 p) / (f cos declination).
 *
 * @param softness k: 1 for points, 2 for trails just seen, 3 for trails that may be seen
 * @returns Infinity at a pole, where stars stand still
 */
export function npfFullS({ fNumber, pitchUm, focalMm }: Npf, declinationDeg: number, softness = 1): number {
  const spot =
    16.9 * positive('fNumber', fNumber) +
    0.1 * positive('focalMm', focalMm) +
    13.7 * positive('pitchUm', pitchUm);
  return (positive('softness', softness) * spot) / (focalMm * cosOf(declinationDeg));
}

/** Longest shutters by each rule; those that count pixels are absent where the pixels are not known. */
export interface StarAdvice {
  /** Of the fastest star in the frame, -90 to 90. */
  readonly declinationDeg: number;
  /** By the 500 rule, seconds. */
  readonly rule500S: number;
  /** By the simplified NPF rule, seconds; it knows no declination and can be too long. */
  readonly npfSimpleS?: number | undefined;
  /** By the full NPF rule, seconds; Infinity at a pole, where stars stand still. */
  readonly npfFullS?: number | undefined;
  /** That star's trail at the centre of the picture, pixels a second. */
  readonly trailPxPerS?: number | undefined;
}

/**
 * Longest shutters for the stars in a frame, or in all frames of a pan. Source: rule of 500, and the NPF rule of F. Michaud (2016).
 *
 * @param optics lens and sensor; without `widthPx` only the 500 rule is given
 * @param fNumber focal ratio, > 0
 * @param views where the camera looks, one or more
 * @param latitudeDeg of the place, -90 to 90
 * @param softness of the full NPF rule: 1 for points, 2 for trails just seen, 3 for trails that may be seen
 * @returns seconds by each rule; undefined where no view shows sky
 * @throws RangeError on a lens, sensor, f-number or softness that is not above 0, or angles out of range
 */
export function starAdvice(
  optics: Optics,
  fNumber: number,
  views: readonly SkyView[],
  latitudeDeg: number,
  softness = 1,
): StarAdvice | undefined {
  const declinations = views.flatMap((view) => trailingDeclinationDeg(view, optics, latitudeDeg) ?? []);
  if (declinations.length === 0) return undefined;
  const declinationDeg = declinations.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
  const pitchUm = pixelPitchUm(optics.sensor);
  const { focalMm } = optics.lens;
  if (pitchUm === undefined) return { declinationDeg, rule500S: rule500S(optics) };
  const npf = { fNumber, pitchUm, focalMm };
  return {
    declinationDeg,
    rule500S: rule500S(optics),
    npfSimpleS: npfSimpleS(npf),
    npfFullS: npfFullS(npf, declinationDeg, softness),
    trailPxPerS: (Math.tan((starDriftArcsecPerS(declinationDeg) / 3600) * DEG) * focalMm * 1000) / pitchUm,
  };
}

/** Cosine of a declination; exactly 0 at the poles, where rounding would leave 6e-17. */
function cosOf(declinationDeg: number): number {
  return Math.abs(within('declinationDeg', declinationDeg, -90, 90)) === 90
    ? 0
    : Math.cos(declinationDeg * DEG);
}
