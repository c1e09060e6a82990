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
  unfit(zone: string, offset: string, here: string, hereOffset: string): string;
}

const ENGLISH: BorderWords = {
  near: (here, offset) =>
    `Near a border: all times are those of ${here} (UTC${offset}), while clocks within 25 km show another. Is it the one your clock shows?`,
  use: (zone, offset) => `No, ${zone} (UTC${offset})`,
  unfit: (zone, offset, here, hereOffset) =>
    `Clocks at this place show ${here} (UTC${hereOffset}); all times here are those of ${zone} (UTC${offset}). Is that meant?`,
};

const LANGUAGES: Readonly<Record<string, BorderWords>> = {
  de: {
    near: (here, offset) =>
      `Nahe einer Grenze: Alle Zeiten sind die von ${here} (UTC${offset}), im Umkreis von 25 km gehen Uhren anders. Ist es die Zeit, die deine Uhr zeigt?`,
    use: (zone, offset) => `Nein, ${zone} (UTC${offset})`,
    unfit: (zone, offset, here, hereOffset) =>
      `An diesem Ort gehen die Uhren nach ${here} (UTC${hereOffset}); alle Zeiten hier sind die von ${zone} (UTC${offset}). Ist das gemeint?`,
  },
};

/**
 * Beside the zone that the coordinates gave: which other is near. Beside another: that it does not fit, where its
 * clocks show another time than those of the place and of all near it.
 */
export function borderView() {
  const { place, date } = shoot.value;
  const w = LANGUAGES[words().language] ?? ENGLISH;
  const zone = zoneAt(place.latitudeDeg, place.longitudeDeg);
  const { here, others } = clocksNear({ ...place, timeZone: zone }, date, zoneAt);
  if (place.timeZone !== zone) {
    if (place.timeZone === undefined) return nothing;
    const own = clocksNear(place, date, () => place.timeZone ?? zone).here.offset;
    if ([here, ...others].some(({ offset }) => offset === own)) return nothing;
    return html`<p class="help" role="status"><strong>${w.unfit(place.timeZone, own, zone, here.offset)}</strong></p>
      <button type="button" class="wide" @click=${() => put(['place', 'timeZone'], zone)}>
        ${w.use(zone, here.offset)}
      </button>`;
  }
  if (others.length === 0) return nothing;
  return html`<p class="help" role="status"><strong>${w.near(place.timeZone, here.offset)}</strong></p>
    ${others.map(
      ({ timeZone, offset }) =>
        html`<button type="button" class="wide" @click=${() => put(['place', 'timeZone'], timeZone)}>
          ${w.use(timeZone ?? '', offset)}
        </button>`,
    )}`;
}
