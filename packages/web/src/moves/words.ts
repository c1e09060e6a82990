// The words of this part, in the language of the page.

import { words } from '../words/words.js';
import { german } from './words-de.js';
import { english, type MoveWords } from './words-en.js';

const LANGUAGES: Readonly<Record<string, MoveWords>> = { de: german };

export const moveWords = (): MoveWords => LANGUAGES[words().language] ?? english;
