// Daylight, the three twilights and night as stretches of the time axis.
// Source: docs/sources.md#twilight.

import { instantMs } from './local-time.js';
import type { Moment } from './time-axis.js';

export type TwilightName = 'day' | 'civil' | 'nautical' | 'astronomical' | 'night';

/** Lowest true altitude of the sun's centre, degrees, that still belongs to each. */
const FLOORS: readonly { readonly name: TwilightName; readonly floorDeg: number }[] = [
  { name: 'day', floorDeg: -0.833 },
  { name: 'civil', floorDeg: -6 },
  { name: 'nautical', floorDeg: -12 },
  { name: 'astronomical', floorDeg: -18 },
  { name: 'night', floorDeg: Number.NEGATIVE_INFINITY },
];

export interface TwilightBand {
  readonly name: TwilightName;
  readonly fromMs: number;
  readonly toMs: number;
}

function rank(sunAltitudeDeg: number): number {
  return FLOORS.findIndex(({ floorDeg }) => sunAltitudeDeg >= floorDeg);
}

/** The stretches in order of time, each ending where the next begins; borders linear between moments. */
export function twilightBands(moments: readonly Moment[]): TwilightBand[] {
  const bands: TwilightBand[] = [];
  let fromMs = instantMs(moments[0]!.at);
  for (let i = 1; i < moments.length; i++) {
    const a = moments[i - 1]!;
    const b = moments[i]!;
    const way = Math.sign(rank(b.sunAltitudeDeg) - rank(a.sunAltitudeDeg));
    for (let r = rank(a.sunAltitudeDeg); r !== rank(b.sunAltitudeDeg); r += way) {
      const borderDeg = FLOORS[way > 0 ? r : r - 1]!.floorDeg;
      const share = (a.sunAltitudeDeg - borderDeg) / (a.sunAltitudeDeg - b.sunAltitudeDeg);
      const toMs = instantMs(a.at) + share * (instantMs(b.at) - instantMs(a.at));
      bands.push({ name: FLOORS[r]!.name, fromMs, toMs });
      fromMs = toMs;
    }
  }
  const last = moments.at(-1)!;
  bands.push({ name: FLOORS[rank(last.sunAltitudeDeg)]!.name, fromMs, toMs: instantMs(last.at) });
  return bands;
}
