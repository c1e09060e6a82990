// From when to when a shoot's frames are taken: its span, by the clock or by the sun, as frame times.

import { frameCountOf } from '../footage/frames.js';
import { civilDay, frameTimes, parseRfc3339, zoneOf } from '../sky/clock.js';
import type { WhyNoPass } from '../sky/missing.js';
import { sunPass } from '../sky/sun.js';
import type { Shoot } from './shoot.js';
import { checkShoot } from './shoot-check.js';
import { MOST_FRAMES } from './work.js';

/**
 * When the frames are taken: `times`, the start of each, UTC epoch milliseconds, one or more; or that the sun
 * never passes through the span on that day: `why`, a sentence, `because`, the same as data, and from `highDeg` to `lowDeg`, the true
 * altitudes between which it does move.
 */
export type ShootSpan =
  | { readonly kind: 'ok'; readonly times: Float64Array } // start of each frame, UTC epoch milliseconds
  | {
      readonly kind: 'no-span';
      readonly why: string; // a sentence in English
      readonly because: WhyNoPass;
      readonly highDeg: number;
      readonly lowDeg: number;
    };

/** What a person reads off a watch in the dark and presses the button at; our choice. */
const WHOLE_MINUTE_MS = 60_000;

/**
 * Frame times of a shoot. The first frame starts on a whole second; by the sun and for hands on a whole minute, the one in
 * which the sun reaches the altitude, so that a person can start by the clock.
 *
 * @param shoot its place, date, direction, span, interval and crew
 * @returns the times, or why there are none
 * @throws RangeError on a shoot that `readShoot` would refuse
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { shootSpan } from '@evenfall/core';
 *
 * const span = shootSpan(shoot);
 * span.kind === 'ok' && span.times.length; // → 1029
 * // North of the polar circle the sun does not set on midsummer's day.
 * const place = { latitudeDeg: 69.65, longitudeDeg: 18.96, timeZone: 'Europe/Oslo' };
 * const sun = { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 };
 * shootSpan({ ...shoot, place, date: '2026-06-21', span: sun }).kind; // → 'no-span'
 * ```
 */
export function shootSpan(shoot: Shoot): ShootSpan {
  checkShoot(shoot);
  return spanOf(shoot);
}

/** The same of a shoot that is right. */
export function spanOf({ place, date, direction, span, intervalS, crew }: Shoot): ShootSpan {
  const ends =
    'startAt' in span
      ? { kind: 'ok' as const, startMs: instant(span.startAt), endMs: instant(span.endAt) }
      : sunSpan(span.fromSunAltitudeDeg, span.toSunAltitudeDeg);
  if (ends.kind === 'none') {
    const { why, because, reachedHighDeg: highDeg, reachedLowDeg: lowDeg } = ends;
    return { kind: 'no-span', why, because, highDeg, lowDeg };
  }
  const onMinute = crew === 'hand' && !('startAt' in span);
  const startMs = onMinute
    ? Math.floor(ends.startMs / WHOLE_MINUTE_MS) * WHOLE_MINUTE_MS
    : Math.round(ends.startMs / 1000) * 1000;
  const frameCount = frameCountOf(Math.max(0, ends.endMs - startMs) / 1000, intervalS);
  if (frameCount > MOST_FRAMES) {
    throw new RangeError(
      `intervalS must leave at most ${MOST_FRAMES} frames, got ${intervalS}, which makes ${frameCount}`,
    );
  }
  return { kind: 'ok', times: frameTimes(startMs, frameCount, intervalS) };

  function sunSpan(fromDeg: number, toDeg: number) {
    const day = civilDay(date, zoneOf(place));
    return sunPass(direction, fromDeg, toDeg, day.startMs, day.endMs, place);
  }
}

/** A time of a shoot, UTC epoch milliseconds; throws RangeError on text that is no such time. */
export function instant(text: string): number {
  const atMs = parseRfc3339(text);
  if (atMs !== undefined) return atMs;
  throw new RangeError(`"${text}" is no RFC 3339 time with an offset`);
}
