// The words of this part, in the language of the page.

import { words } from '../words/words.js';
import { german } from './words-de.js';
import { type DayWords, english } from './words-en.js';

const LANGUAGES: Readonly<Record<string, DayWords>> = { de: german };

export const dayWords = (): DayWords => LANGUAGES[words().language] ?? english;
