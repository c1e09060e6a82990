// What a review says and its chart shows, in the words of a language. They stand apart from the words of plan and card: whoever never reviews
// need not load them.

import { englishSentences, type ReviewNoteFacts, type Sentences, sentenceOf } from '@evenfall/core';
import { givenWords } from './given.js';
import type { Language } from './languages.js';
import { germanReviewNotes } from './review-de.js';
import type { Words } from './words.js';

const NOTES: Readonly<Record<Language, Sentences<ReviewNoteFacts>>> = {
  en: englishSentences.reviewNotes,
  de: germanReviewNotes,
};

/** Words of a review's chart. */
export interface ReviewChartWords {
  readonly planned: string;
  readonly taken: string;
  readonly off: string;
  readonly beyond: string;
  /** What the picture is of, for those who cannot see it. */
  readonly described: (p: {
    taken: number;
    planned: number;
    missing: number;
    offTime: number;
    worst: string;
  }) => string;
}

const CHART_WORDS: Readonly<Record<Language, ReviewChartWords>> = {
  en: {
    planned: 'planned',
    taken: 'taken',
    off: 'stops off the target, darker upward',
    beyond: 'beyond the largest correction',
    described: ({ taken, planned, missing, offTime, worst }) =>
      `${taken} of ${planned} frames taken, ${missing} missing; ${offTime} cues not on time; ${worst} stops off the target at worst.`,
  },
  de: {
    planned: 'geplant',
    taken: 'aufgenommen',
    off: 'Blenden neben dem Ziel, dunkler nach oben',
    beyond: 'mehr als die größte Korrektur',
    described: ({ taken, planned, missing, offTime, worst }) =>
      `${taken} von ${planned} Bildern aufgenommen, ${missing} fehlen; ${offTime} Einsätze nicht zur Zeit; höchstens ${worst} Blenden neben dem Ziel.`,
  },
};

export function reviewChartWords({ language }: Words): ReviewChartWords {
  return CHART_WORDS[language as Language];
}

/**
 * A note of a review in words.
 *
 * @param note of a review
 * @param words language and clock, from {@link wordsFor}
 * @returns one sentence or more
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { reviewNoteText, wordsFor } from '@evenfall/chart';
 *
 * const note = { kind: 'cues-missed', cues: [4] } as const;
 * reviewNoteText(note, wordsFor()); // → 'Cue 4 was never done.'
 * reviewNoteText(note, wordsFor({ language: 'de' })); // → 'Einsatz 4 wurde nie ausgeführt.'
 * ```
 */
export function reviewNoteText(note: ReviewNoteFacts, words: Words): string {
  const { language, clock } = givenWords(words);
  return sentenceOf(NOTES[language as Language], 'kind', note, clock);
}
