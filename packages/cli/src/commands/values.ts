// What an option takes, read from the text behind it.

import { InvalidArgumentError } from 'commander';

/** Seconds ahead of something, up to a day. */
export function secondsAhead(text: string): number {
  const seconds = Number(text);
  if (text.trim() !== '' && seconds >= 0 && seconds <= 86_400) return seconds;
  throw new InvalidArgumentError('Give seconds from 0 to 86400.');
}

export function leadsAhead(text: string): number[] {
  return text === 'none' ? [] : text.split(',').map(secondsAhead);
}

export function travel(text: string): number {
  const seconds = timeOf(text);
  if (seconds !== undefined && seconds <= 86_400) return seconds;
  throw new InvalidArgumentError('Give a time up to a day, such as 45m, 1h30m or 0.');
}

export function meterEv(text: string): number {
  const ev = Number(text);
  if (text.trim() !== '' && ev > 0 && ev <= 3) return ev;
  throw new InvalidArgumentError('Give stops above 0, at most 3.');
}

export function dayCount(text: string): number {
  const days = Number(text);
  if (/^\d+$/.test(text) && days >= 1 && days <= 366) return days;
  throw new InvalidArgumentError('Give a whole number from 1 to 366.');
}

/** "5400", "90m", "1h30m", "45s", "1h 30min", "2 s" as seconds; undefined for what is no time. */
export function timeOf(text: string): number | undefined {
  const part = '(\\d+(?:\\.\\d+)?|\\.\\d+)';
  const parts = new RegExp(`^(?:${part}h)?(?:${part}m(?:in)?)?(?:${part}s?)?$`).exec(
    text.replaceAll(/\s/g, ''),
  );
  if (parts === null || parts[0] === '') return undefined;
  const [h = 0, m = 0, s = 0] = parts.slice(1).map((each) => Number(each ?? 0));
  return 3600 * h + 60 * m + s;
}

/** A time above 0, as seconds. */
export function seconds(text: string): number {
  const total = timeOf(text);
  if (total !== undefined && total > 0 && total <= 1e8) return total;
  throw new InvalidArgumentError('Give a time above 0, such as 5400, 90m, 1h30m or 45s.');
}

export function gap(text: string): number {
  const value = timeOf(text);
  if (value !== undefined && value <= 3600) return value;
  throw new InvalidArgumentError('Give a time from 0 to an hour, such as 2, 0.5s or 1m.');
}

export function rate(text: string): number {
  const value = Number(text);
  if (value > 0 && value <= 1000) return value;
  throw new InvalidArgumentError('Give frames a second above 0, at most 1000.');
}

export function clockFast(text: string): number {
  const seconds = Number(text);
  if (text.trim() !== '' && Math.abs(seconds) <= 1e9) return seconds;
  throw new InvalidArgumentError('Give seconds, below 0 where the clock is slow.');
}

export function most(text: string): number {
  const stops = Number(text);
  if (text.trim() !== '' && stops >= 0.01 && stops <= 6) return stops;
  throw new InvalidArgumentError('Give stops from 0.01 to 6.');
}
