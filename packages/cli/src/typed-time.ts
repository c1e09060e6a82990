// A time of day at the head of a line, however the place writes it, to the instant that is meant.

import { rfc3339, wallToMs, type Zone } from '@evenfall/core';

/** 17:31, 17:31:20, 17h31, 5:31 pm, 17:31 Uhr. */
const CLOCK = /^(\d{1,2})[:h](\d{2})(?::(\d{2}))?(?: ?(am|pm|a\.m\.|p\.m\.|uhr|h))?(?=$| )/i;
/** 5 pm. */
const HOUR = /^(\d{1,2})()() ?(am|pm|a\.m\.|p\.m\.)(?=$| )/i;
/** 1731 or 17.31: only before something else, or alone where no EV is written so. */
const PLAIN = /^(\d{2})\.?(\d{2})()(?: ?(uhr))?(?= )/i;
const ALONE = /^(\d{2})(\d{2})()()$/;

const DAY_MS = 86_400_000;

/**
 * Takes the time off a line. Of the instants that a clock shows so, the one nearest to `nearMs` is meant: a clock of
 * twelve hours needs no half of the day, and nobody types a date.
 *
 * @returns no `atMs` where the line begins with no time, or with one that no clock shows
 */
export function timeTyped(
  line: string,
  { zone, nearMs }: { readonly zone: Zone; readonly nearMs: number },
): { readonly atMs?: number; readonly rest: string } {
  const found = CLOCK.exec(line) ?? HOUR.exec(line) ?? PLAIN.exec(line) ?? ALONE.exec(line);
  if (found === null) return { rest: line };
  const [head, hour, minute, second = '', half = ''] = found;
  const hours = hoursMeant(Number(hour), half.toLowerCase());
  const days = [-1, 0, 1].map((days) => rfc3339(nearMs + days * DAY_MS, zone).slice(0, 10));
  const two = (value: string | number) => String(value || 0).padStart(2, '0');
  const instants = days.flatMap((day) =>
    hours.flatMap((each) =>
      each < 24 && Number(minute) < 60 && Number(second) < 60
        ? wallToMs(day, `${two(each)}:${two(minute!)}:${two(second)}`, zone)
        : [],
    ),
  );
  const [nearest] = instants.sort((a, b) => Math.abs(a - nearMs) - Math.abs(b - nearMs));
  return nearest === undefined ? { rest: line } : { atMs: nearest, rest: line.slice(head.length).trim() };
}

function hoursMeant(hour: number, half: string): number[] {
  const isTwelve = hour >= 1 && hour <= 12;
  if (half.startsWith('a')) return isTwelve ? [hour % 12] : [];
  if (half.startsWith('p')) return isTwelve ? [(hour % 12) + 12] : [];
  return isTwelve && half === '' ? [hour, (hour + 12) % 24] : [hour];
}
