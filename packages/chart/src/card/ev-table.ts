// From the shutter that a camera proposes to the EV that the card asks for.

import type { PlanMade } from '@evenfall/core';
import { shutterText } from '../text/setting.js';
import type { Words } from '../text/words.js';

export interface EvTable {
  readonly head: string;
  readonly cells: readonly { readonly shutter: string; readonly ev: string }[]; // the brightest first
  readonly filters: string; // what to add behind a filter; "" where the plan has none
}

/** Marks a stop apart, as every dial has them, with their exact times. Source: APEX scale of ASA PH2.5-1960 and Exif, marks as libgphoto2 and exiftool list them. */
const STOPS = '1/8000 1/4000 1/2000 1/1000 1/500 1/250 1/125 1/60 1/30 1/15 1/8 1/4 0.5 1 2 4 8 15 30'.split(
  ' ',
);
const FIRST_TV = 13; // of 1/8000, exactly 1/8192

/** Of the shutters that the evening's light gives at ISO 100 and the aperture it begins with. */
export function evTable({ frames, summary }: PlanMade, words: Words): EvTable {
  const { aperture, fNumber } = frames[0]!;
  const av = 2 * Math.log2(fNumber);
  const [low, high] = [summary.sceneFromEv100, summary.sceneToEv100].sort((a, b) => a - b) as [
    number,
    number,
  ];
  // APEX: EV = Av + Tv at ISO 100. Source: docs/sources.md#apex.
  const cells = STOPS.map((shutter, i) => ({ shutter: shutterText(shutter), ev100: av + FIRST_TV - i }))
    .filter(({ ev100 }) => ev100 > low - 0.5 && ev100 < high + 0.5)
    .map(({ shutter, ev100 }) => ({ shutter, ev: words.upTo(ev100, 1) }));
  const behind = new Map(
    frames
      .filter(({ filters }) => filters.length > 0)
      .map(({ filters, filterStops }) => [filters.join(' + '), filterStops]),
  );
  const { card } = words;
  return {
    head: card.evTable(aperture),
    cells,
    filters: [...behind].map(([names, stops]) => card.evBehind(names, words.upTo(stops, 1))).join('; '),
  };
}
