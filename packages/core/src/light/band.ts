// How sure a forecast is: the stops by which the light may lie below and above it.
// Source: docs/sources.md#weather-spread.

import { finite, within } from '../check.js';
import { driftEv } from './drift.js';
import { cubicAt, monotoneSlopes, smoothstep } from './smooth.js';

/** Stops around a forecast within which 90 % of evenings lie; lowEv <= 0 <= highEv. */
export interface EvBand {
  /** Darker by so many stops, <= 0. */
  readonly lowEv: number;
  /** Brighter by so many stops, >= 0. */
  readonly highEv: number;
}

/** What is known beyond the sun's altitude. */
export interface Known {
  /** Someone looked at the sky: "clear" or "cloudy". "unknown" is a forecast of clear sky in any weather. */
  readonly cloud: 'unknown' | 'clear' | 'cloudy';
  /** The frame looks into the glow around the sun, where haze counts most. */
  readonly towardSun: boolean;
  /** Stops that a closed cloud deck changes the night by; see overcastNightEv. */
  readonly overcastNightEv: number;
}

/**
 * Any weather, away from the glow, a natural night.
 *
 * @example
 * ```ts
 * import { NOTHING_KNOWN } from '@evenfall/core';
 *
 * NOTHING_KNOWN; // → { cloud: 'unknown', towardSun: false, overcastNightEv: -1.6 }
 * ```
 */
export const NOTHING_KNOWN: Known = { cloud: 'unknown', towardSun: false, overcastNightEv: -1.6 };

// 5 and 95 % of measured minutes against clear sky, at the middle of each class of sun altitude.
const WEATHER_SUN_DEG = [2, 4, 6.5, 10, 16, 25, 35, 45, 54];
const WEATHER_LOW_EV = [-2.96, -2.98, -2.88, -2.94, -2.99, -2.94, -2.85, -2.83, -3.02];
const WEATHER_HIGH_EV = [0.51, 0.7, 0.73, 0.64, 0.52, 0.45, 0.35, 0.25, 0.18];
const WEATHER_LOW_SLOPES = monotoneSlopes(WEATHER_SUN_DEG, WEATHER_LOW_EV);
const WEATHER_HIGH_SLOPES = monotoneSlopes(WEATHER_SUN_DEG, WEATHER_HIGH_EV);

const CLEAR_EVENINGS_EV = 0.3; // one clear evening to another
const HAZE_EV = 0.7; // on the glow, either way
const STATED_CLOUD_EV = 1.1; // what cloud of one kind wanders in ten minutes (95 %)

/**
 * The band around a forecast. With nothing known about cloud: -3.0 to +0.5 stops at sunset, measured with the
 * sun above 1° and carried on below at the same stops, which is an extrapolation. Between -8° and -12° it
 * passes to the night's: a natural night may lose 1.6 stops to cloud, a town's gain up to 3.3. Source:
 * docs/sources.md#weather-spread.
 *
 * @param sunAltitudeDeg true altitude, -90 to 90
 * @param known what is known beyond it
 * @returns stops around the forecast
 * @throws RangeError unless sunAltitudeDeg is from -90 to 90 and overcastNightEv is finite
 * @example
 * ```ts
 * import { forecastBand, NOTHING_KNOWN } from '@evenfall/core';
 *
 * // Measured minutes with the sun from 5° to 8°: 5 and 95 % of them against clear sky.
 * forecastBand(6.5); // → { lowEv: -2.88, highEv: 0.73 }
 * forecastBand(6.5, { ...NOTHING_KNOWN, cloud: 'clear' }); // → { lowEv: -0.3, highEv: 0.3 }
 * ```
 */
export function forecastBand(sunAltitudeDeg: number, known: Known = NOTHING_KNOWN): EvBand {
  within('sunAltitudeDeg', sunAltitudeDeg, -90, 90);
  finite('overcastNightEv', known.overcastNightEv);
  const day = dayBand(sunAltitudeDeg, known);
  const night = nightBand(known);
  const dark = smoothstep(-8, -12, sunAltitudeDeg);
  return {
    lowEv: day.lowEv + dark * (night.lowEv - day.lowEv),
    highEv: day.highEv + dark * (night.highEv - day.highEv),
  };
}

function dayBand(sunAltitudeDeg: number, { cloud, towardSun }: Known): EvBand {
  if (cloud === 'unknown') {
    const highEv = cubicAt(WEATHER_SUN_DEG, WEATHER_HIGH_EV, WEATHER_HIGH_SLOPES, sunAltitudeDeg);
    return {
      lowEv: cubicAt(WEATHER_SUN_DEG, WEATHER_LOW_EV, WEATHER_LOW_SLOPES, sunAltitudeDeg),
      highEv: towardSun ? Math.max(HAZE_EV, highEv) : highEv,
    };
  }
  if (cloud === 'cloudy') return { lowEv: -STATED_CLOUD_EV, highEv: STATED_CLOUD_EV };
  const ev = towardSun ? HAZE_EV : CLEAR_EVENINGS_EV;
  return { lowEv: -ev, highEv: ev };
}

function nightBand({ cloud, overcastNightEv }: Known): EvBand {
  // Airglow and haze alone move a clear night by a third of a stop; town light by cloud far more.
  const spreadEv =
    cloud === 'cloudy' ? Math.max(CLEAR_EVENINGS_EV, Math.abs(overcastNightEv) / 2) : CLEAR_EVENINGS_EV;
  if (cloud !== 'unknown') return { lowEv: -spreadEv, highEv: spreadEv };
  return {
    lowEv: Math.min(0, overcastNightEv) - CLEAR_EVENINGS_EV,
    highEv: Math.max(0, overcastNightEv) + CLEAR_EVENINGS_EV,
  };
}

/**
 * A reading is no better than the meter and the hand that points it: a sixth of a stop.
 *
 * @example
 * ```ts
 * import { METER_EV } from '@evenfall/core';
 *
 * METER_EV; // → 1 / 6
 * ```
 */
export const METER_EV = 1 / 6;

/**
 * The band around a forecast that a reading has moved: the drift since the reading, but no wider than the
 * weather leaves room for, and never narrower than the meter. Never throws. Source:
 * docs/sources.md#weather-spread.
 *
 * @param weather band around the forecast as it was
 * @param offsetEv what the readings moved the forecast by, stops
 * @param minutes from the nearest reading, >= 0
 * @param sunAltitudeDeg true altitude
 * @returns stops around the moved forecast
 */
export function bandAfterReading(
  weather: EvBand,
  offsetEv: number,
  minutes: number,
  sunAltitudeDeg: number,
): EvBand {
  const drift = driftEv(minutes, sunAltitudeDeg);
  return {
    lowEv: -Math.max(METER_EV, Math.min(drift, offsetEv - weather.lowEv)),
    highEv: Math.max(METER_EV, Math.min(drift, weather.highEv - offsetEv)),
  };
}

/**
 * A band around a frame's EV where lamps give a share of its light: weather moves the rest of it, not the lamps, which
 * are known as well as a clear night. With lamps giving half, -3 stops become -1.1.
 *
 * @param lampsShare of the frame's luminance that is the lamps' own, 0 to 1
 */
export function bandWithLamps(band: EvBand, lampsShare: number): EvBand {
  if (lampsShare === 0) return band;
  const of = (ev: number, lampsEv: number) =>
    Math.log2(lampsShare * 2 ** lampsEv + (1 - lampsShare) * 2 ** ev);
  return {
    lowEv: of(band.lowEv, Math.max(band.lowEv, -CLEAR_EVENINGS_EV)),
    highEv: of(band.highEv, Math.min(band.highEv, CLEAR_EVENINGS_EV)),
  };
}
