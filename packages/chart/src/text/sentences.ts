// What the library says as data, in the words of a language.

import {
  type CueNoteFacts,
  type FaultFacts,
  type FollowWarningFacts,
  type MoveFound,
  type NoteFacts,
  type RefusalReason,
  type Remedy,
  type RemedyChange,
  type SavedFaultFacts,
  sentenceOf,
  type WhyInfeasible,
  type WhyMissing,
} from '@evenfall/core';
import { checkGiven, givenWords } from './given.js';
import type { Words } from './words-en.js';

/**
 * A note of a plan in words.
 *
 * @param note of a plan
 * @param words language and clock, from {@link wordsFor}
 * @returns one sentence or more
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { noteText, wordsFor } from '@evenfall/chart';
 *
 * const note = { kind: 'moonset', at: '2026-09-22T19:44:00+02:00' } as const;
 * noteText(note, wordsFor({ clock: 12 })); // → 'The moon sets at 7:44 pm, during the shoot.'
 * noteText(note, wordsFor({ language: 'de' })); // → 'Der Mond geht um 19:44 unter, während der Aufnahme.'
 * ```
 */
export function noteText(note: NoteFacts, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.notes, 'kind', note, clock);
}

/**
 * A note at a cue in words.
 *
 * @param note of a cue of a plan
 * @param words language, from {@link wordsFor}
 * @returns one sentence
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { cueNoteText, wordsFor } from '@evenfall/chart';
 *
 * const note = { kind: 'blur-jump', stops: -4.9 } as const;
 * cueNoteText(note, wordsFor()); // → 'From here on motion blurs 4.9 stops less.'
 * ```
 */
export function cueNoteText(note: CueNoteFacts, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.cueNotes, 'kind', note, clock);
}

/**
 * Why a shoot has no plan, in words.
 *
 * @param why `infeasible` of a plan
 * @param words language and clock, from {@link wordsFor}
 * @returns one sentence or more
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { reasonText, wordsFor } from '@evenfall/chart';
 *
 * const gap = { writeS: 0.5, moveS: 2, settleS: 1, gapS: 3.5 };
 * const why = { reason: 'no-time', gap, intervalS: 3, darkFrame: false } as const;
 * reasonText(why, wordsFor({ language: 'de' })).slice(-31); // → 'keine Zeit für eine Belichtung.'
 * ```
 */
export function reasonText(why: WhyInfeasible, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.reasons, 'reason', why, clock);
}

/**
 * A change that would cure something, in words.
 *
 * @param change one of the `remedies` of a plan
 * @param words language and clock, from {@link wordsFor}
 * @returns one sentence
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { remedyText, wordsFor } from '@evenfall/chart';
 *
 * const change = { change: 'higher-iso', iso: 6400, fromIso: 3200 } as const;
 * remedyText(change, wordsFor({ language: 'de' })); // → 'Die höchste ISO von 3200 auf 6400 heben.'
 * ```
 */
export function remedyText(change: RemedyChange, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.remedies, 'change', change, clock);
}

/**
 * What a remedy leaves to spare, in words.
 *
 * @param remedy one of the `remedies` of a plan
 * @param words language, from {@link wordsFor}
 * @returns one sentence; nothing where it is not known
 * @throws RangeError on what is no remedy or no words
 * @example
 * ```ts
 * import { reserveText, wordsFor } from '@evenfall/chart';
 *
 * reserveText({ reserveEv: 0 }, wordsFor()); // → 'It works, with nothing to spare.'
 * reserveText({ reserveEv: 1.24 }, wordsFor({ language: 'de' })); // → 'Das lässt 1,2 Blenden Reserve.'
 * ```
 */
export function reserveText(remedy: Pick<Remedy, 'reserveEv' | 'spareS' | 'clip'>, words: Words): string {
  checkGiven('remedy', remedy, undefined, 'one of the remedies of a plan');
  const { reserveEv, spareS, clip } = remedy;
  const { library } = givenWords(words);
  if (reserveEv === undefined) return '';
  return library.reserve({ reserveEv, ...(spareS === undefined ? {} : { spareS }), ...(clip && { clip }) });
}

/**
 * Something found in the moves of a plan, in words.
 *
 * @param found one of the `findings` of a plan's `move`
 * @param words language, from {@link wordsFor}
 * @returns one sentence or more, without what would fix it
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { findingText, wordsFor } from '@evenfall/chart';
 *
 * const found = { kind: 'blur', frame: 41, blurPx: 4.2 } as const;
 * findingText(found, wordsFor()).slice(0, 47); // → 'The move goes on while the shutter is open: at '
 * ```
 */
export function findingText(found: MoveFound, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.findings, 'kind', found, clock);
}

/**
 * Why an event of the sky does not come, in words.
 *
 * @param why one of the `missing` of a light table
 * @param words language, from {@link wordsFor}
 * @returns part of a sentence
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { missingText, wordsFor } from '@evenfall/chart';
 *
 * missingText({ kind: 'moon-stays-up' }, wordsFor({ language: 'de' })); // → 'der Mond geht nicht unter'
 * ```
 */
export function missingText(why: WhyMissing, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.missing, 'kind', why, clock);
}

/**
 * Why a reading is not used, in words.
 *
 * @param why one of the `refused` of a correction
 * @param words language, from {@link wordsFor}
 * @returns one sentence or two
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { refusalText, wordsFor } from '@evenfall/chart';
 *
 * const why = { reason: 'superseded' } as const;
 * refusalText(why, wordsFor({ language: 'de' })).slice(-28); // → 'Das Licht hat sich geändert.'
 * ```
 */
export function refusalText(why: RefusalReason, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.refusals, 'reason', why, clock);
}

/**
 * What following warns of, in words.
 *
 * @param warning one of the `warnings` of an answer
 * @param words language and clock, from {@link wordsFor}
 * @returns one sentence or more
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { warningText, wordsFor } from '@evenfall/chart';
 *
 * const over = { kind: 'over', frameCount: 900 } as const;
 * warningText(over, wordsFor({ language: 'de' })); // → 'Das letzte Bild, 900, ist gemacht.'
 * ```
 */
export function warningText(warning: FollowWarningFacts, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.warnings, 'kind', warning, clock);
}

/**
 * What is wrong with a file or a saved evening, in words, without its place.
 *
 * @param fault one of the `errors` of {@link readShoot}, {@link readPlan} or {@link resumeFollow}
 * @param words language, from {@link wordsFor}
 * @returns part of a sentence: what was found, and what would be right
 * @throws RangeError on a record of a kind that there is no sentence for
 * @example
 * ```ts
 * import { faultText, wordsFor } from '@evenfall/chart';
 *
 * const give = { give: 'range', unit: 'degrees', from: -90, to: 90 } as const;
 * const fault = { kind: 'wrong-value', given: 95, what: 'latitude', give } as const;
 * faultText(fault, wordsFor()); // → '95 is not a latitude; give degrees from -90 to 90'
 * faultText(fault, wordsFor({ language: 'de' })); // → '95 geht hier nicht; richtig: Grad von −90 bis 90'
 * ```
 */
export function faultText(fault: FaultFacts | SavedFaultFacts, words: Words): string {
  const { library, clock } = givenWords(words);
  return sentenceOf(library.faults, 'kind', fault, clock);
}
