// What the weather of an evening does to the light: how much of it is lost on level ground, how the sky looks then, and
// how often that happens. The band, the share of evenings and what a reading may be all follow from this one file.
// Source: docs/sources.md#weather-spread.

import type { Cloud } from './cloud.js';

/** What somebody has seen of the sky: nothing (a forecast of clear sky in any weather), that it is clear, or its cloud. */
export type CloudKnown = 'unknown' | 'clear' | 'cloudy';

/** 5 and 95 % of all measured minutes, stops of level ground against clear sky. */
const ANY_WEATHER = { low: -3.26, high: 0.35 };
/** Of steady clear evenings 78 % of minutes lie within 0.3 stop, so that 90 % lie within this if errors fall off as e^-x. */
const CLEAR_EV = 0.45;
/** A word for cloud. Our choice: the spread about the median that any weather has, for which a word is no worse. */
const STATED_EV = 1.7;

/** From `lowStops` to `highStops` nine minutes in ten lie; the forecast itself is made for `stops`. */
export interface WeatherRange {
  readonly lowStops: number;
  readonly stops: number;
  readonly highStops: number;
}

/** Stops of level ground against clear sky within which nine minutes in ten lie. */
export function weatherRange(cloud: CloudKnown, { stops }: Cloud): WeatherRange {
  if (cloud === 'unknown') return { lowStops: ANY_WEATHER.low, stops, highStops: ANY_WEATHER.high };
  const ev = cloud === 'clear' ? CLEAR_EV : STATED_EV;
  return {
    lowStops: stops - ev,
    stops,
    highStops: Math.max(stops, Math.min(cloud === 'clear' ? ev : ANY_WEATHER.high, stops + ev)),
  };
}

// The words for cloud (words.ts) as one road from the clear pattern of the sky to the overcast one.
const LOSS_STOPS = [-2.2, -1.6, -0.7, 0];
const COVER = [1, 0.6, 0.25, 0];

function coverOnTheRoad(stops: number): number {
  if (stops >= 0) return 0;
  const i = LOSS_STOPS.findIndex((loss) => stops <= loss);
  if (i === 0) return 1;
  const [low, high] = [LOSS_STOPS[i - 1]!, LOSS_STOPS[i]!];
  return COVER[i - 1]! + ((stops - low) / (high - low)) * (COVER[i]! - COVER[i - 1]!);
}

/**
 * The sky that a loss on level ground implies: the clear pattern gives way to the overcast one as it grows, the beam
 * going with it. The road runs through the words for cloud and, shifted, through what was stated.
 */
export function skyOfLoss(stops: number, stated: Cloud): Cloud {
  const cover = coverOnTheRoad(stops) + stated.cover - coverOnTheRoad(stated.stops);
  return { stops, cover: Math.min(1, Math.max(0, cover)) };
}

// Fitted to the 1,943 evenings and mornings of test/data/light/dtu_whole_evenings_share.csv, half way between "no minute
// outside" and "five minutes outside"; worst miss of its 112 pairs 2.4 points.
const FROM_EV = 0.3; // the scale of a Weibull distribution begins at the brightest clear evenings
const DARKEST_MINUTE = { scaleEv: 2.4, shape: 1.77 };
// Evenings that go beyond the bright limit, whatever it is, are less dark than others.
const DARKEST_OF_BRIGHT = { scaleEv: 1.4, shape: 1.7 };
const BRIGHTEST_MINUTE = { middleEv: -0.03, scaleEv: 0.29 }; // logistic

function notDarkerThan(darkEv: number, { scaleEv, shape }: typeof DARKEST_MINUTE): number {
  return 1 - Math.exp(-(((darkEv + FROM_EV) / scaleEv) ** shape));
}

/** Share of whole evenings of any weather that never lose more than `darkEv` of level ground's clear light nor gain more than `brightEv`. */
function anyWeatherShare(darkEv: number, brightEv: number): number {
  const brighter = 1 / (1 + Math.exp((brightEv - BRIGHTEST_MINUTE.middleEv) / BRIGHTEST_MINUTE.scaleEv));
  const share = notDarkerThan(darkEv, DARKEST_MINUTE) - brighter * notDarkerThan(darkEv, DARKEST_OF_BRIGHT);
  return Math.min(1, Math.max(0, share));
}

// The largest departure of an evening from what was known, log-logistic. Of 319 steady clear evenings 13 % stayed within
// 0.3 stop and 67 % within 0.7, which gives the median 0.55 and the exponent 3.1. A stated kind of cloud holds as many
// evenings within 1.7 stops as any weather does about its median of -1.02: 70 %, a median of 1.3.
const EXPONENT = 3.1;
const LARGEST_EV = { clear: 0.55, cloudy: 1.3 };

function sideShare(ev: number, medianEv: number): number {
  if (ev === Number.POSITIVE_INFINITY) return 1;
  // Both sides together hold what was measured, so that each holds its root.
  return ev <= 0 ? 0 : (1 + (medianEv / ev) ** EXPONENT) ** -0.5;
}

/**
 * Share of whole evenings, no minute left out, on which level ground's light lies from `darkEv` below to `brightEv`
 * above its forecast.
 *
 * @param darkEv stops, >= 0 or infinite
 * @param brightEv likewise
 * @returns 0 to 1
 */
export function wholeEveningsShare(darkEv: number, brightEv: number, cloud: CloudKnown): number {
  if (cloud === 'unknown') return anyWeatherShare(darkEv, brightEv);
  return sideShare(darkEv, LARGEST_EV[cloud]) * sideShare(brightEv, LARGEST_EV[cloud]);
}

/**
 * The same after a reading, with the limits counted in half-widths of the range of nine minutes in ten: the stated
 * cloud's shape.
 */
export function readEveningsShare(darkWidths: number, brightWidths: number): number {
  const median = LARGEST_EV.cloudy / STATED_EV;
  return sideShare(darkWidths, median) * sideShare(brightWidths, median);
}
