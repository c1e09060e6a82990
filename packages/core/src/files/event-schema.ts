// Parts that the plan file and the light table share.

import * as v from 'valibot';
import { aboveZero, finite, instant, word } from './parts.js';

export const eventName = word([
  'sunrise',
  'sunset',
  'civil-dawn',
  'civil-dusk',
  'nautical-dawn',
  'nautical-dusk',
  'astronomical-dawn',
  'astronomical-dusk',
  'moonrise',
  'moonset',
  'sun-behind-skyline',
  'sun-over-skyline',
  'moon-behind-skyline',
  'moon-over-skyline',
]);

/** Where the clocks are put back. */
export const clocksBackSchema = v.strictObject({
  at: instant(),
  byMin: aboveZero('change of the clocks', 'minutes', 1440),
});

/** An event of sun or moon with its clock time. */
export const eventSchema = v.strictObject({
  name: eventName,
  at: instant(),
  sunAltitudeDeg: finite('degrees-of-true-sun'),
});
