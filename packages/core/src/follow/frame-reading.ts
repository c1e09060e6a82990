// A frame as a meter: what it says of the scene, from how bright it came out and the setting it was taken with.

import { finite, within } from '../check.js';
import { type Exposure, ev100Of } from '../exposure/exposure.js';
import { aNumber, either, groupWith, hold, isGroup, listOf, oneOf, onlyKeys } from '../hold.js';
import { type FrameLevel, measured } from './frame-level.js';
import type { BoundReading } from './types.js';

/** When and at what setting a frame was taken: one of an answer, say, or exact values. */
export type FrameTaken = {
  /** UTC epoch milliseconds; the middle of a long exposure. */
  readonly atMs: number;
} & (
  | {
      /** What the setting renders at metered level, filters counted, EV at ISO 100, as {@link FollowSetting} has it. */
      readonly settingEv100: number;
    }
  | (Exposure & {
      /** Of all filters on the lens, stops, >= 0; default 0. */
      readonly filterStops?: number | undefined;
    })
);

/** What the frames of a camera look like. */
export interface FrameCalibration {
  /**
   * Linear mean of a frame that is exposed as metered, above `blackLevel` and below 1; default 0.18, that of grey in sRGB
   * under ISO 12232 and ISO 2721. Raw values of a camera rated by saturation: 0.128. Better: measure your own. Source:
   * ISO 12232:2006, ratings of speed of cameras for still pictures.
   */
  readonly greyLevel?: number | undefined;
  /** Linear mean below which a frame is taken as black, above 0; default 0.001, three values of 255 in sRGB. */
  readonly blackLevel?: number | undefined;
}

const GREY_LEVEL = 0.18;
const BLACK_LEVEL = 0.001;
/** Our choice: clipped parts hide something where, twice as bright as white, they would raise the mean by more than this. */
const HIDDEN_EV = 0.1;
/** Our choice: where nothing tells what is clipped, a frame that is half white or more on average is. */
const MOSTLY_WHITE = 0.5;

const LEVEL = either((value) => {
  if (isGroup(value) && 'histogram' in value) {
    return groupWith({ histogram: listOf(aNumber), curve: oneOf(['linear', 'srgb']) });
  }
  if (isGroup(value) && 'srgbPixels' in value) {
    return groupWith({ srgbPixels: listOf(() => undefined), channels: oneOf([1, 3, 4]) });
  }
  return groupWith(isGroup(value) && 'srgbMean' in value ? { srgbMean: aNumber } : { mean: aNumber });
});

/**
 * What a frame says of the scene it shows: EV at ISO 100 = that of its setting + log2(its mean / grey). A clipped frame
 * gives a bound: its parts at white may be brighter than they show, so that the scene is that bright at least; in a
 * black frame it is that dark at most. Source: ISO 12232:2006, ratings of speed of cameras for still pictures.
 *
 * @param level how bright the frame came out
 * @param taken when, and at what setting
 * @param calibration what a frame exposed as metered looks like
 * @returns a reading for {@link followFrame}, with `bound` where the frame is clipped
 * @throws RangeError on a level that is none, or unless atMs and settingEv100 are finite, timeS, fNumber and iso positive and
 *   finite, filterStops at least 0, and 0 < blackLevel < greyLevel < 1
 * @example
 * ```ts
 * import { readingOfFrame } from '@evenfall/core';
 *
 * const sunny16 = { atMs: 0, timeS: 1 / 100, fNumber: 16, iso: 100 };
 * readingOfFrame({ mean: 0.18 }, sunny16).ev100; // → 14.64
 * readingOfFrame({ mean: 0.09 }, sunny16).ev100; // → 13.64
 * readingOfFrame({ mean: 0.18 }, { ...sunny16, filterStops: 3 }).ev100; // → 17.64
 * // White all over: log2(1 / 0.18) stops above grey, or more.
 * readingOfFrame({ mean: 1 }, { atMs: 0, settingEv100: 10 }); // → { ev100: 12.474, bound: 'atLeast' }
 * readingOfFrame({ mean: 0 }, { atMs: 0, settingEv100: 10 }).bound; // → 'atMost'
 * ```
 */
export function readingOfFrame(
  level: FrameLevel,
  taken: FrameTaken,
  calibration: FrameCalibration = {},
): BoundReading {
  hold('level', level, LEVEL);
  hold('taken', taken, groupWith({}));
  hold('calibration', calibration, onlyKeys('greyLevel', 'blackLevel'));
  const { greyLevel = GREY_LEVEL, blackLevel = BLACK_LEVEL } = calibration;
  if (!(blackLevel > 0 && blackLevel < greyLevel && greyLevel < 1)) {
    throw new RangeError(
      `blackLevel and greyLevel must be 0 < black < grey < 1, got ${blackLevel} and ${greyLevel}`,
    );
  }
  const settingEv100 = settingEv100Of(taken);
  const { mean, clippedShare } = measured(level);
  const atMs = finite('atMs', taken.atMs);
  const ev100Of = (light: number) => settingEv100 + Math.log2(light / greyLevel);
  if (mean <= blackLevel) return { atMs, ev100: ev100Of(blackLevel), bound: 'atMost' };
  const ev100 = ev100Of(Math.min(1, mean));
  const isClipped =
    mean >= 1 ||
    (clippedShare === undefined ? mean >= MOSTLY_WHITE : Math.log2(1 + clippedShare / mean) > HIDDEN_EV);
  return isClipped ? { atMs, ev100, bound: 'atLeast' } : { atMs, ev100 };
}

function settingEv100Of(taken: FrameTaken): number {
  if ('settingEv100' in taken) return finite('settingEv100', taken.settingEv100);
  return ev100Of(taken) + within('filterStops', taken.filterStops ?? 0, 0, Number.MAX_VALUE);
}
