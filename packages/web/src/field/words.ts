// The words of the field view, in the language of the page.

import { words } from '../words/words.js';
import { german } from './words-de.js';
import { english, type FieldWords } from './words-en.js';

const LANGUAGES: Readonly<Record<string, FieldWords>> = { de: german };

export const fieldWords = (): FieldWords => LANGUAGES[words().language] ?? english;
