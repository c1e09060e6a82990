/**
 * How what the library says as data becomes a sentence of a language.
 *
 * @module @evenfall/core/words
 */

export { type Clock, type ClocksBack, clockOver } from './clock.js';
export { type OfKind, type Sentences, sentenceOf } from './sentences.js';
