/**
 * Frames, intervals and clip; what card and battery hold.
 *
 * @module @evenfall/core/footage
 */

export {
  INTERVALS_BY_SUBJECT,
  type IntervalAdvice,
  intervalAdvice,
  type Subject,
} from '../footage/interval-advice.js';
export {
  coldFactorAt,
  framesOnCard,
  framesOnCharge,
  type Lasting,
  lastingOf,
  type SuppliedShoot,
} from '../footage/supplies.js';
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
} from '../footage.js';
