// The whole of core. Each room is also an entry point, `@evenfall/core/ramp` and so on, with nothing else loaded.

import { englishFaults } from './files/english-faults.js';
import { englishWarnings } from './follow/english.js';
import { englishSavedFaults } from './follow/saved-fault.js';
import { englishRefusals } from './light/refusal.js';
import { englishCautions } from './move/cautions.js';
import { englishFindings, englishMoveChanges } from './move/english.js';
import type { Travel } from './move/resolve.js';
import { lengthText, secondsText } from './move/words.js';
import { englishCueNotes } from './plan/cue-notes.js';
import { englishNotes, englishReasons, englishRemedies, englishReserve } from './plan/english.js';
import type { RemedyLeaves } from './plan/types.js';
import { englishReviewNotes } from './review/english.js';
import { altitudeText } from './sky/altitude-text.js';
import { englishMissing, englishNoPass } from './sky/missing.js';

export * from './exposure/index.js';
export * from './files/index.js';
export * from './follow/index.js';
export * from './footage/index.js';
export * from './light/index.js';
export * from './move/index.js';
export * from './plan/index.js';
export * from './ramp/index.js';
export * from './review/index.js';
export * from './shoot/index.js';
export * from './sky/index.js';
export * from './words/index.js';

/**
 * A record of sentences for each kind of thing that is said, which {@link sentenceOf} puts into words; another language
 * has the same.
 *
 * @example
 * ```ts
 * import { englishSentences, sentenceOf } from '@evenfall/core';
 *
 * sentenceOf(englishSentences.notes, 'kind', { kind: 'moonset', at: '2026-09-22T19:44:00+02:00' });
 * // → 'The moon sets at 19:44, during the shoot.'
 * ```
 */
export const englishSentences = {
  notes: englishNotes,
  cueNotes: englishCueNotes,
  reasons: englishReasons,
  remedies: englishRemedies,
  reserve: (leaves: RemedyLeaves) => englishReserve(leaves),
  faults: englishFaults,
  savedFaults: englishSavedFaults,
  refusals: englishRefusals,
  warnings: englishWarnings,
  findings: englishFindings,
  cautions: englishCautions,
  moveChanges: englishMoveChanges,
  missing: englishMissing,
  noPass: englishNoPass,
  reviewNotes: englishReviewNotes,
};

/**
 * Values with the digits that a person reads, as the English sentences have them: an altitude (with more digits where fewer
 * would read like a second one, which it fell short of), the length of a move, a stretch of time.
 *
 * @example
 * ```ts
 * import { englishValues } from '@evenfall/core';
 *
 * englishValues.altitude(-10.62); // → '-10.6°'
 * englishValues.altitude(-11.97, -12); // → '-11.97°'
 * englishValues.length(-12.54, 'deg'); // → '12.5°'
 * englishValues.seconds(2800); // → '46.7 min'
 * ```
 */
export const englishValues: {
  readonly altitude: (altitudeDeg: number, shortOfDeg?: number) => string;
  readonly length: (length: number, unit: Travel['unit']) => string;
  readonly seconds: (seconds: number) => string;
} = { altitude: altitudeText, length: lengthText, seconds: secondsText };
