// The words of this part, in the language of the page.

import { words } from '../words/words.js';
import { german } from './words-de.js';
import { english, type ReviewWords } from './words-en.js';

const LANGUAGES: Readonly<Record<string, ReviewWords>> = { de: german };

export const reviewWords = (): ReviewWords => LANGUAGES[words().language] ?? english;
