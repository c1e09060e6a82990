// Times as the plan writes them: RFC 3339 text with the place's offset. The clock text is a slice of it;
// positions come from the instant. Nothing here knows a zone.

import type { Words } from './words.js';

/** Instant of an RFC 3339 time, UTC epoch milliseconds. Throws RangeError where it is none. */
export function instantMs(at: string): number {
  const ms = Date.parse(at);
  if (Number.isNaN(ms)) throw new RangeError(`time must be RFC 3339, got "${at}"`);
  return ms;
}

/** Local clock text, "18:42" or, with seconds, "18:42:13"; "6:42 pm" where the words count twelve hours. */
export function clockText(at: string, withSeconds: boolean, words: Words): string {
  return words.clock(at.slice(11, withSeconds ? 19 : 16));
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

/** Clock text of an instant under an offset, as `clockText` writes it. */
export function clockTextOfMs(ms: number, localOffsetMs: number, words: Words): string {
  return words.clock(new Date(ms + localOffsetMs).toISOString().slice(11, 16));
}

/** Whether any of these times falls between whole minutes. */
export function needsSeconds(times: readonly string[]): boolean {
  return times.some((at) => at.slice(17, 19) !== '00');
}
