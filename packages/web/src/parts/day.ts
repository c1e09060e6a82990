// The day of a plan, said wherever it is not today.

import type { PlanMade } from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { atOffset } from '../chart/time-ticks.js';
import { words } from '../words/words.js';
import { dayText } from './day-text.js';

// A page that stays open passes midnight, which falls on a quarter of an hour of any zone's clock (the tz database).
const QUARTER_MS = 900_000;
const quarter = () => Math.floor(Date.now() / QUARTER_MS) * QUARTER_MS;
const quarterMs = signal(quarter());
setInterval(() => {
  quarterMs.value = quarter();
}, 20_000);

/** "Saturday 14 November", with the year where it is another. */
function dayName(date: string, today: string, more: Intl.DateTimeFormatOptions): string {
  return dayText(date, {
    day: 'numeric',
    month: 'long',
    ...(date.slice(0, 4) !== today.slice(0, 4) && { year: 'numeric' }),
    ...more,
  });
}

/** First and last frame. */
type Days = { readonly summary: Pick<PlanMade['summary'], 'startAt' | 'endAt'> };

/** The date at the plan's place. */
const todayAt = ({ summary }: Days, atMs: number) => atOffset(atMs, summary.startAt).slice(0, 10);

/** Where a plan is of another day than the one it is at its place: "starts Saturday 14 November", "was on 3 October". */
export function otherDay(plan: Days, atMs: number): string | undefined {
  const today = todayAt(plan, atMs);
  const [first, last] = [plan.summary.startAt.slice(0, 10), plan.summary.endAt.slice(0, 10)];
  const w = words().field;
  if (first > today) return w.startsOn(dayName(first, today, { weekday: 'long' }));
  return last < today ? w.wasOn(dayName(last, today, {})) : undefined;
}

/** The same by the device's clock. */
export const otherDayNow = (plan: Days) => otherDay(plan, quarterMs.value);

/** How far off that other day is: "tomorrow", "in 12 days". */
export function daysOffNow(plan: Days): string | undefined {
  if (otherDayNow(plan) === undefined) return undefined;
  const dayMs = (at: string) => Date.parse(`${at.slice(0, 10)}T00:00Z`);
  const days = (dayMs(plan.summary.startAt) - dayMs(todayAt(plan, quarterMs.value))) / 86_400_000;
  return new Intl.RelativeTimeFormat(words().dateLocale, { numeric: 'auto' }).format(days, 'day');
}

/** "12 Sept, " before the hours of another day, nothing before today's. */
export function shortDay(plan: Days): string {
  if (otherDayNow(plan) === undefined) return '';
  const today = todayAt(plan, quarterMs.value);
  return `${dayName(plan.summary.startAt.slice(0, 10), today, { month: 'short' })}, `;
}
