// How far the light wanders from its forecast in the minutes after a reading, in any weather.
// Source: docs/sources.md#weather-spread.

import { linearAt } from './smooth.js';

// What the light moves by in so many minutes: 95 and 99 % of measured pairs, by class of sun altitude.
const DRIFT_MINUTES = [0, 1, 2, 5, 10, 30];
const DRIFT_SUN_DEG = [6, 20, 44];
const DRIFT_95_EV = [
  [0, 0.28, 0.45, 0.77, 1.07, 1.57],
  [0, 0.46, 0.67, 1.0, 1.26, 1.58],
  [0, 0.87, 1.17, 1.54, 1.73, 1.93],
];
const DRIFT_99_EV = [
  [0, 0.58, 0.85, 1.3, 1.66, 2.28],
  [0, 1.19, 1.41, 1.7, 1.94, 2.31],
  [0, 1.73, 1.95, 2.2, 2.4, 2.72],
];

/**
 * Stops by which the light has moved away from its forecast so many minutes after a reading, either way, in
 * 95 % (or 99 %) of cases and any weather. Beyond half an hour it is carried on with the root of time. Never
 * throws. Source: one-minute irradiance of the solar station of DTU, Lyngby, 2015 to 2017.
 *
 * @param minutes away from the reading, >= 0
 * @param sunAltitudeDeg true altitude; measured from 2° up, held below
 * @param percent of cases, 95 or 99
 * @returns stops, >= 0
 */
export function driftEv(minutes: number, sunAltitudeDeg: number, percent: 95 | 99 = 95): number {
  const rows = percent === 95 ? DRIFT_95_EV : DRIFT_99_EV;
  const measuredTo = DRIFT_MINUTES[DRIFT_MINUTES.length - 1]!;
  // A walk without aim goes with the root of time; nothing longer than half an hour was measured here.
  const beyond = Math.sqrt(Math.max(1, minutes / measuredTo));
  const along = rows.map((row) => beyond * linearAt(DRIFT_MINUTES, row, minutes));
  return linearAt(DRIFT_SUN_DEG, along, sunAltitudeDeg);
}
