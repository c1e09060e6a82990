// The words that chart, card and calendar print: a language and a clock.

import { checkGiven } from './given.js';
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
 * @throws RangeError on another language or clock
 * @example
 * ```ts
 * import { wordsFor } from '@evenfall/chart';
 *
 * wordsFor({ clock: 12 }).clock('2026-09-22T18:42:00+02:00'); // → '6:42 pm'
 * wordsFor({ language: 'de' }).noFilter; // → 'ohne Filter'
 * ```
 */
export function wordsFor(
  options: { readonly language?: Language | undefined; readonly clock?: 12 | 24 | undefined } = {},
): Words {
  checkGiven('options', options, undefined, 'a group with language, clock');
  const { language = 'en', clock = 24 } = options;
  if (!Object.hasOwn(LANGUAGES, language)) {
    throw new RangeError(`language must be one of ${Object.keys(LANGUAGES).join(', ')}, got ${language}`);
  }
  if (clock !== 12 && clock !== 24) throw new RangeError(`clock must be 12 or 24, got ${clock}`);
  const words = LANGUAGES[language];
  if (clock === 24) return words;
  return { ...words, clock: (at, withSeconds) => twelveHours(words.clock(at, withSeconds), words.halves) };
}
