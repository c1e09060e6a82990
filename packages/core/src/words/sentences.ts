// What a program says to people, as data: a record names what it says by one of its keys, most often `kind`, and a
// language is a sentence for every name there is, so that one it lacks does not compile. Nothing reads a sentence back.

import { type Clock, hours24 } from './clock.js';

/** A sentence for every kind of record in a union told apart by `Key`. */
export type Sentences<Said, Key extends keyof Said = 'kind' & keyof Said> = {
  readonly [Kind in Said[Key] & string]: (said: OfKind<Said, Key, Kind>, clock: Clock) => string;
};

/** The records of a union that have a name of their own. */
export type OfKind<Said, Key extends keyof Said, Kind> = Said extends unknown
  ? Kind extends Said[Key]
    ? Said
    : never
  : never;

/**
 * A record in words.
 *
 * @param sentences of one language
 * @param key that tells the records apart
 * @param said the record
 * @param clock how the reader counts hours; 24 of them where none is given
 * @returns one sentence or more
 * @throws RangeError on a record of a kind that `sentences` lacks, which its type forbids
 * @example
 * ```ts
 * import { englishSentences, sentenceOf } from '@evenfall/core';
 *
 * sentenceOf(englishSentences.notes, 'kind', { kind: 'moonset', at: '2026-09-22T19:44:00+02:00' });
 * // → 'The moon sets at 19:44, during the shoot.'
 * ```
 */
export function sentenceOf<Said, Key extends keyof Said>(
  sentences: Sentences<Said, Key>,
  key: Key,
  said: Said,
  clock: Clock = hours24,
): string {
  const kind = (said as Said | undefined)?.[key];
  const say = (sentences as Readonly<Record<string, unknown>> | undefined)?.[kind as string];
  if (typeof say !== 'function')
    throw new RangeError(`said.${String(key)} must be one of sentences, got ${kind}`);
  return (say as (said: Said, clock: Clock) => string)(said, clock);
}
