// The languages there are, apart from their words: a list of them needs no dictionary.

/** Code of a language, as in RFC 5646. */
export type Language = 'en' | 'de';

/**
 * Codes of the languages there are, as in RFC 5646.
 *
 * @example
 * ```ts
 * import { languages } from '@evenfall/chart';
 *
 * languages; // → ['en', 'de']
 * ```
 */
export const languages: readonly Language[] = ['en', 'de'];
