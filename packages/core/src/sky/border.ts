// Whether a zone taken from coordinates may be the neighbour's: near a border a table of zones is no survey, and
// coordinates are often those of the nearest town.

import { aFunction, aGroup, hold } from '../hold.js';
import { civilDay, rfc3339, zoneOf } from './clock.js';
import type { Place } from './place.js';

/** A zone, and the offset of its clocks at the end of a date. */
export interface ClockOfZone {
  /** IANA name; undefined: mean solar time. */
  readonly timeZone: string | undefined;
  /** "+02:00". */
  readonly offset: string;
}

/** Our choice: tables of zones are coarse. */
const NEAR_KM = 25;
/** Of latitude, on a sphere of 6371 km, the earth's mean radius (IUGG). */
const KM_A_DEGREE = 111.2;

/**
 * The clock of a place, and those that show another time within 25 km of it.
 *
 * @param place with the zone that is taken for its own
 * @param date YYYY-MM-DD
 * @param zoneAt IANA name of the zone at latitude and longitude in degrees, from a table
 * @returns `here`, the place's own; `others`, each once, none where no border is near or the clocks across it agree
 * @throws RangeError on a date or a zone that does not exist
 * @example
 * ```ts
 * import { clocksNear } from '@evenfall/core';
 *
 * // In Elvas, with a table that knows but two meridians of the border.
 * const zoneAt = (_: number, east: number) => (east < -7 ? 'Europe/Lisbon' : 'Europe/Madrid');
 * const elvas = { latitudeDeg: 38.88, longitudeDeg: -7.16, timeZone: 'Europe/Lisbon' };
 * clocksNear(elvas, '2026-09-18', zoneAt).others;
 * // → [{ timeZone: 'Europe/Madrid', offset: '+02:00' }]
 * ```
 */
export function clocksNear(
  place: Place,
  date: string,
  zoneAt: (latitudeDeg: number, longitudeDeg: number) => string,
): { readonly here: ClockOfZone; readonly others: readonly ClockOfZone[] } {
  hold('place', place, aGroup);
  hold('zoneAt', zoneAt, aFunction);
  const clockOf = (timeZone: string | undefined): ClockOfZone => {
    const zone = zoneOf({ ...place, ...(timeZone === undefined ? {} : { timeZone }) });
    return { timeZone, offset: rfc3339(civilDay(date, zone).endMs - 1000, zone).slice(-6) };
  };
  const here = clockOf(place.timeZone);
  const others = zonesAround(place, zoneAt)
    .map(clockOf)
    .filter(({ offset }) => offset !== here.offset);
  return { here, others };
}

/** Zones on land in eight directions, each once. */
function zonesAround({ latitudeDeg, longitudeDeg }: Place, zoneAt: (lat: number, lon: number) => string) {
  const found = Array.from({ length: 8 }, (_, i) => {
    const bearing = (i * Math.PI) / 4;
    const northDeg = (NEAR_KM / KM_A_DEGREE) * Math.cos(bearing);
    const eastDeg = (NEAR_KM / KM_A_DEGREE) * Math.sin(bearing);
    const latitude = Math.min(89.9, Math.max(-89.9, latitudeDeg + northDeg));
    const longitude = longitudeDeg + eastDeg / Math.cos((latitude * Math.PI) / 180);
    return zoneAt(latitude, ((((longitude + 180) % 360) + 360) % 360) - 180);
  });
  return [...new Set(found)].filter((zone) => !zone.startsWith('Etc/'));
}
