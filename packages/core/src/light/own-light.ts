// Light that the forecast does not know: lamps, a lit town. No weather brightens a scene by more than half a stop, so what
// a reading has above that, and above what the sky had by day, is light of its own: it stays as the sky's comes and goes.

/** The most that weather adds: 95 % of measured minutes (one-minute irradiance of the solar station of DTU, Lyngby, 2015 to 2017). */
const WEATHER_BRIGHTENS_EV = 0.5;
/** A street of lamps that fills the frame (ANSI PH2.7-1973/1986, exposure guide). */
export const BRIGHTEST_LAMPS_EV100 = 7;
/** Above this, and two stops more, lamps are lost in the day. */
const DAYLIGHT_EV100 = BRIGHTEST_LAMPS_EV100 + 2;

/** The offset known at one forecast, as it will be at another. */
export function carriedOffsetEv(
  offsetEv: number,
  skyEv: number, // what the sky alone is brighter by, as far as it was seen by day
  fromEv100: number,
  toEv100: number,
): number {
  const bySkyEv = Math.max(WEATHER_BRIGHTENS_EV, skyEv);
  if (offsetEv <= bySkyEv) return offsetEv;
  const surplus = 2 ** (fromEv100 + offsetEv) - 2 ** (fromEv100 + bySkyEv);
  const own = Math.min(surplus, 2 ** BRIGHTEST_LAMPS_EV100);
  const sky = 2 ** (fromEv100 + offsetEv) - own;
  return Math.log2(sky * 2 ** (toEv100 - fromEv100) + own) - toEv100;
}

/** What the sky alone is brighter by, once a reading has been used. */
export function skyOffsetEv(beforeEv: number, offsetEv: number, sceneEv100: number): number {
  return sceneEv100 > DAYLIGHT_EV100 ? offsetEv : beforeEv;
}
