// `@evenfall/core/footage`: frames, intervals and clip; what card and battery hold.

export {
  INTERVALS_BY_SUBJECT,
  type IntervalAdvice,
  intervalAdvice,
  type Subject,
} from '../footage/interval-advice.js';
export { coldFactorAt, framesOnCard, framesOnCharge, type Lasting, lastingOf } from '../footage/supplies.js';
export {
  exactFps,
  type Footage,
  type FootageGiven,
  FRAME_RATES,
  footageOf,
  longestMarkedShutter,
  type MarkedTime,
  wholeSeconds,
} from '../footage.js';
