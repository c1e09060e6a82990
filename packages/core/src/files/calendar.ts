// A plan's cues as a calendar, so that a telephone rings for each one.
// Source: docs/sources.md#rfc5545.

import { within } from '../check.js';
import { parseRfc3339 } from '../clock.js';
import type { PlanCue, PlanFrame, PlanMade } from '../plan-format.js';

/**
 * Calendar text: an event with an alarm for each cue, `aheadS` seconds before it.
 *
 * The same plan always gives the same text: events are stamped with the plan's start, not with the time of
 * writing, and a plan made again for the same shoot keeps the identity of its events, so that a calendar
 * replaces them.
 *
 * @param aheadS whole seconds from 0 to 86400, rounded
 * @throws RangeError on any other aheadS, or a time in the plan that is none
 */
export function writeCalendar(plan: PlanMade, { aheadS = 60 }: { readonly aheadS?: number } = {}): string {
  const ahead = Math.round(within('aheadS', aheadS, 0, 86_400));
  const { title, place, date, direction } = plan.shoot;
  const stamp = utc(plan.summary.startAt);
  const shootId = fnv1a(`${title}|${place.latitudeDeg}|${place.longitudeDeg}|${date}|${direction}`);
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Evenfall//evenfall//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    ...plan.cues.flatMap((cue) => [
      'BEGIN:VEVENT',
      `UID:${shootId}-cue-${cue.frame}@evenfall`,
      `DTSTAMP:${stamp}`,
      `DTSTART:${utc(cue.at)}`,
      'DURATION:PT1M',
      `SUMMARY:${escaped(changesText(cue))}`,
      `DESCRIPTION:${escaped(describe(title, cue, plan.frames[cue.frame]!))}`,
      `GEO:${place.latitudeDeg.toFixed(6)};${place.longitudeDeg.toFixed(6)}`,
      'TRANSP:TRANSPARENT',
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      `TRIGGER:-PT${ahead}S`,
      `DESCRIPTION:${escaped(changesText(cue))}`,
      'END:VALARM',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

const CONTROL_NAMES = { shutter: 'Shutter', iso: 'ISO', aperture: 'Aperture', filter: 'Filter' } as const;

function changesText({ changes }: PlanCue): string {
  return changes.map(({ control, from, to }) => `${CONTROL_NAMES[control]} ${from} → ${to}`).join(', ');
}

function describe(title: string, cue: PlanCue, after: PlanFrame): string {
  const filters = after.filters.length > 0 ? after.filters.join(' + ') : 'no filter';
  const setting = `Then: ${after.shutter} s, f/${after.aperture}, ISO ${after.iso}, ${filters}`;
  // People count frames from 1.
  return [...(title === '' ? [] : [title]), `Frame ${cue.frame + 1}`, setting].join('\n');
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

/** 32-bit FNV-1a over UTF-16 units, as hexadecimal: tells shoots apart, keeps no secret. Source: docs/sources.md#fnv. */
function fnv1a(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
