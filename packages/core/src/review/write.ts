// A review as a file and as a table.

import type * as v from 'valibot';
import { csv } from '../files/csv.js';
import { reviewSchema } from '../files/review-schema.js';
import { type Written, written } from '../files/written.js';
import { aGroup, groupWith, hold, listOf, oneOf } from '../hold.js';
import type { Review, ReviewFrame } from './types.js';

const REVIEW = groupWith({ format: oneOf(['evenfall-review/1']), frames: listOf(aGroup) });

/**
 * A review as the text of a file: JSON, keys in the order of the format, a frame or a cue a line. Never throws.
 *
 * @param review from {@link reviewFrames}
 * @returns text that ends with a line break; the same for the same review
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { reviewFrames, writeReview } from '@evenfall/core';
 *
 * const { at } = plan.frames[0];
 * const review = reviewFrames(plan, [{ file: 'IMG_1.JPG', at, shutterS: 1 / 60, iso: 100, fNumber: 8 }]);
 * JSON.parse(writeReview(review)); // → { format: 'evenfall-review/1', missingFrames: review.missingFrames }
 * ```
 */
export function writeReview(review: Review): string {
  hold('review', review, REVIEW);
  // The assignment has the compiler hold the schema against Review.
  const file: Written<v.InferOutput<typeof reviewSchema>> = review;
  return written(reviewSchema, file);
}

const COLUMNS = [
  'file',
  'offsetEv',
  'frame',
  'at',
  'shutter',
  'iso',
  'aperture',
  'filters',
  'settingEv100',
  'plannedEv100',
  'targetEv100',
  'sceneEv100',
  'readEv100',
  'flickerEv',
  'beyondEv',
  'spoilt',
  'doubled',
  'unplanned',
  'ranOver',
  'clipped',
  'shows',
] as const satisfies readonly (keyof ReviewFrame)[];

/** Digits that a slider of a raw developer takes, and one more. */
const STOP_DIGITS = 3;

/**
 * The frames of a review as a table, a file a row: its offset in stops, what it was taken with and what was wrong. Stops have
 * three digits; a field without a value is empty. Source: RFC 4180, Common Format and MIME Type for CSV Files (2005).
 *
 * @param review from {@link reviewFrames}
 * @returns comma-separated values with a header row; lines end in CRLF
 * @throws RangeError on what holds no frames
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { reviewFrames, writeReviewCsv } from '@evenfall/core';
 *
 * const { at } = plan.frames[0];
 * const taken = [{ file: 'IMG_1.JPG', at, shutterS: 1 / 60, iso: 100, fNumber: 8 }];
 * writeReviewCsv(reviewFrames(plan, taken)).slice(0, 23); // → 'file,offsetEv,frame,at,'
 * ```
 */
export function writeReviewCsv(review: Review): string {
  hold('review', review, REVIEW);
  const { frames } = review;
  if (frames.every(({ exposures }) => exposures === undefined)) {
    const rows = frames.map((frame) => COLUMNS.map((column) => cell(column, frame)));
    return csv([COLUMNS, ...rows]);
  }
  // A row for every file of a bracket: each is to be brightened as much.
  const rows = frames.flatMap((frame) =>
    (frame.exposures ?? [{ file: frame.file, byEv: 0 }]).map(({ file, byEv }) => [
      ...COLUMNS.map((column) => cell(column, { ...frame, file })),
      inStops(byEv),
      (frame.missingEv ?? []).map(inStops).join(' '),
    ]),
  );
  return csv([[...COLUMNS, 'bracketEv', 'missingEv'], ...rows]);
}

const inStops = (ev: number) => Number(ev.toFixed(STOP_DIGITS)) + 0;

function cell(column: (typeof COLUMNS)[number], frame: ReviewFrame): string | number | boolean {
  const value = frame[column];
  if (value === undefined || value === null) return '';
  if (typeof value === 'object') return value.join(' + ');
  return typeof value === 'number' && column.includes('Ev') ? inStops(value) : value;
}
