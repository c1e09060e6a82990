// What a meter may read at all, whatever the words of the scene turn out to be: the darkest and the brightest frame
// by the sun's altitude.

import { linearAt } from './smooth.js';
import { LAMPS_ON } from './words.js';

/** EV at ISO 100. */
export interface PossibleEv {
  readonly darkEv100: number;
  readonly brightEv100: number;
}

// The extremes of our own model over every word for cloud, facing, night, lamps and surface, with all, half or none of
// the frame sky, 5° to 45° up, ground or walls, without a moon and under a full one, and a stop and a half more on
// either side for weather beyond the words. A lamp-lit street that fills the frame meters EV 7 (docs/sources.md
// #scene-table), so nothing below 9 is too bright. test/core/light/possible.test.ts goes through the words.
const SUN_DEG = [-18, -12, -8, -6, -4, -2, 0, 2, 5, 10, 20, 45, 90];
const DARK_EV100 = [-17.5, -15.1, -10, -6.7, -3.6, -0.9, 1.1, 2.4, 3.7, 5, 6.3, 7.8, 8.5];
const BRIGHT_EV100 = [9, 9, 9, 9, 10.8, 13.3, 15.1, 16.4, 17.7, 18.5, 18.8, 19.2, 19.5];

/** */
export function possibleEv100(sunAltitudeDeg: number): PossibleEv {
  return {
    darkEv100: linearAt(SUN_DEG, DARK_EV100, sunAltitudeDeg),
    brightEv100: linearAt(SUN_DEG, BRIGHT_EV100, sunAltitudeDeg),
  };
}

// While twilight passes, the light of one scene moves against that of another: by up to 2.0 stops a degree of sun at -5°,
// where a clear sky falls and lamps stay, and 2.9 at -10°, where a town lights its clouds and a dark sky falls. With the
// sun higher it is half a stop and less. While public lighting comes on, a lit street gains up to 7.7 stops a degree on a
// scene without lamps under heavy cloud.
const TWILIGHT_EV_PER_DEG = 3;
const LAMPS_COME_ON_EV_PER_DEG = 8;
const TWILIGHT_FROM_DEG = -18;
const TWILIGHT_TO_DEG = 3;

/** Stops by which wrong words for a scene may let it drift off its forecast from one sun to another, >= 0. */
export function wordsDriftEv(sunAltitudeDeg: number, otherSunAltitudeDeg: number): number {
  const low = Math.min(sunAltitudeDeg, otherSunAltitudeDeg);
  const high = Math.max(sunAltitudeDeg, otherSunAltitudeDeg);
  const degWithin = (from: number, to: number) => Math.max(0, Math.min(high, to) - Math.max(low, from));
  const comingOnDeg = degWithin(LAMPS_ON.toSunAltitudeDeg, LAMPS_ON.fromSunAltitudeDeg);
  const twilightDeg = degWithin(TWILIGHT_FROM_DEG, TWILIGHT_TO_DEG);
  return TWILIGHT_EV_PER_DEG * (twilightDeg - comingOnDeg) + LAMPS_COME_ON_EV_PER_DEG * comingOnDeg;
}
