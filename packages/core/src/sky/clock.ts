// Clock times: zones, civil days, frame times, RFC 3339. The only file of core that knows a zone; everything else
// counts UTC epoch milliseconds. Zone rules are those of the host's own tables, read through Intl.

import { finite, positive, whole, within } from '../check.js';
import { aFunction, aNumber, groupWith, hold } from '../hold.js';
import type { ClocksBack } from '../words/clock.js';
import type { Place } from './place.js';

/** What clocks show at a place. */
export interface Zone {
  /** IANA name, or says that it is mean solar time. */
  readonly name: string;
  /** Minutes east of UTC at an instant, always whole: an old offset with seconds is rounded, as RFC 3339 needs. */
  offsetMin(atMs: number): number;
}

/** Formats of zones by their names as they were asked for: making one takes longer than a plan's clock times. */
const formats = new Map<string, Intl.DateTimeFormat>();
const MOST_FORMATS = 64; // of a server that is asked for every zone there is

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** Offset of an IANA zone at an instant, read from the host: what its clock shows less UTC. Slow, some microseconds. */
function readOffset(format: Intl.DateTimeFormat, atMs: number): number {
  const part: Record<string, number> = {};
  for (const { type, value } of format.formatToParts(atMs)) part[type] = Number(value);
  const { year, month, day, hour, minute, second } = part as Record<string, number>;
  const shownMs = Date.UTC(year!, month! - 1, day, hour, minute, second);
  return Math.round((shownMs - Math.floor(atMs / 1000) * 1000) / MINUTE_MS);
}

/** First instant in (fromMs, toMs] with another offset than at fromMs; the ends must differ. */
function findChange(offsetAt: (atMs: number) => number, fromMs: number, toMs: number): number {
  const offset = offsetAt(fromMs);
  let before = fromMs;
  let after = toMs;
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (offsetAt(middle) === offset) before = middle;
    else after = middle;
  }
  return after;
}

/** Remembers the stretch of one offset last asked for: frames come in order, and asking the host is slow. */
function remembered(offsetAt: (atMs: number) => number): (atMs: number) => number {
  let fromMs = 0;
  let toMs = 0;
  let offset = 0;
  return (atMs) => {
    if (atMs >= fromMs && atMs < toMs) return offset;
    // No zone changes its clocks twice in a day of UTC.
    fromMs = Math.floor(finite('atMs', atMs) / DAY_MS) * DAY_MS;
    toMs = fromMs + DAY_MS;
    offset = offsetAt(fromMs);
    const nextOffset = offsetAt(toMs);
    if (nextOffset !== offset) {
      const changeMs = findChange(offsetAt, fromMs, toMs);
      if (atMs < changeMs) {
        toMs = changeMs;
      } else {
        fromMs = changeMs;
        offset = nextOffset;
      }
    }
    return offset;
  };
}

const two = (value: number) => String(value).padStart(2, '0');

/** "+05:45" from 345. */
function offsetText(offsetMin: number): string {
  const minutes = Math.abs(offsetMin);
  return `${offsetMin < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/**
 * The clock of a place: its IANA zone, or without one the mean solar time of its longitude, four minutes a
 * degree, rounded to a whole minute. Zone rules are those of the host.
 *
 * @param place longitude in degrees, east positive, -180 to 180, and where it has one the IANA name of its
 *   zone
 * @returns a clock; it remembers the stretch last asked for, so asking in order of time is fast
 * @throws RangeError on a timeZone the host does not know, or without one a longitudeDeg outside -180
 *   to 180
 * @example
 * ```ts
 * import { zoneOf } from '@evenfall/core';
 *
 * // Four minutes a degree are 75.84; Oslo keeps summer time in July.
 * zoneOf({ longitudeDeg: 18.96 }).offsetMin(0); // → 76
 * const oslo = zoneOf({ longitudeDeg: 10.75, timeZone: 'Europe/Oslo' });
 * oslo.offsetMin(Date.UTC(2026, 6, 1)); // → 120
 * ```
 */
export function zoneOf(place: Pick<Place, 'longitudeDeg' | 'timeZone'>): Zone {
  hold('place', place, groupWith({ longitudeDeg: aNumber }));
  const { longitudeDeg, timeZone } = place;
  if (timeZone === undefined) {
    // Adding 0 keeps -0 out of sight.
    const offset = Math.round(within('longitudeDeg', longitudeDeg, -180, 180) * 4) + 0;
    return { name: `mean solar time, UTC${offsetText(offset)}`, offsetMin: () => offset };
  }

  let format = formats.get(timeZone);
  try {
    format ??= new Intl.DateTimeFormat('en-US', {
      timeZone,
      calendar: 'gregory',
      numberingSystem: 'latn',
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch {
    // The host's message differs from one to the next.
  }
  // Some hosts take "+05:45" for a zone; it is not an IANA name.
  if (format === undefined || /^[+-]/.test(timeZone)) {
    throw new RangeError(`timeZone must be an IANA name such as "Europe/Oslo", got "${timeZone}"`);
  }
  if (formats.size >= MOST_FORMATS) formats.clear();
  formats.set(timeZone, format);
  const known = format;
  return { name: timeZone, offsetMin: remembered((atMs) => readOffset(known, atMs)) };
}

/**
 * Where the clocks of a zone are put back between two instants, so that times of day come twice.
 *
 * @param fromMs UTC epoch milliseconds
 * @param toMs UTC epoch milliseconds, some days later: of two changes in between, both may go unseen
 * @param zone the clock, from {@link zoneOf}
 * @returns the first instant of the new offset, and by how many minutes; undefined where they are not put back
 * @throws RangeError on an instant that is not finite
 */
export function clocksBack(fromMs: number, toMs: number, zone: Zone): ClocksBack | undefined {
  const byMin = zone.offsetMin(fromMs) - zone.offsetMin(toMs);
  if (byMin <= 0) return undefined;
  return {
    at: rfc3339(
      findChange((atMs) => zone.offsetMin(atMs), fromMs, toMs),
      zone,
    ),
    byMin,
  };
}

const ZONE = groupWith({ offsetMin: aFunction });

function checkZone(zone: Zone): void {
  hold('zone', zone, ZONE);
}

/** A written date as if it were UTC; throws RangeError unless it is YYYY-MM-DD and exists. */
function dateAsUtcMs(date: string): number {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  // Hosts differ on 30 February: some carry it over to March.
  if (!Number.isFinite(ms) || new Date(ms).toISOString().slice(0, 10) !== date) {
    throw new RangeError(`date must be a day of the calendar as YYYY-MM-DD, got "${date}"`);
  }
  return ms;
}

/** Offsets in force around a wall time; two where the clocks change within a day of it. */
function offsetsAround(wallMs: number, zone: Zone): number[] {
  return [...new Set([zone.offsetMin(wallMs - DAY_MS), zone.offsetMin(wallMs + DAY_MS)])];
}

/**
 * Instants at which the clock shows a wall time (given as if it were UTC), in order: none, one or two.
 * Where the clocks go back the offset before is the greater, so its instant is the earlier.
 */
function instantsOf(wallMs: number, zone: Zone): number[] {
  return offsetsAround(wallMs, zone)
    .map((offset) => ({ offset, atMs: wallMs - offset * MINUTE_MS }))
    .filter(({ offset, atMs }) => zone.offsetMin(atMs) === offset)
    .map(({ atMs }) => atMs);
}

/** First instant at which the clock shows this wall time or, where it jumps over it, a later one. */
function firstFrom(wallMs: number, zone: Zone): number {
  const [first] = instantsOf(wallMs, zone);
  if (first !== undefined) return first;
  const offsets = offsetsAround(wallMs, zone);
  const earliest = wallMs - Math.max(...offsets) * MINUTE_MS;
  const latest = wallMs - Math.min(...offsets) * MINUTE_MS;
  return findChange((atMs) => zone.offsetMin(atMs), earliest, latest);
}

/**
 * A civil day from its first instant to the first of the next day: 23, 24 or 25 hours as the clocks go.
 *
 * @param date YYYY-MM-DD
 * @param zone the clock, from {@link zoneOf}
 * @returns `startMs` and `endMs`, UTC epoch milliseconds; the end is the next day's start
 * @throws RangeError on a date that does not exist, in the calendar or (a day skipped at the date line) in
 *   the zone
 * @example
 * ```ts
 * import { civilDay, zoneOf } from '@evenfall/core';
 *
 * // Clocks in Europe go forward on the last Sunday of March.
 * const oslo = zoneOf({ longitudeDeg: 10.75, timeZone: 'Europe/Oslo' });
 * const { startMs, endMs } = civilDay('2026-03-29', oslo);
 * (endMs - startMs) / 3_600_000; // → 23
 * ```
 */
export function civilDay(date: string, zone: Zone): { readonly startMs: number; readonly endMs: number } {
  checkZone(zone);
  const wallMs = dateAsUtcMs(date);
  const startMs = firstFrom(wallMs, zone);
  const endMs = firstFrom(wallMs + DAY_MS, zone);
  if (endMs <= startMs) throw new RangeError(`date must be a day that ${zone.name} has, got "${date}"`);
  return { startMs, endMs };
}

/**
 * Instants at which a clock in the zone shows a time of a date.
 *
 * @param date YYYY-MM-DD
 * @param time HH:MM or HH:MM:SS, 00:00 to 23:59:59
 * @param zone the clock, from {@link zoneOf}
 * @returns UTC epoch milliseconds in order: none where the clock jumps over the time, two where it comes
 *   twice
 * @throws RangeError on a date or time that does not exist on any clock
 * @example
 * ```ts
 * import { wallToMs, zoneOf } from '@evenfall/core';
 *
 * const oslo = zoneOf({ longitudeDeg: 10.75, timeZone: 'Europe/Oslo' });
 * wallToMs('2026-03-29', '02:30', oslo); // → []
 * wallToMs('2026-10-25', '02:30', oslo).length; // → 2
 * wallToMs('2026-11-25', '17:03', oslo); // → [Date.UTC(2026, 10, 25, 16, 3)]
 * ```
 */
export function wallToMs(date: string, time: string, zone: Zone): number[] {
  checkZone(zone);
  const match = /^([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d))?$/.exec(time);
  if (!match) throw new RangeError(`time must be HH:MM or HH:MM:SS, got "${time}"`);
  const [, hours, minutes, seconds = '0'] = match;
  const secondsOfDay = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
  return instantsOf(dateAsUtcMs(date) + secondsOfDay * 1000, zone);
}

/** What the clock shows at an instant, so many days later or earlier; where it jumps over that, the first time after. */
export function sameTimeOn(atMs: number, days: number, zone: Zone): number {
  return firstFrom(atMs + zone.offsetMin(atMs) * MINUTE_MS + days * DAY_MS, zone);
}

const EARLIEST_MS = Date.parse('0000-01-02T00:00:00Z');
const LATEST_MS = Date.parse('9999-12-31T00:00:00Z');

/**
 * An instant in RFC 3339 with the zone's offset, to the millisecond, the fraction only where there is one.
 * Source: RFC 3339, Date and Time on the Internet: Timestamps (2002).
 *
 * @param atMs UTC epoch milliseconds, years 0000 to 9999; rounded to whole ones
 * @param zone the clock, from {@link zoneOf}
 * @returns "2026-11-25T17:03:20+01:00"
 * @throws RangeError on atMs outside the years 0000 to 9999
 * @example
 * ```ts
 * import { rfc3339, zoneOf } from '@evenfall/core';
 *
 * const oslo = zoneOf({ longitudeDeg: 10.75, timeZone: 'Europe/Oslo' });
 * rfc3339(Date.UTC(2026, 10, 25, 16, 3, 20), oslo); // → '2026-11-25T17:03:20+01:00'
 * ```
 */
export function rfc3339(atMs: number, zone: Zone): string {
  checkZone(zone);
  const ms = Math.round(within('atMs', atMs, EARLIEST_MS, LATEST_MS));
  const offset = zone.offsetMin(ms);
  const shown = new Date(ms + offset * MINUTE_MS).toISOString();
  return shown.slice(0, ms % 1000 === 0 ? 19 : 23) + offsetText(offset);
}

const RFC3339 =
  /^(\d{4}-\d{2}-\d{2})T([01]\d|2[0-3]):([0-5]\d):([0-5]\d)(\.\d+)?(?:Z|([+-])([01]\d|2[0-3]):([0-5]\d))$/i;

/**
 * The instant an RFC 3339 text names: date, time to the second and offset (or Z) must all be there and exist.
 * A leap second (":60") is refused, since epoch milliseconds cannot name it. Never throws. Source:
 * RFC 3339, Date and Time on the Internet: Timestamps (2002).
 *
 * @param text any text
 * @returns UTC epoch milliseconds, fractions rounded to the millisecond; undefined where the text is no such
 *   time
 */
export function parseRfc3339(text: string): number | undefined {
  const match = RFC3339.exec(text);
  if (!match) return undefined;
  const [, date = '', hours, minutes, seconds, fraction = '0', sign, offsetHours = '0', offsetMinutes = '0'] =
    match;
  const dayMs = Date.parse(`${date}T00:00:00Z`);
  if (!Number.isFinite(dayMs) || new Date(dayMs).toISOString().slice(0, 10) !== date) return undefined;
  const wallS = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
  const offset = (Number(offsetHours) * 60 + Number(offsetMinutes)) * (sign === '-' ? -1 : 1);
  return dayMs + wallS * 1000 + Math.round(Number(fraction) * 1000) - offset * MINUTE_MS;
}

/**
 * When each frame starts.
 *
 * @param startMs first frame, UTC epoch milliseconds, finite
 * @param frameCount whole, not below 0
 * @param intervalS seconds from one start to the next, > 0
 * @returns one entry per frame, UTC epoch milliseconds; entry i is startMs + i * 1000 * intervalS
 * @throws RangeError unless startMs is finite, frameCount is a whole number not below 0 and intervalS is
 *   above 0
 */
export function frameTimes(startMs: number, frameCount: number, intervalS: number): Float64Array {
  finite('startMs', startMs);
  within('frameCount', whole('frameCount', frameCount), 0, Number.MAX_SAFE_INTEGER);
  positive('intervalS', intervalS);
  return Float64Array.from({ length: frameCount }, (_, i) => startMs + i * 1000 * intervalS);
}
