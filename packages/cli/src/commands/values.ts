// What an option takes, read from the text behind it.

import { InvalidArgumentError } from 'commander';

/** Reads a value of which something holds; anything else is refused with what to give. */
const reader =
  (read: (text: string) => number | undefined) =>
  (holds: (value: number) => boolean, give: string) =>
  (text: string): number => {
    const value = read(text);
    if (value !== undefined && holds(value)) return value;
    throw new InvalidArgumentError(give);
  };

const aNumber = reader((text) => (text.trim() === '' ? undefined : Number(text)));
const aTime = reader(timeOf);

/** Seconds ahead of something, up to a day. */
export const secondsAhead = aNumber((s) => s >= 0 && s <= 86_400, 'Give seconds from 0 to 86400.');

export function leadsAhead(text: string): number[] {
  return text === 'none' ? [] : text.split(',').map(secondsAhead);
}

export const travel = aTime((s) => s <= 86_400, 'Give a time up to a day, such as 45m, 1h30m or 0.');

export const meterEv = aNumber((ev) => ev > 0 && ev <= 3, 'Give stops above 0, at most 3.');

export const dayCount = reader((text) => (/^\d+$/.test(text) ? Number(text) : undefined))(
  (days) => days >= 1 && days <= 366,
  'Give a whole number from 1 to 366.',
);

/** A time above 0, as seconds. */
export const seconds = aTime(
  (s) => s > 0 && s <= 1e8,
  'Give a time above 0, such as 5400, 90m, 1h30m or 45s.',
);

export const gap = aTime((s) => s <= 3600, 'Give a time from 0 to an hour, such as 2, 0.5s or 1m.');

export const rate = aNumber((fps) => fps > 0 && fps <= 1000, 'Give frames a second above 0, at most 1000.');

export const clockFast = aNumber((s) => Math.abs(s) <= 1e9, 'Give seconds, below 0 where the clock is slow.');

export const most = aNumber((stops) => stops >= 0.01 && stops <= 6, 'Give stops from 0.01 to 6.');

/** "5400", "90m", "1h30m", "45s", "1h 30min", "2 s" as seconds; undefined for what is no time. */
function timeOf(text: string): number | undefined {
  const part = '(\\d+(?:\\.\\d+)?|\\.\\d+)';
  const parts = new RegExp(`^(?:${part}h)?(?:${part}m(?:in)?)?(?:${part}s?)?$`).exec(
    text.replaceAll(/\s/g, ''),
  );
  if (parts === null || parts[0] === '') return undefined;
  const [h = 0, m = 0, s = 0] = parts.slice(1).map((each) => Number(each ?? 0));
  return 3600 * h + 60 * m + s;
}
