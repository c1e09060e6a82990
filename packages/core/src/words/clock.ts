// Times of day as people read them. Where the clocks are put back an hour of them comes twice, and only the offset tells
// one from the other.

/** Puts the time of day of an RFC 3339 time the way the reader counts hours, its seconds where asked for. */
export type Clock = (at: string, withSeconds?: boolean) => string;

/** The clocks are put back: for `byMin` minutes before and after `at` they show the same times. */
export interface ClocksBack {
  /** First instant of the new offset, RFC 3339. */
  readonly at: string;
  /** Minutes, above 0. */
  readonly byMin: number;
}

/** "18:42" or "18:42:13" of an RFC 3339 time. */
export const hours24: Clock = (at, withSeconds) => at.slice(11, withSeconds ? 19 : 16);

/**
 * Whether the place's clocks show this time of day twice, so that it has to be told by its offset.
 *
 * @param at RFC 3339
 * @param back where the clocks are put back; none where they are not
 * @returns true for `byMin` minutes on both sides of that instant, the instant itself one of the second
 */
export function comesTwice(at: string, back: ClocksBack | undefined): boolean {
  if (back === undefined) return false;
  const sinceMin = (Date.parse(at) - Date.parse(back.at)) / 60_000;
  return sinceMin >= -back.byMin && sinceMin < back.byMin;
}

/**
 * A clock that gives the offset with every time that comes twice: "02:30 +02:00".
 *
 * @param back where the clocks are put back; none where they are not
 * @param clock how the reader counts hours; 24 of them where none is given
 * @returns a clock for sentences, cards and charts
 * @example
 * ```ts
 * import { clockOver } from '@evenfall/core';
 *
 * const clock = clockOver({ at: '2026-10-25T02:00:00+01:00', byMin: 60 });
 * clock('2026-10-25T02:30:00+01:00'); // → '02:30 +01:00'
 * clock('2026-10-25T03:00:00+01:00'); // → '03:00'
 * ```
 */
export function clockOver(back: ClocksBack | undefined, clock: Clock = hours24): Clock {
  return (at, withSeconds) =>
    comesTwice(at, back) ? `${clock(at, withSeconds)} ${at.slice(-6)}` : clock(at, withSeconds);
}
