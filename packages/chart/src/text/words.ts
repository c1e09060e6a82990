// The words that chart, card and calendar print: a language and a clock.

import type { Language } from './languages.js';
import { german } from './words-de.js';
import { english, type Words } from './words-en.js';
import { twelveHours } from './words-parts.js';

export { english, type Words };

const LANGUAGES: Readonly<Record<Language, Words>> = { en: english, de: german };

/**
 * Words in a language, its clock of 24 hours or of twelve with their half of the day.
 *
 * @param options `language`, English where none is given; `clock`, 24 where none is given
 * @returns for {@link planChart}, {@link cardPages} and the rest
 * @example
 * ```ts
 * import { wordsFor } from '@evenfall/chart';
 *
 * wordsFor({ clock: 12 }).clock('2026-09-22T18:42:00+02:00'); // → '6:42 pm'
 * wordsFor({ language: 'de' }).noFilter; // → 'ohne Filter'
 * ```
 */
export function wordsFor({
  language = 'en',
  clock = 24,
}: {
  readonly language?: Language | undefined;
  readonly clock?: 12 | 24 | undefined;
} = {}): Words {
  const words = LANGUAGES[language];
  if (clock === 24) return words;
  return { ...words, clock: (at, withSeconds) => twelveHours(words.clock(at, withSeconds), words.halves) };
}
