// Exposure arithmetic in APEX units: each doubling of light counts 1.
// Source: docs/sources.md#apex.

import { finite, positive } from '../check.js';
import { groupWith, hold } from '../hold.js';

/** One exposure, in exact values: `1 / 64`, not the dial's "1/60". */
export interface Exposure {
  /** Shutter time, seconds, > 0. */
  readonly timeS: number;
  /** Focal ratio, > 0. */
  readonly fNumber: number;
  /** Arithmetic speed, > 0. */
  readonly iso: number;
}

/** Constant K of a meter for reflected light, cd·s/(m²·ISO). Source: ISO 2720:1974, meter constants K = 12.5 and C = 250. */
export const REFLECTED_K = 12.5;

/** Constant C of a meter for incident light with a flat receptor, lx·s/ISO. Source: ISO 2720:1974, meter constants K = 12.5 and C = 250. */
export const INCIDENT_C = 250;

/**
 * Aperture as APEX counts it, Av = 2 log2 N: f/1 is 0, each stop narrower one more. Source:
 * ASA PH2.5-1960, the additive (APEX) system of photographic exposure.
 *
 * @param fNumber focal ratio, exact, > 0
 * @returns Av in stops
 * @throws RangeError unless fNumber is positive and finite
 */
export function apertureAv(fNumber: number): number {
  return 2 * Math.log2(positive('fNumber', fNumber));
}

/**
 * Shutter time as APEX counts it, Tv = -log2 t: 1 s is 0, each stop shorter one more. Source:
 * ASA PH2.5-1960, the additive (APEX) system of photographic exposure.
 *
 * @param timeS seconds, exact, > 0
 * @returns Tv in stops
 * @throws RangeError unless timeS is positive and finite
 */
export function timeTv(timeS: number): number {
  return -Math.log2(positive('timeS', timeS));
}

/**
 * Sensitivity as APEX counts it, Sv = log2(ISO / 3.125): ISO 100 is 5. Source: ASA PH2.5-1960, the additive (APEX) system of photographic exposure.
 *
 * @param iso arithmetic speed, exact, > 0
 * @returns Sv in stops
 * @throws RangeError unless iso is positive and finite
 */
export function isoSv(iso: number): number {
  return Math.log2(positive('iso', iso) / 3.125);
}

/**
 * Scene brightness, as EV at ISO 100, that an exposure renders at metered level. Source:
 * ASA PH2.5-1960, the additive (APEX) system of photographic exposure.
 *
 * @param exposure exact values, each > 0; a filter on the lens is not in it: add its stops
 * @returns EV at ISO 100, log2(N² / t) - log2(ISO / 100)
 * @throws RangeError unless timeS, fNumber and iso are positive and finite
 * @example
 * ```ts
 * import { ev100Of } from '@evenfall/core';
 *
 * // Sunny 16: in full sun f/16 at one over the ISO, whichever ISO: 8 + log2(100).
 * ev100Of({ timeS: 1 / 100, fNumber: 16, iso: 100 }); // → 14.64
 * ev100Of({ timeS: 1 / 400, fNumber: 16, iso: 400 }); // → 14.64
 * ```
 */
export function ev100Of(exposure: Exposure): number {
  hold('exposure', exposure, groupWith({}));
  const { timeS, fNumber, iso } = exposure;
  return apertureAv(fNumber) + timeTv(timeS) - Math.log2(positive('iso', iso) / 100);
}

/**
 * Luminance as EV at ISO 100: log2(L · 100 / K). Source: ISO 2720:1974, meter constants K = 12.5 and C = 250.
 *
 * @param luminanceCdM2 cd/m², > 0
 * @returns EV at ISO 100
 * @throws RangeError unless luminanceCdM2 is positive and finite
 */
export function luminanceToEv100(luminanceCdM2: number): number {
  return Math.log2((positive('luminanceCdM2', luminanceCdM2) * 100) / REFLECTED_K);
}

/**
 * EV at ISO 100 as luminance; the inverse of {@link luminanceToEv100}. Source: ISO 2720:1974, meter constants K = 12.5 and C = 250.
 *
 * @param ev100 any finite number
 * @returns cd/m²
 * @throws RangeError unless ev100 is finite
 */
export function ev100ToLuminance(ev100: number): number {
  return (2 ** finite('ev100', ev100) * REFLECTED_K) / 100;
}

/**
 * Illuminance on a flat receptor as EV at ISO 100: log2(E · 100 / C). Source: ISO 2720:1974, meter constants K = 12.5 and C = 250.
 *
 * @param illuminanceLx lux, > 0
 * @returns EV at ISO 100
 * @throws RangeError unless illuminanceLx is positive and finite
 */
export function illuminanceToEv100(illuminanceLx: number): number {
  return Math.log2((positive('illuminanceLx', illuminanceLx) * 100) / INCIDENT_C);
}

/**
 * A time that meters the scene, `timeS` in exact seconds; or by which `kind` the scene is out of reach, and
 * by how many stops, `shortfallEv`, > 0.
 */
export type TimeFit =
  | { readonly kind: 'ok'; readonly timeS: number }
  | { readonly kind: 'too-dark' | 'too-bright'; readonly shortfallEv: number }; // > 0

/**
 * Shutter time that meters the scene with aperture and ISO held. A scene out of reach is a normal answer, not
 * an error.
 *
 * @param sceneEv100 EV at ISO 100, any finite number
 * @param held aperture and ISO, exact, > 0
 * @param limits shortest and longest time, `minS` and `maxS`, seconds, > 0, both allowed
 * @returns the exact time, or which way the scene is out of reach and by how many stops
 * @throws RangeError unless sceneEv100 is finite, minS, maxS, fNumber and iso are positive and finite, and
 *   minS <= maxS
 */
export function fitTime(
  sceneEv100: number,
  held: Omit<Exposure, 'timeS'>,
  { minS, maxS }: { readonly minS: number; readonly maxS: number },
): TimeFit {
  finite('sceneEv100', sceneEv100);
  if (positive('minS', minS) > positive('maxS', maxS)) {
    throw new RangeError(`minS must not exceed maxS, got ${minS} > ${maxS}`);
  }

  const tooDarkEv = ev100Of({ ...held, timeS: maxS }) - sceneEv100;
  if (tooDarkEv > 0) return { kind: 'too-dark', shortfallEv: tooDarkEv };
  const tooBrightEv = sceneEv100 - ev100Of({ ...held, timeS: minS });
  if (tooBrightEv > 0) return { kind: 'too-bright', shortfallEv: tooBrightEv };

  // Rounding can land a hair below minS when the scene sits exactly on it.
  return { kind: 'ok', timeS: Math.max(minS, maxS * 2 ** tooDarkEv) };
}
