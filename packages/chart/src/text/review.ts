// Notes of a review in the words of a language. They stand apart from the words of plan and card: whoever never reviews
// need not load them.

import { englishReviewNotes, type ReviewNoteFacts, type Sentences, sentenceOf } from '@evenfall/core';
import { germanReviewNotes } from './review-de.js';
import type { Language, Words } from './words.js';

const NOTES: Readonly<Record<Language, Sentences<ReviewNoteFacts>>> = {
  en: englishReviewNotes,
  de: germanReviewNotes,
};

/**
 * A note of a review in words.
 *
 * @param note of a review
 * @param words language and clock, from {@link wordsFor}
 * @returns one sentence or more
 * @example
 * ```ts
 * import { reviewNoteText, wordsFor } from '@evenfall/chart';
 *
 * const note = { kind: 'cues-missed', cues: [4] } as const;
 * reviewNoteText(note, wordsFor()); // → 'Cue 4 was never done.'
 * reviewNoteText(note, wordsFor({ language: 'de' })); // → 'Einsatz 4 wurde nie ausgeführt.'
 * ```
 */
export function reviewNoteText(note: ReviewNoteFacts, { language, clock }: Words): string {
  return sentenceOf(NOTES[language as Language], 'kind', note, clock);
}
