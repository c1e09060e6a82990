// Exposure arithmetic in APEX units: each doubling of light counts 1.
// Source: docs/sources.md#apex.

import { finite, positive } from './check.js';

/** One exposure, in exact values: `1 / 64`, not the dial's "1/60". */
export interface Exposure {
  /** Shutter time, seconds, > 0. */
  readonly timeS: number;
  /** Focal ratio, > 0. */
  readonly fNumber: number;
  /** Arithmetic speed, > 0. */
  readonly iso: number;
}

/** Reflected-light meter constant K, cd·s/(m²·ISO). Source: docs/sources.md#meter. */
export const REFLECTED_K = 12.5;

/** Incident-light meter constant C of a flat receptor, lx·s/ISO. Source: docs/sources.md#meter. */
export const INCIDENT_C = 250;

/** Av = 2 log2 N, so f/1 is 0 and f/2 is 2. Throws RangeError unless N > 0. */
export function apertureAv(fNumber: number): number {
  return 2 * Math.log2(positive('fNumber', fNumber));
}

/** Tv = -log2 t, so 1 s is 0 and 1/2 s is 1. Throws RangeError unless t > 0. */
export function timeTv(timeS: number): number {
  return -Math.log2(positive('timeS', timeS));
}

/** Sv = log2(ISO / 3.125), so ISO 100 is 5. Throws RangeError unless ISO > 0. */
export function isoSv(iso: number): number {
  return Math.log2(positive('iso', iso) / 3.125);
}

/**
 * Scene brightness, as EV at ISO 100, that `exposure` renders at metered level.
 * f/16, 1/125 s, ISO 100 give 14.9658.
 */
export function ev100Of({ timeS, fNumber, iso }: Exposure): number {
  return apertureAv(fNumber) + timeTv(timeS) - Math.log2(positive('iso', iso) / 100);
}

/** Luminance in cd/m² to EV at ISO 100: log2(L · 100 / K). 4096 cd/m² is EV 15. */
export function luminanceToEv100(luminanceCdM2: number): number {
  return Math.log2((positive('luminanceCdM2', luminanceCdM2) * 100) / REFLECTED_K);
}

/** EV at ISO 100 to luminance in cd/m²; the inverse of {@link luminanceToEv100}. */
export function ev100ToLuminance(ev100: number): number {
  return (2 ** finite('ev100', ev100) * REFLECTED_K) / 100;
}

/** Illuminance in lux on a flat receptor to EV at ISO 100: log2(E · 100 / C). 2.5 lx is EV 0. */
export function illuminanceToEv100(illuminanceLx: number): number {
  return Math.log2((positive('illuminanceLx', illuminanceLx) * 100) / INCIDENT_C);
}

/** Found a time, or says which way the scene is out of reach and by how many stops. */
export type TimeFit =
  | { readonly kind: 'ok'; readonly timeS: number }
  | { readonly kind: 'too-dark' | 'too-bright'; readonly shortfallEv: number }; // > 0

/**
 * Shutter time that meters the scene with aperture and ISO held.
 * A scene out of reach is a normal answer, not an error.
 *
 * @param sceneEv100 EV at ISO 100, any finite number
 * @param limits shortest and longest time, seconds, both allowed
 * @throws RangeError on a number outside these ranges, or minS > maxS
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
