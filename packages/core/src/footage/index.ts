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
  footageOf,
  longestMarkedShutter,
  type MarkedTime,
  wholeSeconds,
} from './footage.js';
export {
  INTERVALS_BY_SUBJECT,
  type IntervalAdvice,
  intervalAdvice,
  type Subject,
} from './interval-advice.js';
export { framesOnCard, framesOnCharge } from './supplies.js';
