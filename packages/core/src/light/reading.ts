// Meter readings move the forecast. A reading that no scene could give, or that contradicts another, is set
// aside by name rather than averaged in. States are plain and never changed: adding gives a new one.

import { finite } from '../check.js';
import { bandAfterReading, type EvBand, groundBand, type Known, METER_EV, type Spread } from './band.js';
import { driftEv } from './drift.js';
import { offsetThrough, PASSING_CLOUD_EV } from './offset.js';
import { BRIGHTEST_LAMPS_EV100, carriedOffsetEv } from './own-light.js';
import { possibleEv100, wordsDriftEv } from './possible.js';
import { type RefusalReason, refusalOf } from './refusal.js';

/** One metered EV at ISO 100 at a known time. */
export interface Reading {
  /** UTC epoch milliseconds. */
  readonly atMs: number;
  /** EV at ISO 100, any finite number. */
  readonly ev100: number;
}

/** The forecast that readings are held against. */
export interface Forecast {
  /** EV at ISO 100 at a UTC epoch millisecond. */
  readonly forecastEv100At: (atMs: number) => number;
  /** True altitude of the sun, degrees, at a UTC epoch millisecond. */
  readonly sunAltitudeAt: (atMs: number) => number;
  /** The band around it before any reading, at a UTC epoch millisecond; absent where nothing lies outside. */
  readonly bandAt?: ((atMs: number) => EvBand) | undefined;
  /** What that band follows from. */
  readonly known: Known;
}

/** A reading that was not used, and why, for a program and for a person. */
export type Refusal = RefusalReason & {
  /** As it was given. */
  readonly reading: Reading;
  /** For a person, one sentence or two. */
  readonly text: string;
};

/** A forecast and the readings taken so far. */
export interface Correction {
  /** As it was before any reading. */
  readonly forecast: Forecast;
  /** In order of time. */
  readonly used: readonly Reading[];
  /** In the order they were refused. */
  readonly refused: readonly Refusal[];
  /** What the used readings move the forecast by, stops, at a UTC epoch millisecond. */
  readonly offsetEvAt: (atMs: number) => number;
}

// A scene stated in numbers may lie beyond all words. Around its forecast any weather is possible (1 and 98 % of measured
// minutes), and two stops by which a frame differs where its words are wrong: snow instead of a grey card.
const DARKEST_EV = -4.1 - 2;
const BRIGHTEST_EV = 1 + 2;

// Readings beyond this many say nothing more, and the set-up grows with their cube.
const MOST_SAMPLES = 60;
// Two readings this close in time may together overrule the earlier ones.
const AGREE_WITHIN_MIN = 30;
// Under a sky that was seen to be clear little passes.
const CLEAR_SKY_WANDER_EV = 0.1;

/**
 * A forecast before any reading: offset 0, the weather's band. Never throws.
 *
 * @param forecast EV and sun at any time
 * @returns a correction without readings
 */
export function startCorrection(forecast: Forecast): Correction {
  return withReadings(forecast, [], []);
}

/**
 * A forecast corrected by a list of readings, taken in order of time whatever order they come in.
 *
 * @param readings none or more, in any order
 * @param forecast EV and sun at any time
 * @returns the correction, with the readings that were not used and why
 * @throws RangeError unless times and EVs are finite
 */
export function correctForecast(readings: readonly Reading[], forecast: Forecast): Correction {
  const inTime = [...readings].sort((a, b) => a.atMs - b.atMs);
  return inTime.reduce(addReading, startCorrection(forecast));
}

/**
 * The correction with one more reading. Refused where no words for a scene give it with the sun where it is, or
 * where it has moved from the nearest used reading by more than skies and wrong words for the scene move it in that
 * time. A refused reading that the next one bears out within half an hour overrules what came before.
 *
 * @param correction so far; it is not changed
 * @param reading time and EV, finite
 * @returns the next correction
 * @throws RangeError unless atMs and ev100 are finite
 */
export function addReading(correction: Correction, reading: Reading): Correction {
  finite('atMs', reading.atMs);
  finite('ev100', reading.ev100);
  const { forecast, used, refused } = correction;
  const impossible = whyImpossible(reading, {
    sceneEv100: forecast.forecastEv100At(reading.atMs),
    sunAltitudeDeg: forecast.sunAltitudeAt(reading.atMs),
  });
  if (impossible !== undefined) {
    return { ...correction, refused: [...refused, { reading, ...refusalOf(impossible) }] };
  }
  const nearest = nearestInTime(used, reading.atMs);
  const contradiction = nearest && whyContradictory(reading, nearest, forecast);
  if (contradiction === undefined) return withReadings(forecast, [...used, reading], refused);

  const doubted = refused[refused.length - 1];
  if (
    doubted?.reason === 'contradictory' &&
    minutesApart(doubted.reading, reading) <= AGREE_WITHIN_MIN &&
    whyContradictory(reading, doubted.reading, forecast) === undefined
  ) {
    const superseded = used.map((old) => ({ reading: old, ...refusalOf({ reason: 'superseded' }) }));
    return withReadings(forecast, [doubted.reading, reading], [...refused.slice(0, -1), ...superseded]);
  }
  return { ...correction, refused: [...refused, { reading, ...refusalOf(contradiction) }] };
}

/**
 * The forecast as the readings have moved it.
 *
 * @param correction forecast and readings
 * @param atMs UTC epoch milliseconds
 * @returns EV at ISO 100
 */
export function correctedEv100At({ forecast, offsetEvAt }: Correction, atMs: number): number {
  return forecast.forecastEv100At(atMs) + offsetEvAt(atMs);
}

/**
 * The band around the corrected forecast: narrow at a reading, widening with the minutes, never past the
 * weather's. Source: one-minute irradiance of the solar station of DTU, Lyngby, 2015 to 2017.
 *
 * @param correction forecast and readings
 * @param atMs UTC epoch milliseconds
 * @param here the sun's altitude and the forecast's spread at that time; absent: that of level ground
 * @returns stops around the corrected forecast
 */
export function correctedBandAt(
  { forecast, used, offsetEvAt }: Correction,
  atMs: number,
  here?: { readonly sunAltitudeDeg: number; readonly weather: Spread },
): Spread {
  const weather = here?.weather ?? groundBand(forecast.known);
  const nearest = nearestInTime(used, atMs);
  if (nearest === undefined) return weather;
  const minutes = Math.abs(nearest.atMs - atMs) / 60_000;
  const sunAltitudeDeg = here?.sunAltitudeDeg ?? forecast.sunAltitudeAt(atMs);
  // Beyond what weather does it is the scene's words that are off, and the weather has all its room about them still.
  const offsetEv = offsetEvAt(atMs);
  const byWeather = offsetEv >= weather.lowEv && offsetEv <= weather.highEv;
  return bandAfterReading(weather, byWeather ? offsetEv : 0, minutes, sunAltitudeDeg);
}

function withReadings(
  forecast: Forecast,
  readings: readonly Reading[],
  refused: readonly Refusal[],
): Correction {
  const used = [...readings].sort((a, b) => a.atMs - b.atMs);
  const samples = used
    .slice(-MOST_SAMPLES)
    .map((reading) => ({ atMs: reading.atMs, offsetEv: offsetOf(reading, forecast) }));
  const cloudEv = forecast.known.cloud === 'clear' ? CLEAR_SKY_WANDER_EV : PASSING_CLOUD_EV;
  const throughEvAt = offsetThrough(samples, { cloudEv, meterEv: METER_EV });
  // Lamps that a reading after dark has seen are lost in the day: towards it they are so much light, not so many stops.
  const offsetEvAt = (atMs: number) => {
    const offsetEv = throughEvAt(atMs);
    const nearest = nearestInTime(used, atMs);
    const readEv100 = nearest === undefined ? Infinity : forecast.forecastEv100At(nearest.atMs);
    if (readEv100 >= BRIGHTEST_LAMPS_EV100) return offsetEv;
    const forecastEv100 = forecast.forecastEv100At(atMs);
    return forecastEv100 <= readEv100 ? offsetEv : carriedOffsetEv(offsetEv, 0, readEv100, forecastEv100);
  };
  return { forecast, used, refused, offsetEvAt };
}

function offsetOf({ atMs, ev100 }: Reading, { forecastEv100At }: Forecast): number {
  return ev100 - forecastEv100At(atMs);
}

function minutesApart(a: Reading, b: Reading): number {
  return Math.abs(a.atMs - b.atMs) / 60_000;
}

function nearestInTime(readings: readonly Reading[], atMs: number): Reading | undefined {
  let best: Reading | undefined;
  for (const reading of readings) {
    if (best === undefined || Math.abs(reading.atMs - atMs) <= Math.abs(best.atMs - atMs)) best = reading;
  }
  return best;
}

/** The light at a reading's time as it was forecast. */
export interface Expected {
  readonly sceneEv100: number;
  readonly sunAltitudeDeg: number;
}

/** Why no scene gives a reading; undefined where one may. */
export function whyImpossible(
  { ev100 }: Reading,
  { sceneEv100, sunAltitudeDeg }: Expected,
): Extract<RefusalReason, { reason: 'impossible' }> | undefined {
  const { darkEv100, brightEv100 } = possibleEv100(sunAltitudeDeg);
  const least = Math.min(darkEv100, sceneEv100 + DARKEST_EV);
  const most = Math.max(brightEv100, sceneEv100 + BRIGHTEST_EV);
  if (ev100 >= least && ev100 <= most) return undefined;
  const limitEv100 = ev100 < least ? least : most;
  return { reason: 'impossible', ev100, sunAltitudeDeg, limitEv100 };
}

/** Stops by which two true readings may differ against the forecast: weather, a meter twice, and wrong words besides. */
export function mayDifferEv(
  minutesApart: number,
  sunAltitudeDeg: number,
  otherSunAltitudeDeg = sunAltitudeDeg,
  meterEv = 0, // standard deviation of a reading, where it is known
): number {
  const weatherEv = driftEv(minutesApart, sunAltitudeDeg, 99);
  // Two readings differ by the root of two times what one is off by. 99 of 100 pairs differ by less than 2.6 times that:
  // the normal distribution's 2.576, rounded up.
  const twiceMeteredEv = Math.max(2 * METER_EV, 2.6 * Math.SQRT2 * meterEv);
  return weatherEv + twiceMeteredEv + wordsDriftEv(sunAltitudeDeg, otherSunAltitudeDeg);
}

function whyContradictory(reading: Reading, other: Reading, forecast: Forecast): RefusalReason | undefined {
  const movedEv = Math.abs(offsetOf(reading, forecast) - offsetOf(other, forecast));
  const minutes = minutesApart(reading, other);
  const { sunAltitudeAt } = forecast;
  const allowedEv = mayDifferEv(minutes, sunAltitudeAt(reading.atMs), sunAltitudeAt(other.atMs));
  if (movedEv <= allowedEv) return undefined;
  return { reason: 'contradictory', movedEv, otherEv100: other.ev100, minutes, allowedEv };
}
