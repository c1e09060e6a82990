// Events of sun and moon against tables; each check names its table, each table its source.

import * as Astronomy from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { type SkyEvent, skyEvents, sunPosition } from '../../../packages/core/src/sky/sun.js';
import { readTable } from '../../reference/csv.js';

const DAY_MS = 86_400_000;
const days = readTable('sun/sun_day_summary.csv');
const placeOf = (row: Record<string, string>) => ({
  latitudeDeg: Number(row.lat),
  longitudeDeg: Number(row.lon),
});

/** The events of a local civil day, between the midnights that the table gives. */
function dayEvents(row: Record<string, string>) {
  return skyEvents(
    Date.parse(row.local_midnight_start_utc!),
    Date.parse(row.local_midnight_end_utc!),
    placeOf(row),
  );
}

/** Seconds the sun takes for 0.02 degree, at least 5. */
const toleranceS = (degPerMin: number) => Math.max(5, (0.02 / degPerMin) * 60);

describe('sun', () => {
  const rows = readTable('sun/sun_events.csv');

  test('the table has events that happen and events that do not', () => {
    expect(rows.filter((row) => row.status === 'ok').length).toBeGreaterThan(40);
    expect(rows.filter((row) => row.status !== 'ok').length).toBeGreaterThan(10);
  });

  // Source: sun_events.csv, Swiss Ephemeris DE431.
  test.each(rows)('$event at $place, $local_date: $status', (row) => {
    const { events, missing } = dayEvents(days.find(({ id }) => id === row.id)!);
    const name = row.event!.replace('_', '-') as SkyEvent;
    const found = events.filter((event) => event.name === name);
    if (row.status !== 'ok') {
      expect(found).toHaveLength(0);
      const why = missing.find((event) => event.name === name)!.why;
      expect(why).toMatch(
        row.status === 'none: sun never this high' ? /never rises|stays below/ : /reaches only/,
      );
      return;
    }
    expect(found).toHaveLength(1);
    const [event] = found;
    expect(Math.abs(event!.atMs / 1000 - Number(row.utc_swisseph))).toBeLessThan(
      toleranceS(Number(row.deg_per_min)),
    );
    expect(event!.sunAltitudeDeg).toBeCloseTo(Number(row.sun_centre_altitude_deg), 3);
    const { azimuthDeg } = sunPosition(event!.atMs, {
      latitudeDeg: Number(row.lat),
      longitudeDeg: Number(row.lon),
    });
    expect(Math.abs(azimuthDeg - Number(row.azimuth_deg))).toBeLessThan(0.02);
  });

  // Source: sun_day_summary.csv: the turning altitudes, and where they leave no event.
  test.each([
    ['P08', 'nautical-dusk', 'the sun reaches only -10.6°'],
    ['P13', 'civil-dusk', 'the sun reaches only -5.3°'],
    ['P06', 'sunset', 'the sun never sets; it reaches only 3.1°'],
    ['P06', 'civil-dawn', 'the sun reaches only 3.1°'],
    ['P18', 'sunrise', 'the sun never rises; it reaches only -3.1°'],
  ])('%s has no %s: %s', (id, name, why) => {
    const { missing } = dayEvents(days.find((row) => row.id === id)!);
    expect(missing).toContainEqual(expect.objectContaining({ name, why }));
  });

  // Source: sun_day_summary.csv, seconds from sunrise to sunset.
  test.each(days.filter((row) => row.sun_above_horizon_s !== ''))('length of the day at $place', (row) => {
    const { events } = dayEvents(row);
    const at = (name: SkyEvent) => events.find((event) => event.name === name)!.atMs;
    expect(Math.abs((at('sunset') - at('sunrise')) / 1000 - Number(row.sun_above_horizon_s))).toBeLessThan(
      10,
    );
  });

  // Source: spa_published.csv, NREL/TP-560-34302 and its tester (geocentric altitude: 0.0024 degree, 1 s).
  test.each([
    ['lat -35 lon 0 1996-07-05 sunrise UTC', 'sunrise', -35, 0, '1996-07-05T', 'Z'],
    ['lat -35 lon 0 2004-12-04 sunrise UTC', 'sunrise', -35, 0, '2004-12-04T', 'Z'],
    ['lat 35 lon 0 1994-01-02 sunrise UTC', 'sunrise', 35, 0, '1994-01-02T', 'Z'],
    ['sunrise (local)', 'sunrise', 39.742476, -105.1786, '2003-10-17T', '-07:00'],
    ['true sunset of 2003-10-17 local', 'sunset', 39.742476, -105.1786, '2003-10-17T', '-07:00'],
  ])('%s as published', (quantity, name, latitudeDeg, longitudeDeg, date, offset) => {
    const { value } = readTable('sun/spa_published.csv').find((row) => row.quantity === quantity)!;
    const dayStartMs = Date.parse(`${date}00:00:00${offset}`);
    const { events } = skyEvents(dayStartMs, dayStartMs + DAY_MS, { latitudeDeg, longitudeDeg });
    const atMs = events.find((event) => event.name === name)!.atMs;
    expect(Math.abs(atMs - Date.parse(`${date}${value}${offset}`)) / 1000).toBeLessThan(5);
  });

  // The same source: its worked example stands 1830 m above the sea, and its sunrise and sunset do not go by that.
  test.each([
    ['sunrise (local)', 'sunrise'],
    ['true sunset of 2003-10-17 local', 'sunset'],
  ])('%s as published for a place 1830 m above the sea', (quantity, name) => {
    const rows = readTable('sun/spa_published.csv');
    const elevationM = Number(rows.find((row) => row.quantity === 'elevation')!.value);
    expect(elevationM).toBeCloseTo(1830.14, 2);
    const dayStartMs = Date.parse('2003-10-17T00:00:00-07:00');
    const place = { latitudeDeg: 39.742476, longitudeDeg: -105.1786, elevationM };
    const { events } = skyEvents(dayStartMs, dayStartMs + DAY_MS, place);
    const { value } = rows.find((row) => row.quantity === quantity)!;
    const atMs = events.find((event) => event.name === name)!.atMs;
    expect(Math.abs(atMs - Date.parse(`2003-10-17T${value}-07:00`)) / 1000).toBeLessThan(5);
  });

  test('who stands above the horizon in view sees the sun longer, and twilight no later', () => {
    const dayStartMs = Date.parse('2025-10-15T00:00:00Z');
    const at = (aboveHorizonM: number) =>
      skyEvents(dayStartMs, dayStartMs + DAY_MS, { latitudeDeg: 45, longitudeDeg: 0, aboveHorizonM }).events;
    const [low, high] = [at(0), at(1000)];
    const altitude = (events: typeof low, name: SkyEvent) =>
      events.find((event) => event.name === name)!.sunAltitudeDeg;
    // Bowditch's distance of the horizon, 1.17 nautical miles per root foot: 67.0 of them for 1000 m, each a minute
    // of arc at the Earth's centre. Ours bends light a little less: within 2 minutes.
    const dipDeg = (1.17 * Math.sqrt(1000 / 0.3048)) / 60;
    for (const name of ['sunrise', 'sunset'] as const) {
      expect(altitude(low, name)).toBeCloseTo(-0.8333, 3);
      expect(Math.abs(altitude(high, name) - (-0.8333 - dipDeg))).toBeLessThan(2 / 60);
    }
    const rest = (events: typeof low) => events.filter(({ name }) => name !== 'sunrise' && name !== 'sunset');
    expect(rest(low).length).toBeGreaterThan(6);
    expect(rest(high)).toEqual(rest(low));
    expect(() => at(-1)).toThrow('aboveHorizonM must be from 0');
  });
});

describe('moon', () => {
  // Source: moon_events.csv, Swiss Ephemeris DE431: upper limb, 34' of refraction.
  test.each(readTable('sun/moon_events.csv'))('$event at $place, $local_date: $status', (row) => {
    const { events, missing } = dayEvents(days.find(({ id }) => id === row.id)!);
    const found = events.filter((event) => event.name === row.event);
    if (row.status !== 'ok') {
      expect(found).toHaveLength(0);
      expect(missing.find((event) => event.name === row.event)!.why).toMatch(/^the moon (never|does not)/);
      return;
    }
    expect(found).toHaveLength(1);
    expect(Math.abs(found[0]!.atMs - Date.parse(row.utc!)) / 1000).toBeLessThan(5);
  });
});

describe('why the moon does not rise or set', () => {
  // Source: astronomy-engine, an independent ephemeris: the moon's altitude hour by hour over the same day. What lies
  // within 2 degrees of the horizon decides nothing.
  test('is what the moon does that day, through a month at 78 degrees north', () => {
    const observer = new Astronomy.Observer(78.22, 15.65, 0);
    const altitudeAt = (ms: number) => {
      const date = new Date(ms);
      const { ra, dec } = Astronomy.Equator(Astronomy.Body.Moon, date, observer, true, true);
      return Astronomy.Horizon(date, observer, ra, dec).altitude;
    };
    const met = new Set<string>();
    for (let day = 0; day < 30; day++) {
      const fromMs = Date.UTC(2027, 2, 1 + day);
      const hours = Array.from({ length: 25 }, (_, hour) => altitudeAt(fromMs + hour * 3_600_000));
      const whole =
        Math.min(...hours) > 2 ? 'never sets' : Math.max(...hours) < -2 ? 'never rises' : undefined;
      const crosses = Math.min(...hours) < -2 && Math.max(...hours) > 2;
      const { missing } = skyEvents(fromMs, fromMs + DAY_MS, { latitudeDeg: 78.22, longitudeDeg: 15.65 });
      for (const name of ['moonrise', 'moonset'] as const) {
        const why = missing.find((event) => event.name === name)?.why;
        if (whole !== undefined) expect(why).toBe(`the moon ${whole}`);
        if (crosses && why !== undefined) {
          expect(why).toBe(`the moon does not ${name === 'moonrise' ? 'rise' : 'set'} in this time`);
        }
        if (why !== undefined) met.add(why);
      }
    }
    expect(met).toContain('the moon never sets');
    expect(met).toContain('the moon never rises');
    expect([...met].some((why) => why.startsWith('the moon does not'))).toBe(true);
  });
});

describe('tables of the U.S. Naval Observatory, to the minute', () => {
  /** Events of a day that starts at midnight of a fixed offset. */
  function eventsOf(row: Record<string, string>, date: string, offset: string) {
    const dayStartMs = Date.parse(`${date}T00:00:00${offset}`);
    return skyEvents(dayStartMs, dayStartMs + DAY_MS, placeOf(row)).events;
  }
  // The tables round to the minute nearest; some of their rows round the other way by up to 3 s.
  const MINUTE_S = 30 + 5;

  test('sunrise and sunset at Atlanta in 2007, moonrise and moonset at Boston in 1984', () => {
    const rows = readTable('sun/usno_rise_set_tables.csv');
    const compared = { sun: 0, moon: 0, none: 0 };
    for (const row of rows) {
      const events = eventsOf(row, row.date_standard_time!, row.zone!.replace('UTC', ''));
      const found = events.filter(({ name }) => name === `${row.body}${row.event}`);
      if (row.usno_utc === '') {
        expect(found, `${row.body}${row.event} of ${row.date_standard_time}`).toHaveLength(0);
        compared.none++;
        continue;
      }
      expect(found, `${row.body}${row.event} of ${row.date_standard_time}`).toHaveLength(1);
      const offS = Math.abs(found[0]!.atMs - Date.parse(row.usno_utc!)) / 1000;
      expect(offS, `${row.body}${row.event} of ${row.date_standard_time}`).toBeLessThanOrEqual(MINUTE_S);
      compared[row.body as 'sun' | 'moon']++;
    }
    expect(compared).toEqual({ sun: 372, moon: 362, none: 12 });
  });

  test.each(readTable('sun/usno_spot_values.csv'))('sun at $lat, $lon on $date', (row) => {
    const events = eventsOf(row, row.date!, row.zone!.replace('UTC', ''));
    for (const name of ['sunrise', 'sunset'] as const) {
      const found = events.filter((event) => event.name === name);
      expect(found).toHaveLength(1);
      const published = Date.parse(`${row.date}T${row[`${name}_hhmm`]}:00${row.zone!.replace('UTC', '')}`);
      expect(Math.abs(found[0]!.atMs - published) / 1000).toBeLessThanOrEqual(MINUTE_S);
    }
  });

  // Fairbanks, 64.8 degrees north: the moon skips days. Near its turns 0.02 degree takes longer than a second or two.
  test.each(readTable('sun/usno_moon_fairbanks.csv'))(
    '$event at Fairbanks on $date_zone_utc_minus_8',
    (row) => {
      const place = { lat: String(64 + 48 / 60 + 36 / 3600), lon: String(-(147 + 45 / 60)) };
      const date = row.date_zone_utc_minus_8!;
      const found = eventsOf(place, date, '-08:00').filter(({ name }) => name === row.event);
      if (row.usno_local_hhmm === 'none') {
        expect(found).toHaveLength(0);
        return;
      }
      expect(found).toHaveLength(1);
      const published = Date.parse(`${date}T${row.usno_local_hhmm}:00-08:00`);
      expect(Math.abs(found[0]!.atMs - published) / 1000).toBeLessThanOrEqual(MINUTE_S);
    },
  );
});
