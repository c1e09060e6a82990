// What the sky and the clock bring that the light of a plan does not follow, or that a person may trip over.

import { rfc3339 } from '../sky/clock.js';
import { eclipseAt } from '../sky/eclipse.js';
import type { Forecast } from './forecast.js';
import type { Note } from './note-context.js';

/** Eclipses within the shoot, one note for each body. */
export function eclipseNotes({ sky, times, zone }: Forecast): Note[] {
  const found = sky.map((position, i) => eclipseAt(position, times[i]));
  return (['sun', 'moon'] as const).flatMap((body): Note[] => {
    const during = found.flatMap((eclipse, i) => (eclipse?.body === body ? [{ eclipse, i }] : []));
    if (during.length === 0) return [];
    const at = (i: number) => rfc3339(times[i], zone);
    const magnitude = during.reduce((most, { eclipse }) => Math.max(most, eclipse.magnitude), 0);
    const [fromAt, toAt] = [at(during[0]!.i), at(during[during.length - 1]!.i)];
    return [{ level: 'warning', kind: 'eclipse', body, magnitude, fromAt, toAt }];
  });
}

/** The clocks change during the shoot. */
export function clockNotes({ times, zone }: Forecast): Note[] {
  const offset = (i: number) => zone.offsetMin(times[i]);
  const last = times.length - 1;
  if (offset(0) === offset(last)) return [];
  let [before, after] = [0, last];
  while (after - before > 1) {
    const middle = (before + after) >> 1;
    if (offset(middle) === offset(0)) before = middle;
    else after = middle;
  }
  const byMin = offset(last) - offset(0);
  return [
    { level: 'caution', kind: 'clocks-change', byMin, frame: after + 1, at: rfc3339(times[after], zone) },
  ];
}
