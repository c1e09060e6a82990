// The words of this part, in the language of the page.

import { words } from '../words/words.js';
import { german } from './words-de.js';
import { type ChoiceWords, english } from './words-en.js';

const LANGUAGES: Readonly<Record<string, ChoiceWords>> = { de: german };

export const choiceWords = (): ChoiceWords => LANGUAGES[words().language] ?? english;
