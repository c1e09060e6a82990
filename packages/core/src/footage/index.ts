/**
 * Frames, intervals and clip; what card and battery hold.
 *
 * @module @evenfall/core/footage
 */

export { type Bracket, type Exposing, exposingS, suppliesByFrame } from './bracket.js';
export {
  exactFps,
  type Footage,
  type FootageGiven,
  FRAME_RATES,
  type FrameRate,
  footageOf,
  longestMarkedShutter,
  type MarkedTime,
  wholeSeconds,
} from './footage.js';
export { clipLengthS, frameCountOf, longestTimeInside } from './frames.js';
export {
  INTERVALS_BY_SUBJECT,
  type IntervalAdvice,
  intervalAdvice,
  type Subject,
} from './interval-advice.js';
export {
  coldFactorAt,
  framesOnCard,
  framesOnCharge,
  type Lasting,
  lastingOf,
  type SuppliedShoot,
  type Supplies,
  suppliesFor,
} from './supplies.js';
