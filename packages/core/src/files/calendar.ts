// A plan as a calendar, so that a telephone rings for leaving, for each cue and at the end.
// Source: docs/sources.md#rfc5545.

import { within } from '../check.js';
import { hold, onlyKeys } from '../hold.js';
import { checkMade } from '../plan/plan-check.js';
import type { PlanFrame, PlanMade } from '../plan/types.js';
import { parseRfc3339 } from '../sky/clock.js';

/** What one event says. */
export interface CalendarText {
  /** The one line a telephone shows. */
  readonly summary: string;
  /** What is seen when it is opened; lines end in a line feed. */
  readonly description: string;
}

/** What the events of a plan say, in any language. */
export interface CalendarTexts {
  /** Of the texts, as in RFC 5646: "en". */
  readonly language: string;
  /** For the time by which to be set up. */
  readonly setUp: CalendarText;
  /** One for each cue of the plan. */
  readonly cues: readonly CalendarText[];
  /** For the last frame. */
  readonly end: CalendarText;
}

/** How a calendar is written. */
export interface CalendarOptions {
  /** Seconds by which a cue's alarm rings early, 0 to 86400, default 60; a list for several alarms a cue, an empty one for none. */
  readonly aheadS?: number | readonly number[] | undefined;
  /** Seconds to the place, 0 to 86400: the alarm for setting up rings so long before it; default 1800. */
  readonly travelS?: number | undefined;
  /** What the events say; default plain English. */
  readonly texts?: CalendarTexts | undefined;
}

/**
 * Calendar text: an event with an alarm for each cue, one for the time by which to be set up, which lasts until the
 * start, and one for the last frame. Alarms ring `aheadS` seconds before a cue, `travelS` before the time to be set up,
 * and at the last frame. Source: RFC 5545, iCalendar (2009).
 *
 * The same plan always gives the same text: events are stamped with the plan's start, not with the time of
 * writing. Cues are known by their order: of a plan made again for the same shoot a calendar replaces the
 * events; where that has fewer cues, the last of the old ones stay until they are deleted.
 *
 * @param plan from {@link planShoot} or {@link readPlan}
 * @param options `aheadS`, whole seconds from 0 to 86400, rounded, or a list of them, 60 where none is given; `travelS`,
 *   the same, 1800 where none is given; `texts`, what the events say, plain English where none are given
 * @returns an iCalendar file; lines end in CRLF
 * @throws RangeError on any other aheadS or travelS, a time in the plan that is none, or texts that are not one a cue
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { writeCalendar } from '@evenfall/core';
 *
 * const text = writeCalendar(plan, { aheadS: 90 });
 * text.slice(0, 15); // → 'BEGIN:VCALENDAR'
 * text.match(/TRIGGER:-PT90S/g)?.length; // → plan.cues.length
 * ```
 */
export function writeCalendar(plan: PlanMade, options: CalendarOptions = {}): string {
  checkMade(plan);
  hold('options', options, onlyKeys('aheadS', 'travelS', 'texts'));
  const { aheadS = 60, travelS = 1800, texts } = options;
  const leads = typeof aheadS === 'number' ? [aheadS] : aheadS;
  const ahead = leads.map((lead) => Math.round(within('aheadS', lead, 0, 86_400)));
  const travel = Math.round(within('travelS', travelS, 0, 86_400));
  const { setUpAt, startAt, endAt } = plan.summary;
  const { language, setUp, cues, end } = texts ?? englishTexts(plan);
  if (cues.length !== plan.cues.length) {
    throw new RangeError(`texts.cues must be one a cue, ${plan.cues.length}, got ${cues.length}`);
  }
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:-//Evenfall//evenfall//${language.toUpperCase()}`,
    'CALSCALE:GREGORIAN',
    ...event(plan, 'set-up', setUpAt, `DTEND:${utc(startAt)}`, setUp, [travel]),
    // By their order: a plan made again has its cues at other frames, and those of the old one would ring on.
    ...plan.cues.flatMap(({ at }, i) => event(plan, `cue-${i + 1}`, at, 'DURATION:PT1M', cues[i]!, ahead)),
    ...event(plan, 'end', endAt, 'DURATION:PT1M', end, [0]),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function event(
  { shoot: { title, place, date, direction }, summary }: PlanMade,
  name: string,
  at: string,
  length: string,
  { summary: told, description }: CalendarText,
  leadsS: readonly number[],
): string[] {
  const shootId = fnv1a(`${title}|${place.latitudeDeg}|${place.longitudeDeg}|${date}|${direction}`);
  return [
    'BEGIN:VEVENT',
    `UID:${shootId}-${name}@evenfall`,
    `DTSTAMP:${utc(summary.startAt)}`,
    `DTSTART:${utc(at)}`,
    length,
    `SUMMARY:${escaped(told)}`,
    `DESCRIPTION:${escaped(description)}`,
    `GEO:${place.latitudeDeg.toFixed(6)};${place.longitudeDeg.toFixed(6)}`,
    'TRANSP:TRANSPARENT',
    ...leadsS.flatMap((leadS) => [
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      `TRIGGER:-PT${leadS}S`,
      `DESCRIPTION:${escaped(told)}`,
      'END:VALARM',
    ]),
    'END:VEVENT',
  ];
}

const CONTROL_NAMES = { shutter: 'Shutter', iso: 'ISO', aperture: 'Aperture', filter: 'Filter' } as const;

function englishTexts({ shoot: { title }, cues, frames }: PlanMade): CalendarTexts {
  const lead = title === '' ? [] : [title];
  const text = (summary: string, lines: readonly string[]) => ({
    summary,
    description: [...lead, ...lines].join('\n'),
  });
  return {
    language: 'en',
    setUp: text('Be set up', [`First setting: ${calendarSetting(frames[0]!)}`]),
    end: text('Last frame', [`Frame ${frames.length}`]),
    cues: cues.map(({ frame, changes }) =>
      text(
        changes
          .map(({ control, from, to }) => {
            const [old, next] = control === 'shutter' ? [shutterText(from), shutterText(to)] : [from, to];
            return `${CONTROL_NAMES[control]} ${old} → ${next}`;
          })
          .join(', '),
        // People count frames from 1.
        [`Frame ${frame + 1}`, `Then: ${calendarSetting(frames[frame]!)}`],
      ),
    ),
  };
}

function shutterText(label: string): string {
  return label.includes('/') ? label : `${label} s`;
}

function calendarSetting({ shutter, aperture, iso, filters }: PlanFrame): string {
  const glass = filters.length > 0 ? filters.join(' + ') : 'no filter';
  return `${shutterText(shutter)}, ISO ${iso}, f/${aperture}, ${glass}`;
}

/** 20260912T190400Z: to the whole second, never later than the instant. */
function utc(at: string): string {
  const ms = parseRfc3339(at);
  if (ms === undefined) throw new RangeError(`at must be a time with its offset, got "${at}"`);
  return `${new Date(ms).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
}

function escaped(text: string): string {
  return text.replaceAll(/[\\;,]/g, '\\$&').replaceAll('\n', '\\n');
}

const LINE_OCTETS = 75;

/** Cuts a line into pieces of at most 75 octets of UTF-8, each but the first led by a space; no character is cut. */
function folded(line: string): string {
  let text = '';
  let octets = 0;
  for (const character of line) {
    const size = utf8Octets(character);
    if (octets + size > LINE_OCTETS) {
      text += '\r\n ';
      octets = 1;
    }
    text += character;
    octets += size;
  }
  return text;
}

function utf8Octets(character: string): number {
  const code = character.codePointAt(0)!;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}

/** 32-bit FNV-1a over UTF-16 units, as hexadecimal: tells shoots apart, keeps no secret. Source: FNV-1a, by Fowler, Noll and Vo. */
function fnv1a(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
