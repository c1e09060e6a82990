// A zone that was taken from coordinates near a border is doubted aloud.

import { clocksNear, type Shoot } from '@evenfall/core';
import lookUpZone from '@photostructure/tz-lookup';

/** A warning where clocks across a border nearby show another time on the shoot's date; undefined elsewhere. */
export function borderText({ place, date }: Pick<Shoot, 'place' | 'date'>): string | undefined {
  const { here, others } = clocksNear(place, date, lookUpZone);
  if (others.length === 0) return undefined;
  const named = others.map(({ timeZone, offset }) => `${timeZone} (UTC${offset})`).join(', ');
  return `the time zone ${here.timeZone} (UTC${here.offset}) is that of the coordinates, within 25 km of ${named}; if your clock shows the other time, write place.timeZone`;
}
