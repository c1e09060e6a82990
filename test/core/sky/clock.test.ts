import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  civilDay,
  clocksBack,
  frameTimes,
  parseRfc3339,
  rfc3339,
  wallToMs,
  zoneOf,
} from '../../../packages/core/src/sky/clock.js';
import { comesTwice } from '../../../packages/core/src/words/clock.js';
import { readTable } from '../../reference/csv.js';

const HOUR_MS = 3_600_000;
const named = (timeZone: string) => zoneOf({ longitudeDeg: 0, timeZone });
const minutesOf = (offset: string) =>
  (offset.startsWith('-') ? -1 : 1) * (Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6)));

// The host's own zone must not matter: two far from UTC, with summer times half a year apart.
describe.each([
  ['America/New_York', '2025-07-01T12:00:00', '2025-07-01T16:00:00Z'],
  ['Pacific/Chatham', '2025-01-01T12:00:00', '2024-12-31T22:15:00Z'],
])('in a process that lives in %s', (hostZone, hostWall, instant) => {
  const before = process.env.TZ;
  beforeAll(() => {
    process.env.TZ = hostZone;
  });
  afterAll(() => {
    if (before === undefined) delete process.env.TZ;
    else process.env.TZ = before;
  });

  test('the process does live there', () => {
    expect(new Date(hostWall).valueOf()).toBe(Date.parse(instant));
  });

  // Source: dst_transitions_2025.csv, IANA tz database 2026f.
  test.each(readTable('sun/dst_transitions_2025.csv'))('$zone changes its clocks at $utc_instant', (row) => {
    const zone = named(row.zone!);
    const changeMs = Date.parse(row.utc_instant!);
    const [offsetBefore, offsetAfter] = [minutesOf(row.offset_before!), minutesOf(row.offset_after!)];
    expect(zone.offsetMin(changeMs - 1)).toBe(offsetBefore);
    expect(zone.offsetMin(changeMs)).toBe(offsetAfter);
    // And the same when asked out of order, from a fresh zone.
    expect(named(row.zone!).offsetMin(changeMs)).toBe(offsetAfter);
    expect(named(row.zone!).offsetMin(changeMs - 1)).toBe(offsetBefore);

    // Wall times inside the change: none in a gap, two in an overlap; one before and after.
    const [date, from] = row.local_from_inclusive!.split('T') as [string, string];
    const [, to] = row.local_to_exclusive!.split('T') as [string, string];
    const inside = wallToMs(date, from, zone);
    if (row.kind!.startsWith('gap')) {
      expect(inside).toEqual([]);
      expect(wallToMs(date, to, zone)).toEqual([changeMs]);
    } else {
      const wallMs = Date.parse(`${date}T${from}Z`);
      expect(inside).toEqual([wallMs - offsetBefore * 60_000, wallMs - offsetAfter * 60_000]);
      expect(wallToMs(date, to, zone)).toHaveLength(1);
    }
    const lastBefore = new Date(Date.parse(`${date}T${from}Z`) - 1000).toISOString();
    expect(wallToMs(lastBefore.slice(0, 10), lastBefore.slice(11, 19), zone)).toHaveLength(1);

    // Only where they go back does a time come twice: the first and the last of them, and their neighbours.
    const back = clocksBack(changeMs - 40 * HOUR_MS, changeMs + 20 * HOUR_MS, zone);
    const at = (wall: string, offset: string) => `${wall}${offset}`;
    const told = (wall: string, offset: string) => comesTwice(at(wall, offset), back);
    const wall = { from: row.local_from_inclusive!, to: row.local_to_exclusive! };
    const second = (text: string, by: number) =>
      new Date(Date.parse(`${text}Z`) + by * 1000).toISOString().slice(0, 19);
    const twice = !row.kind!.startsWith('gap');
    expect(back === undefined).toBe(!twice);
    for (const offset of [row.offset_before!, row.offset_after!]) {
      expect(told(wall.from, offset)).toBe(twice);
      expect(told(second(wall.to, -1), offset)).toBe(twice);
    }
    expect(told(second(wall.from, -1), row.offset_before!)).toBe(false);
    expect(told(wall.to, row.offset_after!)).toBe(false);

    // The day is as much shorter or longer as the clocks move.
    const day = civilDay(date, zone);
    expect(day.endMs - day.startMs).toBe(24 * HOUR_MS - (offsetAfter - offsetBefore) * 60_000);
  });

  // Source: sun_day_summary.csv, local midnights, IANA tz database.
  test.each(readTable('sun/sun_day_summary.csv'))('the day $local_date at $place', (row) => {
    const zone = named(row.tz!);
    const { startMs, endMs } = civilDay(row.local_date!, zone);
    expect(startMs).toBe(Date.parse(row.local_midnight_start_utc!));
    expect(endMs).toBe(Date.parse(row.local_midnight_end_utc!));
    expect((endMs - startMs) / HOUR_MS).toBe(Number(row.local_day_length_h));
    const colon = (offset: string) => `${offset.slice(0, 3)}:${offset.slice(3)}`;
    expect(rfc3339(startMs, zone)).toBe(`${row.local_date}T00:00:00${colon(row.utc_offset_at_start!)}`);
  });

  // Source: sun_events.csv: the same instants in UTC and in local time with offset.
  test('writes and reads the instants of the event table', () => {
    const rows = readTable('sun/sun_events.csv').filter((row) => row.status === 'ok');
    expect(rows.length).toBeGreaterThan(40);
    for (const row of rows) {
      const atMs = Date.parse(row.utc!);
      expect(rfc3339(atMs, named(row.tz!))).toBe(row.local);
      expect(parseRfc3339(row.local!)).toBe(atMs);
    }
  });

  test('offsets that are no whole hours', () => {
    // Common knowledge, in the IANA tz database: Nepal since 1986, Chatham in summer, Lord Howe's half-hour change.
    expect(rfc3339(Date.UTC(2025, 9, 15), named('Asia/Kathmandu'))).toBe('2025-10-15T05:45:00+05:45');
    expect(rfc3339(Date.UTC(2025, 0, 1), named('Pacific/Chatham'))).toBe('2025-01-01T13:45:00+13:45');
    expect(rfc3339(Date.UTC(2025, 0, 1), named('Australia/Lord_Howe'))).toBe('2025-01-01T11:00:00+11:00');
    expect(rfc3339(Date.UTC(2025, 6, 1), named('Australia/Lord_Howe'))).toBe('2025-07-01T10:30:00+10:30');
    expect(rfc3339(Date.UTC(2025, 6, 1), named('America/St_Johns'))).toBe('2025-06-30T21:30:00-02:30');
  });

  test('days that start late in the night, and one that a zone never had', () => {
    // IANA tz database: Cairo's clocks went from 0:00 to 1:00 on 25 April 2025; Samoa skipped 30 December 2011.
    expect(rfc3339(civilDay('2025-04-25', named('Africa/Cairo')).startMs, named('Africa/Cairo'))).toBe(
      '2025-04-25T01:00:00+03:00',
    );
    // Toronto's clocks went from 23:30 to 0:30 on the night to 31 March 1919.
    expect(rfc3339(civilDay('1919-03-31', named('America/Toronto')).startMs, named('America/Toronto'))).toBe(
      '1919-03-31T00:30:00-04:00',
    );
    const samoa = named('Pacific/Apia');
    expect(() => civilDay('2011-12-30', samoa)).toThrow(
      new RangeError('date must be a day that Pacific/Apia has, got "2011-12-30"'),
    );
    expect(civilDay('2011-12-29', samoa).endMs).toBe(civilDay('2011-12-31', samoa).startMs);
    expect(wallToMs('2011-12-30', '12:00', samoa)).toEqual([]);
  });

  test('days follow each other without gap or overlap', () => {
    const zones = [
      'Europe/Oslo',
      'America/Anchorage',
      'Australia/Lord_Howe',
      'Africa/Cairo',
      'Asia/Kathmandu',
    ];
    for (const zone of zones.map(named)) {
      let lastEndMs = civilDay('2024-12-31', zone).endMs;
      for (let i = 0; i < 366; i++) {
        const date = new Date(Date.UTC(2025, 0, 1 + i)).toISOString().slice(0, 10);
        const { startMs, endMs } = civilDay(date, zone);
        expect(startMs).toBe(lastEndMs);
        expect(rfc3339(startMs, zone).slice(0, 10)).toBe(date);
        expect(rfc3339(endMs - 1, zone).slice(0, 10)).toBe(date);
        lastEndMs = endMs;
      }
    }
  });

  test('a written instant reads back as itself, and its wall time finds it', () => {
    const zones = ['Europe/London', 'America/New_York', 'Pacific/Apia', 'Australia/Lord_Howe', 'Asia/Tehran'];
    fc.assert(
      fc.property(
        fc.integer({ min: Date.UTC(1970, 0), max: Date.UTC(2050, 0) }),
        fc.constantFrom(...zones),
        (atMs, timeZone) => {
          const zone = named(timeZone);
          const text = rfc3339(atMs, zone);
          expect(parseRfc3339(text)).toBe(atMs);
          const second = Math.floor(atMs / 1000) * 1000;
          expect(wallToMs(text.slice(0, 10), text.slice(11, 19), zone)).toContain(second);
        },
      ),
      { seed: 14, numRuns: 500 },
    );
  });
});

describe('zoneOf', () => {
  test('without a zone clocks keep the mean sun of the longitude, to a whole minute', () => {
    // Four minutes of time to a degree: 18.9553 E is 75.8 minutes.
    const zone = zoneOf({ longitudeDeg: 18.9553 });
    expect(zone.offsetMin(0)).toBe(76);
    expect(zone.name).toBe('mean solar time, UTC+01:16');
    expect(rfc3339(Date.UTC(2026, 10, 25, 12), zone)).toBe('2026-11-25T13:16:00+01:16');
    expect(rfc3339(Date.UTC(2026, 10, 25, 12), zoneOf({ longitudeDeg: -180 }))).toBe(
      '2026-11-25T00:00:00-12:00',
    );
    expect(rfc3339(0, zoneOf({ longitudeDeg: -0.1 }))).toBe('1970-01-01T00:00:00+00:00');
    expect(Object.is(zoneOf({ longitudeDeg: -0.1 }).offsetMin(0), 0)).toBe(true);
    const day = civilDay('2025-03-30', zone);
    expect(day).toEqual({
      startMs: Date.parse('2025-03-30T00:00:00+01:16'),
      endMs: Date.parse('2025-03-31T00:00:00+01:16'),
    });
  });

  test.each(['Mars/Base', '', '+05:00', 'Europe/Olso'])('refuses the zone "%s" by name', (timeZone) => {
    expect(() => named(timeZone)).toThrow(
      new RangeError(`timeZone must be an IANA name such as "Europe/Oslo", got "${timeZone}"`),
    );
  });

  test('refuses a longitude off the Earth', () => {
    expect(() => zoneOf({ longitudeDeg: 181 })).toThrow(/longitudeDeg must be from -180 to 180, got 181/);
  });

  test('refuses to say the offset of no time', () => {
    expect(() => named('Europe/Oslo').offsetMin(Number.NaN)).toThrow(/atMs must be finite, got NaN/);
  });
});

describe('dates and times that are none', () => {
  const zone = named('Europe/Oslo');

  test.each([
    '2025-02-30',
    '2025-13-01',
    '2025-00-10',
    '2025-02-29',
    '2025-1-1',
    '25-01-01',
    '2025-01-01T00:00',
    '',
    'today',
  ])('refuses the date "%s"', (date) => {
    const message = `date must be a day of the calendar as YYYY-MM-DD, got "${date}"`;
    expect(() => civilDay(date, zone)).toThrow(new RangeError(message));
    expect(() => wallToMs(date, '12:00', zone)).toThrow(new RangeError(message));
  });

  test('takes the leap day of a leap year', () => {
    expect(civilDay('2024-02-29', zone).startMs).toBe(Date.parse('2024-02-28T23:00:00Z'));
  });

  test.each(['24:00', '12:60', '12', '12:00:60', '1:00', '12:00Z', ''])('refuses the time "%s"', (time) => {
    expect(() => wallToMs('2025-06-01', time, zone)).toThrow(
      new RangeError(`time must be HH:MM or HH:MM:SS, got "${time}"`),
    );
  });
});

describe('RFC 3339', () => {
  // Source: RFC 3339, section 5.8, its own examples (the leap seconds apart).
  test.each([
    ['1985-04-12T23:20:50.52Z', Date.UTC(1985, 3, 12, 23, 20, 50, 520)],
    ['1996-12-19T16:39:57-08:00', Date.UTC(1996, 11, 20, 0, 39, 57)],
    ['1937-01-01T12:00:27.87+00:20', Date.UTC(1937, 0, 1, 11, 40, 27, 870)],
    ['1996-12-20t00:39:57z', Date.UTC(1996, 11, 20, 0, 39, 57)],
    ['2024-02-29T23:59:59.9996+00:00', Date.UTC(2024, 2, 1)],
  ])('reads %s', (text, atMs) => {
    expect(parseRfc3339(text)).toBe(atMs);
  });

  test.each([
    '2025-02-30T12:00:00Z',
    '2025-02-29T12:00:00Z',
    '2025-13-01T12:00:00Z',
    '2025-06-31T12:00:00Z',
    '2025-01-01T24:00:00Z',
    '2025-01-01T12:60:00Z',
    '1990-12-31T23:59:60Z',
    '2025-01-01T12:00:00',
    '2025-01-01T12:00Z',
    '2025-01-01',
    '12:00:00Z',
    '2025-01-01 12:00:00Z',
    '2025-01-01T12:00:00+0100',
    '2025-01-01T12:00:00+24:00',
    '2025-01-01T12:00:00.Z',
    '2025-01-01T12:00:00+01:60',
    ' 2025-01-01T12:00:00Z',
    '2025-01-01T12:00:00Z ',
    '+002025-01-01T12:00:00Z',
    '',
    '2025-01-01T12:00:00+01:00[Europe/Oslo]',
  ])('refuses "%s"', (text) => {
    expect(parseRfc3339(text)).toBeUndefined();
  });

  test('writes a fraction only where there is one, to the millisecond', () => {
    const zone = named('Europe/Berlin');
    const noon = Date.UTC(2026, 10, 25, 16, 3, 20);
    expect(rfc3339(noon, zone)).toBe('2026-11-25T17:03:20+01:00');
    expect(rfc3339(noon + 500, zone)).toBe('2026-11-25T17:03:20.500+01:00');
    expect(rfc3339(noon + 1000 / 3, zone)).toBe('2026-11-25T17:03:20.333+01:00');
    expect(rfc3339(noon + 999.7, zone)).toBe('2026-11-25T17:03:21+01:00');
    expect(rfc3339(Date.UTC(1969, 11, 31, 23, 59, 59, 250), named('UTC'))).toBe(
      '1969-12-31T23:59:59.250+00:00',
    );
  });

  test('refuses a year that four digits cannot write, and no time at all', () => {
    expect(() => rfc3339(Date.UTC(10_000, 1), named('UTC'))).toThrow(/atMs must be from/);
    expect(() => rfc3339(Number.NaN, named('UTC'))).toThrow(/atMs must be from/);
  });
});

describe('frameTimes', () => {
  test('frames stand on the beat, however many: no drift', () => {
    const start = Date.UTC(2026, 10, 25, 16);
    expect([...frameTimes(start, 4, 7)]).toEqual([start, start + 7000, start + 14_000, start + 21_000]);
    const long = frameTimes(start, 20_000, 0.1);
    // 19,999 tenths of a second by hand: 1,999,900 ms.
    expect(long[19_999]).toBe(start + 1_999_900);
    expect(frameTimes(start, 0, 5)).toHaveLength(0);
  });

  test.each([
    [Number.NaN, 3, 5, /startMs must be finite, got NaN/],
    [0, 2.5, 5, /frameCount must be a whole number, got 2.5/],
    [0, -1, 5, /frameCount must be from 0 to/],
    [0, 3, 0, /intervalS must be positive and finite, got 0/],
  ])('refuses start %d, %d frames, %d s', (startMs, frameCount, intervalS, message) => {
    expect(() => frameTimes(startMs, frameCount, intervalS)).toThrow(message);
  });
});
