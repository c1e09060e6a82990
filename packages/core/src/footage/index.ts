/**
 * Frames, intervals and clip; what card and battery hold.
 *
 * @module @evenfall/core/footage
 */

export { type Bracket, type Exposing, exposingS } from './bracket.js';
export {
  exactFps,
  type Footage,
  type FootageGiven,
  footageOf,
  longestMarkedShutter,
  type MarkedTime,
} from './footage.js';
export {
  INTERVALS_BY_SUBJECT,
  type IntervalAdvice,
  type Subject,
  type SubjectInterval,
} from './interval-advice.js';
export { type FramesHeld, framesHeld } from './supplies.js';
