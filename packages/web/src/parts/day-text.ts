// A civil day as the page's language writes it.

import { words } from '../words/words.js';

/** Making one takes a hundred times as long as using it. */
const formats = new Map<string, Intl.DateTimeFormat>();

/**
 * @param date YYYY-MM-DD
 * @param options which parts of it, and how
 * @returns an empty text where it is no date
 */
export function dayText(date: string, options: Intl.DateTimeFormatOptions): string {
  const ms = Date.parse(`${date}T00:00Z`);
  if (Number.isNaN(ms)) return '';
  const { dateLocale } = words();
  const key = JSON.stringify([dateLocale, options]);
  const format = formats.get(key) ?? new Intl.DateTimeFormat(dateLocale, { ...options, timeZone: 'UTC' });
  formats.set(key, format);
  return format.format(ms);
}
