// The words that the command speaks in: of one language.

import type { Language } from '@evenfall/chart';
import { german } from './de.js';
import { type CommandWords, english } from './en.js';

export type { CommandWords };

const LANGUAGES: Readonly<Record<Language, CommandWords>> = { en: english, de: german };

/** The words of a language; English where none is given. */
export function speech(language: Language = 'en'): CommandWords {
  return LANGUAGES[language];
}
