// How sure a forecast is: the stops by which a frame's light may lie below and above it.
// Source: docs/sources.md#weather-spread.

import type { Cloud } from './cloud.js';
import { driftEv } from './drift.js';
import { type FrameParts, luminanceUnder, type SkyState, skylightUnder, skyState } from './frame-light.js';
import { type CloudKnown, skyOfLoss, weatherRange } from './weather.js';

/** The range in which the light is likely to lie. */
export interface EvBand {
  /** 5 % are darker, EV at ISO 100. */
  readonly lowEv100: number;
  /** 5 % are brighter, EV at ISO 100. */
  readonly highEv100: number;
}

/** The same as stops around a forecast; lowEv <= 0 <= highEv. */
export interface Spread {
  readonly lowEv: number; // darker, <= 0
  readonly highEv: number; // brighter, >= 0
}

/** The band of a spread around a forecast. */
export function bandAround(ev100: number, { lowEv, highEv }: Spread): EvBand {
  return { lowEv100: ev100 + lowEv, highEv100: ev100 + highEv };
}

/** What is known of the evening's weather. */
export interface Known {
  /** Someone looked at the sky: "clear" or "cloudy". "unknown" is a forecast of clear sky in any weather. */
  readonly cloud: CloudKnown;
  /** What the forecast is made for. */
  readonly base: Cloud;
}

/** A forecast of clear sky that nobody has looked at. */
export const NOTHING_KNOWN: Known = { cloud: 'unknown', base: { stops: 0, cover: 0 } };

const HAZE_EV = 0.7; // on the glow around the sun, either way
const NIGHT_EV = 0.3; // airglow, haze and lamps from one night to another

/**
 * By how many stops a frame may lie off its forecast for what the weather of the ground does not tell: haze in the glow,
 * as far as the frame stands out above an even sky (in full from two stops: our choice), and what moves a night.
 */
export function besideWeatherEv(parts: FrameParts, base: SkyState): number {
  const { clearCdM2, overcastCdM2 } = parts;
  const all = luminanceUnder(parts, base);
  const day = skylightUnder(parts, base) / all;
  const clear = (base.kept * (1 - base.cover) * clearCdM2) / all;
  const glow = clear > 0 ? Math.min(1, Math.max(0, Math.log2(clearCdM2 / overcastCdM2) / 2)) : 0;
  return Math.hypot(HAZE_EV * clear * glow, NIGHT_EV * (1 - day), parts.modelEv * day);
}

// Toward some skies a frame first brightens with thin cloud, then darkens: its extremes lie between the ends.
const STEPS = 8;

/** The weather that a band spans: its ends, the forecast itself, the words' own overcast and steps between. */
function statesOf({ cloud, base }: Known): SkyState[] {
  const { lowStops, highStops } = weatherRange(cloud, base);
  const even = Array.from({ length: STEPS + 1 }, (_, i) => lowStops + (i / STEPS) * (highStops - lowStops));
  const kinks = [-2.2, -1.6, -0.7, 0].filter((stops) => stops > lowStops && stops < highStops);
  return [...even, ...kinks].map((stops) => skyState(skyOfLoss(stops, base)));
}

/**
 * The band around the forecast of a frame: the weather of level ground carried through what the lens sees. A loss on the
 * ground implies a state of the sky, so that a frame toward the glow, which loses the glow as well, may fall far more
 * and one at the zenith less. Nine minutes in ten lie in it; whole evenings are fewer. Measured with the sun above 1°
 * and carried on below, which is an extrapolation. Source: one-minute irradiance of the solar station of DTU, Lyngby, 2015 to 2017.
 *
 * @param known what the forecast is made for, and whether somebody looked
 * @returns a function of the {@link FrameParts} of a frame's light
 */
export function forecastBand(known: Known): (parts: FrameParts) => Spread {
  const states = statesOf(known);
  const base = skyState(known.base);
  return (parts) => {
    const forecast = luminanceUnder(parts, base);
    let darkest = forecast;
    let brightest = forecast;
    for (const state of states) {
      const luminance = luminanceUnder(parts, state);
      if (luminance < darkest) darkest = luminance;
      if (luminance > brightest) brightest = luminance;
    }
    const besideEv = besideWeatherEv(parts, base);
    return {
      lowEv: -Math.hypot(Math.log2(darkest / forecast), besideEv),
      highEv: Math.hypot(Math.log2(brightest / forecast), besideEv),
    };
  };
}

/** A reading is no better than the meter and the hand that points it: a sixth of a stop. */
export const METER_EV = 1 / 6;

/** The band of level ground in daylight. */
export function groundBand({ cloud, base }: Known): Spread {
  const { lowStops, stops, highStops } = weatherRange(cloud, base);
  return { lowEv: lowStops - stops, highEv: highStops - stops };
}

// What the measured drift belongs to.
const ANY_WEATHER = groundBand(NOTHING_KNOWN);

/**
 * The band around a forecast that a reading has moved: the drift since the reading, but no wider than the
 * weather leaves room for, and never narrower than the meter. A frame that weather moves more than level ground drifts
 * by as much more. Never throws. Source: one-minute irradiance of the solar station of DTU, Lyngby, 2015 to 2017.
 *
 * @param weather band around the forecast as it was
 * @param offsetEv what the readings moved the forecast by, stops
 * @param minutes from the nearest reading, >= 0
 * @param sunAltitudeDeg true altitude
 * @returns stops around the moved forecast
 */
export function bandAfterReading(
  weather: Spread,
  offsetEv: number,
  minutes: number,
  sunAltitudeDeg: number,
): Spread {
  const gain = (weather.highEv - weather.lowEv) / (ANY_WEATHER.highEv - ANY_WEATHER.lowEv);
  const drift = gain * driftEv(minutes, sunAltitudeDeg);
  return {
    lowEv: -Math.max(METER_EV, Math.min(drift, offsetEv - weather.lowEv)),
    highEv: Math.max(METER_EV, Math.min(drift, weather.highEv - offsetEv)),
  };
}
