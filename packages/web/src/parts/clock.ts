// Times of day as the page writes them. It keeps where the clocks go back, so that whoever shows a time need not know.

import { type ClocksBack, clockOver } from '@evenfall/core';
import { signal } from '@preact/signals-core';

/** Of the plan on the screen. */
export const clocksBack = signal<ClocksBack | undefined>(undefined);

/** Local clock of an RFC 3339 time: "18:42:13", or "18:42" without seconds; with the offset where it comes twice. */
export function clock(at: string, withSeconds = true): string {
  return clockOver(clocksBack.value)(at, withSeconds);
}

/** "+02:00" of a time that comes twice, for where it stands in a control; else nothing. */
export const offsetOfTwo = (at: string) => clockOver(clocksBack.value, () => '')(at).trim();
