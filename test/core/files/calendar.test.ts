// The calendar against a reader written from RFC 5545: content lines, folding (3.1), escaped text (3.3.11).

import { type PlanMade, writeCalendar } from '@evenfall/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PLAN } from './sample.js';

const octets = (text: string) => new TextEncoder().encode(text).length;

interface Component {
  readonly name: string;
  readonly properties: Record<string, string>;
  readonly parts: Component[];
}

/** Content lines as the standard delimits them: CRLF ends one, CRLF and a space goes on with it. */
function contentLines(text: string): string[] {
  expect(text.endsWith('\r\n')).toBe(true);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  return text.replaceAll('\r\n ', '').slice(0, -2).split('\r\n');
}

function readCalendar(text: string): Component {
  const open: Component[] = [{ name: '', properties: {}, parts: [] }];
  for (const line of contentLines(text)) {
    const [, name, value] = /^([A-Z-]+):(.*)$/s.exec(line)!;
    const current = open.at(-1)!;
    if (name === 'BEGIN') open.push({ name: value!, properties: {}, parts: [] });
    else if (name === 'END') {
      expect(value).toBe(current.name);
      open.pop();
      open.at(-1)!.parts.push(current);
    } else {
      expect(current.properties).not.toHaveProperty(name!);
      current.properties[name!] = value!;
    }
  }
  expect(open).toHaveLength(1);
  return open[0]!.parts[0]!;
}

/** Text as 3.3.11 reads it; a comma or a semicolon that is not escaped is a fault. */
function textOf(value: string): string {
  expect(value.replaceAll(/\\[\\;,nN]/g, '')).not.toMatch(/[\\;,]/);
  return value.replaceAll(/\\([\\;,nN])/g, (_, c: string) => (c.toLowerCase() === 'n' ? '\n' : c));
}

const utcOf = (at: string) => `${new Date(at).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;

describe('the calendar of a plan', () => {
  const calendar = readCalendar(writeCalendar(PLAN, { aheadS: 90 }));

  test('has what the standard requires of a calendar', () => {
    expect(calendar.name).toBe('VCALENDAR');
    expect(calendar.properties).toMatchObject({ VERSION: '2.0' });
    expect(calendar.properties.PRODID).toMatch(/./);
  });

  test('has an event for setting up, one a cue and one for the last frame, at their instants in UTC', () => {
    // 19:10, 19:30:12 and 19:30:24 with an offset of two hours.
    expect(calendar.parts.map(({ name, properties }) => [name, properties.DTSTART])).toEqual([
      ['VEVENT', '20260912T171000Z'],
      ['VEVENT', '20260912T173012Z'],
      ['VEVENT', '20260912T173024Z'],
      ['VEVENT', utcOf(PLAN.summary.endAt)],
    ]);
  });

  test('stamps events with the start of the plan, not with the time of writing', () => {
    expect(calendar.parts.map(({ properties }) => properties.DTSTAMP)).toEqual([
      '20260912T173000Z',
      '20260912T173000Z',
      '20260912T173000Z',
      '20260912T173000Z',
    ]);
  });

  test('setting up lasts until the start', () => {
    const [setUp] = calendar.parts;
    expect(setUp!.properties.DTEND).toBe('20260912T173000Z');
    expect(textOf(setUp!.properties.SUMMARY!)).toBe('Be set up');
    expect(textOf(setUp!.properties.DESCRIPTION!)).toMatch(
      /\nFirst setting: 1\/30, ISO 100, f\/5\.6, ND 0\.9$/,
    );
  });

  test('says what to do and what stands after it', () => {
    const [, first] = calendar.parts;
    expect(textOf(first!.properties.SUMMARY!)).toBe('Shutter 1/30 → 1/250, Filter ND 0.9 → none');
    expect(textOf(first!.properties.DESCRIPTION!)).toBe(
      'Slipway; gulls, and a lamp \\ "Östra bron"\nFrame 3\nThen: 1/250, ISO 100, f/5.6, no filter',
    );
    expect(first!.properties.GEO).toBe('57.050000;9.920000');
  });

  test('rings half an hour before set-up, before each cue, and at the last frame', () => {
    const triggers = ['-PT1800S', '-PT90S', '-PT90S', '-PT0S'];
    for (const [i, event] of calendar.parts.entries()) {
      expect(
        event.parts.map(({ name, properties }) => [name, properties.ACTION, properties.TRIGGER]),
      ).toEqual([['VALARM', 'DISPLAY', triggers[i]]]);
      expect(event.parts[0]!.properties.DESCRIPTION).toBe(event.properties.SUMMARY);
    }
  });

  test('tells its events apart, and those of another shoot', () => {
    const ids = (plan: PlanMade) =>
      readCalendar(writeCalendar(plan)).parts.map(({ properties }) => properties.UID!);
    const other = { ...PLAN, shoot: { ...PLAN.shoot, date: '2026-09-13' } };
    expect(new Set([...ids(PLAN), ...ids(other)]).size).toBe(8);
    expect(ids(PLAN)).toEqual(ids(PLAN));
  });

  // What a calendar does with events of a name that it has: it takes the new one (RFC 5545, 3.8.4.7).
  test('of a changed plan takes the place of the old, and leaves no old alarm where it has as many cues', () => {
    const imported = new Map<string, string>();
    const take = (plan: PlanMade) => {
      for (const { properties } of readCalendar(writeCalendar(plan)).parts) {
        imported.set(properties.UID!, properties.DTSTART!);
      }
    };
    const later = (ms: number) => (cue: PlanMade['cues'][number]) => ({
      ...cue,
      frame: cue.frame - 1,
      at: new Date(Date.parse(cue.at) + ms).toISOString(),
    });
    take(PLAN);
    const moved = { ...PLAN, cues: PLAN.cues.map(later(6000)) };
    take(moved);
    expect([...imported.values()]).toEqual(
      readCalendar(writeCalendar(moved)).parts.map(({ properties }) => properties.DTSTART),
    );
    expect(imported.size).toBe(4);
  });
});

test('seconds have their unit, and texts of another language take the place of the English', () => {
  const changes = [{ control: 'shutter' as const, from: '1/2', to: '2' }];
  const plan = { ...PLAN, cues: [{ ...PLAN.cues[0]!, changes }] };
  const [, cue] = readCalendar(writeCalendar(plan)).parts;
  expect(textOf(cue!.properties.SUMMARY!)).toBe('Shutter 1/2 → 2 s');
  const texts = {
    language: 'de',
    setUp: { summary: 'Aufbau, gleich', description: 'a' },
    cues: [{ summary: 'Zeit', description: 'b' }],
    end: { summary: 'Ende', description: 'c' },
  };
  const other = readCalendar(writeCalendar(plan, { texts }));
  expect(other.properties.PRODID).toMatch(/\/\/DE$/);
  expect(other.parts.map(({ properties }) => textOf(properties.SUMMARY!))).toEqual([
    'Aufbau, gleich',
    'Zeit',
    'Ende',
  ]);
  expect(() => writeCalendar(PLAN, { texts })).toThrow('texts.cues must be one a cue, 2, got 1');
});

test('an alarm further ahead than a day, or behind, is refused', () => {
  expect(() => writeCalendar(PLAN, { aheadS: 86_401 })).toThrow('aheadS must be from 0 to 86400, got 86401');
  expect(() => writeCalendar(PLAN, { aheadS: -1 })).toThrow('aheadS must be from 0 to 86400, got -1');
  expect(() => writeCalendar(PLAN, { aheadS: [60, -1] })).toThrow('aheadS must be from 0 to 86400, got -1');
  expect(() => writeCalendar(PLAN, { travelS: -1 })).toThrow('travelS must be from 0 to 86400, got -1');
});

test('any title comes back whole, in lines of at most 75 octets that cut no character', () => {
  let folded = 0;
  const title = fc.string({
    unit: fc.constantFrom('a', ' ', ',', ';', '\\', 'é', '→', '🌅', ':', '"'),
    maxLength: 120,
    size: 'max',
  });
  fc.assert(
    fc.property(title, (text) => {
      const ics = writeCalendar({ ...PLAN, shoot: { ...PLAN.shoot, title: text } });
      for (const line of ics.split('\r\n')) {
        expect(octets(line)).toBeLessThanOrEqual(75);
        // Half a surrogate pair would have become U+FFFD on the way through bytes.
        expect(new TextDecoder().decode(new TextEncoder().encode(line))).toBe(line);
        if (line.startsWith(' ')) folded++;
      }
      const description = textOf(readCalendar(ics).parts[1]!.properties.DESCRIPTION!);
      expect(description.replace(/\n?Frame 3\nThen: .*$/, '')).toBe(text);
    }),
    { seed: 20260912, numRuns: 200 },
  );
  expect(folded).toBeGreaterThan(100);
});

test('a line is cut where the standard would have it, after 75 octets and no sooner', () => {
  const long = writeCalendar({ ...PLAN, shoot: { ...PLAN.shoot, title: 'a'.repeat(200) } });
  const cut = long.split('\r\n').filter((_, i, lines) => lines[i + 1]?.startsWith(' '));
  expect(cut.length).toBeGreaterThan(0);
  for (const line of cut.filter((each) => /^[ -~]*$/.test(each))) expect(octets(line)).toBe(75);
});
