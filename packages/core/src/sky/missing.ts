// Why an event of the sky, or a pass of the sun, does not happen.

import type { Sentences } from '../words/sentences.js';
import { altitudeText } from './altitude-text.js';
import type { Direction } from './direction.js';

/** Why an event does not come, in numbers; altitudes are of the sun's true centre, -90 to 90. */
export type WhyMissing =
  | {
      readonly kind: 'sun-stays-above';
      /** Whether the level is that of sunrise and sunset. */
      readonly horizon: boolean;
      /** Lowest that it reaches. */
      readonly reachedDeg: number;
      /** That it would have to pass. */
      readonly levelDeg: number;
    }
  | {
      readonly kind: 'sun-stays-below';
      /** Whether the level is that of sunrise and sunset. */
      readonly horizon: boolean;
      /** Highest that it reaches. */
      readonly reachedDeg: number;
      /** That it would have to pass. */
      readonly levelDeg: number;
    }
  | {
      readonly kind: 'sun-does-not-pass';
      /** Which way it would have to. */
      readonly rises: boolean;
      /** That it would have to pass. */
      readonly levelDeg: number;
    }
  | { readonly kind: 'moon-stays-up' }
  | { readonly kind: 'moon-stays-down' }
  | {
      readonly kind: 'moon-does-not-pass';
      /** Which way it would have to. */
      readonly rises: boolean;
    };

/** Missing events in English. */
export const englishMissing: Sentences<WhyMissing> = {
  'sun-stays-above': ({ horizon, reachedDeg, levelDeg }) =>
    `${horizon ? 'the sun never sets; it' : 'the sun'} reaches only ${altitudeText(reachedDeg, levelDeg)}`,
  'sun-stays-below': ({ horizon, reachedDeg, levelDeg }) =>
    horizon
      ? `the sun never rises; it reaches only ${altitudeText(reachedDeg)}`
      : `the sun stays below ${altitudeText(levelDeg)}; it reaches only ${altitudeText(reachedDeg, levelDeg)}`,
  'sun-does-not-pass': ({ rises, levelDeg }) =>
    `the sun does not ${rises ? 'rise' : 'fall'} through ${altitudeText(levelDeg)} in this time`,
  'moon-stays-up': () => 'the moon never sets',
  'moon-stays-down': () => 'the moon never rises',
  'moon-does-not-pass': ({ rises }) => `the moon does not ${rises ? 'rise' : 'set'} in this time`,
};

/** Why the sun does not pass from one altitude to another on a day, in numbers. */
export type WhyNoPass =
  | {
      /** At a pole: it goes the other way all day. */
      readonly kind: 'sun-does-not-turn';
      /** The way it would have to go. */
      readonly direction: Direction;
      /** Its highest on that day. */
      readonly altitudeDeg: number;
    }
  | {
      /** It passes the first altitude on the day before or after. */
      readonly kind: 'sun-passes-another-day';
      /** The way it goes. */
      readonly direction: Direction;
      /** The first altitude. */
      readonly altitudeDeg: number;
    }
  | {
      /** It does not go so far. */
      readonly kind: 'sun-falls-short';
      /** The way it goes. */
      readonly direction: Direction;
      /** From where it goes. */
      readonly fromDeg: number;
      /** To where it goes. */
      readonly toDeg: number;
      /** From where it would have to. */
      readonly wantedFromDeg: number;
      /** To where it would have to. */
      readonly wantedToDeg: number;
    };

const goes = (direction: Direction) => (direction === 'dusk' ? 'falls' : 'rises');

/** Passes that do not happen, in English. */
export const englishNoPass: Sentences<WhyNoPass> = {
  'sun-does-not-turn': ({ direction, altitudeDeg }) =>
    `the sun, at ${altitudeText(altitudeDeg)}, never ${goes(direction)} on this day`,
  'sun-passes-another-day': ({ direction, altitudeDeg }) =>
    `the sun ${goes(direction)} through ${altitudeText(altitudeDeg)} on the day before or after, not on this one`,
  'sun-falls-short': ({ direction, fromDeg, toDeg, wantedFromDeg, wantedToDeg }) =>
    `the sun ${goes(direction)} only from ${altitudeText(fromDeg, wantedFromDeg)} to ${altitudeText(toDeg, wantedToDeg)}`,
};
