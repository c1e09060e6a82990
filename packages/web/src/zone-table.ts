// The table of time zones, which is large and of the older kind of module: what it takes to read one comes with it, and
// what is said of a place near a border.

import { clocksNear } from '@evenfall/core';
import zoneAt from '@photostructure/tz-lookup';
import { html, nothing } from 'lit-html';
import { put, shoot } from './state/shoot.js';
import { words } from './words/words.js';

export { zoneAt };

interface BorderWords {
  near(here: string, offset: string): string;
  use(zone: string, offset: string): string;
}

const ENGLISH: BorderWords = {
  near: (here, offset) =>
    `Near a border: all times are those of ${here} (UTC${offset}), while clocks within 25 km show another. Is it the one your clock shows?`,
  use: (zone, offset) => `No, ${zone} (UTC${offset})`,
};

const LANGUAGES: Readonly<Record<string, BorderWords>> = {
  de: {
    near: (here, offset) =>
      `Nahe einer Grenze: Alle Zeiten sind die von ${here} (UTC${offset}), im Umkreis von 25 km gehen Uhren anders. Ist es die Zeit, die deine Uhr zeigt?`,
    use: (zone, offset) => `Nein, ${zone} (UTC${offset})`,
  },
};

/** Beside the zone that the coordinates gave; nothing where no border is near, or another zone has been chosen. */
export function borderView() {
  const { place, date } = shoot.value;
  if (place.timeZone !== zoneAt(place.latitudeDeg, place.longitudeDeg)) return nothing;
  const { here, others } = clocksNear(place, date, zoneAt);
  if (others.length === 0) return nothing;
  const w = LANGUAGES[words().language] ?? ENGLISH;
  return html`<p class="help" role="status"><strong>${w.near(place.timeZone, here.offset)}</strong></p>
    ${others.map(
      ({ timeZone, offset }) =>
        html`<button type="button" class="wide" @click=${() => put(['place', 'timeZone'], timeZone)}>
          ${w.use(timeZone ?? '', offset)}
        </button>`,
    )}`;
}
