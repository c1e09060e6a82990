// The same shoot on another evening.

import { hold, text } from '../hold.js';
import { civilDay, rfc3339, sameTimeOn, zoneOf } from '../sky/clock.js';
import type { Shoot } from './shoot.js';
import { checkShoot } from './shoot-check.js';
import { instant } from './span.js';

/**
 * A shoot on another day. What it says by the clock, its span and when its lamps come on, is at the same time of that
 * day; where the clocks jump over it, at the first time after. Readings belong to the evening on which they were taken
 * and are left out.
 *
 * @param shoot from {@link readShoot}
 * @param date YYYY-MM-DD, local
 * @returns the shoot itself where that is its date
 * @throws RangeError on a shoot that `readShoot` would refuse, or a date that the calendar or the zone does not have
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { shootOnDate } from '@evenfall/core';
 *
 * // Summer time has ended by then.
 * shootOnDate(shoot, '2026-11-02').span;
 * // → { startAt: '2026-11-02T19:00:00+01:00', endAt: '2026-11-02T21:00:00+01:00' }
 * ```
 */
export function shootOnDate(shoot: Shoot, date: string): Shoot {
  checkShoot(shoot);
  hold('date', date, text);
  if (date === shoot.date) return shoot;
  const zone = zoneOf(shoot.place);
  civilDay(date, zone); // throws on a day that is none
  const days = (midnightMs(date) - midnightMs(shoot.date)) / 86_400_000;
  const then = (at: string) => rfc3339(sameTimeOn(instant(at), days, zone), zone);
  const { span, scene } = shoot;
  const { lamps } = scene;
  return {
    ...shoot,
    date,
    span: 'startAt' in span ? { startAt: then(span.startAt), endAt: then(span.endAt) } : span,
    scene:
      typeof lamps === 'object' && typeof lamps.on === 'object' && 'fromAt' in lamps.on
        ? { ...scene, lamps: { ...lamps, on: { ...lamps.on, fromAt: then(lamps.on.fromAt) } } }
        : scene,
    readings: [],
  };
}

const midnightMs = (date: string) => Date.parse(`${date}T00:00:00Z`);
