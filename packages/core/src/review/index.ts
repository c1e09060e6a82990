/**
 * After the shoot: frames that were taken, held against the plan, and by how much each is to be brightened.
 *
 * @module @evenfall/core/review
 */

export type { FrameRun } from './frame-run.js';
export { learnedReadings } from './learned.js';
export type { ReviewNote, ReviewNoteFacts } from './note.js';
export { reviewFrames } from './review.js';
export { frameOfTags, meanLevel, type TagsRead } from './tags.js';
export type {
  BracketExposure,
  ForecastCheck,
  LightRead,
  Review,
  ReviewCue,
  ReviewFrame,
  ReviewOptions,
  ReviewSummary,
  TakenFrame,
} from './types.js';
export { writeReview, writeReviewCsv } from './write.js';
