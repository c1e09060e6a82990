// Where a scene's light changes fastest.

import { positive } from '../check.js';
import { aNumber, groupWith, hold, listOf } from '../hold.js';

/** A moment of the light: a frame of a plan or a row of a light table. */
export interface LitMoment {
  /** RFC 3339. */
  readonly at: string;
  /** True altitude of the sun's centre, -90 to 90. */
  readonly sunAltitudeDeg: number;
  /** The light, EV at ISO 100. */
  readonly sceneEv100: number;
}

/** The minute in which the light changes most. */
export interface Steepest {
  /** Start of the minute, RFC 3339. */
  readonly at: string;
  /** True altitude of the sun's centre then, -90 to 90. */
  readonly sunAltitudeDeg: number;
  /** EV a minute; negative where the light falls. */
  readonly evPerMin: number;
}

/**
 * The steepest minute of a scene's light, to the nearest whole number of intervals; a span shorter than a minute counts
 * whole.
 *
 * @param moments one every interval, in order of time: frames of a plan or rows of a light table
 * @param intervalS seconds from one to the next, > 0
 * @returns the first of equals; undefined for fewer than two moments
 * @throws RangeError unless intervalS is above 0
 * @example
 * ```ts
 * import { steepestMinute } from '@evenfall/core';
 *
 * const moments = [14, 14, 13.5, 12.5, 12.5].map((sceneEv100, i) => {
 *   return { at: `2026-09-12T19:0${i}:00+02:00`, sunAltitudeDeg: -i, sceneEv100 };
 * });
 * steepestMinute(moments, 60); // → { at: '2026-09-12T19:02:00+02:00', sunAltitudeDeg: -2, evPerMin: -1 }
 * ```
 */
export function steepestMinute(moments: readonly LitMoment[], intervalS: number): Steepest | undefined {
  hold('moments', moments, listOf(groupWith({ sceneEv100: aNumber })));
  const steepest = steepestIn(
    moments.map(({ sceneEv100 }) => sceneEv100),
    intervalS,
  );
  if (steepest === undefined) return undefined;
  const { at, sunAltitudeDeg } = moments[steepest.index];
  return { at, sunAltitudeDeg, evPerMin: steepest.evPerMin };
}

/** The same of the light alone: from which moment on. */
export function steepestIn(
  sceneEv100: ArrayLike<number>,
  intervalS: number,
): { readonly index: number; readonly evPerMin: number } | undefined {
  const ahead = Math.min(
    sceneEv100.length - 1,
    Math.max(1, Math.round(60 / positive('intervalS', intervalS))),
  );
  let steepest: { readonly index: number; readonly evPerMin: number } | undefined;
  for (let index = 0; ahead > 0 && index + ahead < sceneEv100.length; index++) {
    const evPerMin = ((sceneEv100[index + ahead] - sceneEv100[index]) * 60) / (ahead * intervalS);
    if (steepest === undefined || Math.abs(evPerMin) > Math.abs(steepest.evPerMin)) {
      steepest = { index, evPerMin };
    }
  }
  return steepest;
}
