// Frames in a time, the clip they make, and the time an interval leaves the shutter.

import { positive } from '../check.js';
import { bracketSum, type Exposing, pausesS } from './bracket.js';

/**
 * Frames an interval gives in a time, both ends exposed: floor(T / I) + 1. Source: arithmetic, both ends exposed.
 *
 * @param durationS from the first shutter to the last, seconds, >= 0
 * @param intervalS seconds, > 0
 * @returns whole, 1 or more
 * @throws RangeError unless durationS >= 0 and intervalS > 0, both finite
 */
export function frameCountOf(durationS: number, intervalS: number): number {
  positive('intervalS', intervalS);
  if (!(durationS >= 0 && Number.isFinite(durationS))) {
    throw new RangeError(`durationS must not be negative, got ${durationS}`);
  }
  // A span that is a whole number of intervals must not lose its last frame to rounding.
  return Math.floor(durationS / intervalS + 1e-9) + 1;
}

/**
 * Length of the finished clip.
 *
 * @param frameCount whole, 0 or more
 * @param clipFps frames a second, exact, > 0: from {@link exactFps}
 * @returns seconds
 * @throws RangeError unless clipFps is positive and finite
 */
export function clipLengthS(frameCount: number, clipFps: number): number {
  return frameCount / positive('clipFps', clipFps);
}

/**
 * Longest exact shutter time that ends, with its dark frame and the gap, inside the interval; of a bracket the middle one.
 *
 * @param intervalS seconds
 * @param camera `gapS`, seconds that the shutter may not use; `darkFrame`, whether one follows every exposure; the
 *   `bracket`, absent for one exposure
 * @returns seconds; negative where gap and pauses alone are longer than the interval
 */
export function longestTimeInside(
  intervalS: number,
  { gapS, darkFrame, bracket }: { readonly gapS: number } & Exposing,
): number {
  return (intervalS - gapS - pausesS(bracket)) / (bracketSum(bracket) * (darkFrame ? 2 : 1));
}
