// Times as the plan writes them: RFC 3339 text with the place's offset. The clock text is a slice of it;
// positions come from the instant. Nothing here knows a zone.

import { clockOver, type PlanMade } from '@evenfall/core';
import type { Words } from './words.js';

/** Instant of an RFC 3339 time, UTC epoch milliseconds. Throws RangeError where it is none. */
export function instantMs(at: string): number {
  const ms = Date.parse(at);
  if (Number.isNaN(ms)) throw new RangeError(`time must be RFC 3339, got "${at}"`);
  return ms;
}

/** Words whose clock gives the offset with every time that comes twice in what they are to tell of. */
export function wordsOver({ clocksBack }: Pick<PlanMade, 'clocksBack'>, words: Words): Words {
  return clocksBack === undefined ? words : { ...words, clock: clockOver(clocksBack, words.clock) };
}

/** Local clock text, "18:42" or, with seconds, "18:42:13"; "6:42 pm" where the words count twelve hours; with the offset where it comes twice. */
export function clockText(at: string, withSeconds: boolean, words: Words): string {
  return words.clock(at, withSeconds);
}

/** Local date, "2026-10-18". */
export function dateText(at: string): string {
  return at.slice(0, 10);
}

/** Offset of local time from UTC in milliseconds; east is positive. */
export function offsetMs(at: string): number {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(at) ?? [];
  if (sign === undefined) return 0;
  return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60_000;
}

/** Clock text of an instant under the offset of another time, as `clockText` writes it. */
export function clockTextOfMs(ms: number, offsetOf: string, words: Words): string {
  const shown = new Date(ms + offsetMs(offsetOf)).toISOString().slice(0, 19);
  return words.clock(`${shown}${offsetOf.slice(-6)}`);
}

/** Whether any of these times falls between whole minutes. */
export function needsSeconds(times: readonly string[]): boolean {
  return times.some((at) => at.slice(17, 19) !== '00');
}
