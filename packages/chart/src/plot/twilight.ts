// Daylight, the three twilights and night as stretches of the time axis.
// Source: docs/sources.md#sun-events.

import { instantMs } from '../text/local-time.js';
import type { Moment } from './time-axis.js';

/** How dark it is, by the sun's altitude: twilights at 6°, 12° and 18° below the horizon, sunrise and sunset at 50′ below, as almanacs have them. */
export type TwilightName = 'day' | 'civil' | 'nautical' | 'astronomical' | 'night';

const NAMES: readonly TwilightName[] = ['day', 'civil', 'nautical', 'astronomical', 'night'];

/** Lowest true altitude of the sun's centre, degrees, that still is day where nothing raises the observer. */
const DAY_FLOOR_DEG = -0.833;

export interface TwilightBand {
  readonly name: TwilightName;
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * The stretches in order of time, each ending where the next begins; borders linear between moments.
 *
 * @param dayFloorDeg the sun's altitude at sunset or sunrise, lower where the observer stands high
 */
export function twilightBands(moments: readonly Moment[], dayFloorDeg = DAY_FLOOR_DEG): TwilightBand[] {
  const floors = [dayFloorDeg, -6, -12, -18, Number.NEGATIVE_INFINITY];
  const rank = (sunAltitudeDeg: number) => floors.findIndex((floorDeg) => sunAltitudeDeg >= floorDeg);
  const bands: TwilightBand[] = [];
  let fromMs = instantMs(moments[0]!.at);
  for (let i = 1; i < moments.length; i++) {
    const a = moments[i - 1]!;
    const b = moments[i]!;
    const way = Math.sign(rank(b.sunAltitudeDeg) - rank(a.sunAltitudeDeg));
    for (let r = rank(a.sunAltitudeDeg); r !== rank(b.sunAltitudeDeg); r += way) {
      const borderDeg = floors[way > 0 ? r : r - 1]!;
      const share = (a.sunAltitudeDeg - borderDeg) / (a.sunAltitudeDeg - b.sunAltitudeDeg);
      const toMs = instantMs(a.at) + share * (instantMs(b.at) - instantMs(a.at));
      bands.push({ name: NAMES[r]!, fromMs, toMs });
      fromMs = toMs;
    }
  }
  const last = moments.at(-1)!;
  bands.push({ name: NAMES[rank(last.sunAltitudeDeg)]!, fromMs, toMs: instantMs(last.at) });
  return bands;
}
