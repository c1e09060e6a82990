// The words in use.

import { signal } from '@preact/signals-core';
import { keep, kept } from '../state/store.js';
import { english, type PageWords } from './en.js';

export const LANGUAGES: readonly PageWords[] = [english];

const known = (code: unknown) => LANGUAGES.find(({ language }) => language === code);

const current = signal(
  known(kept('language')) ?? known(globalThis.navigator?.language.slice(0, 2)) ?? english,
);

/** The words of the language chosen. */
export const words = (): PageWords => current.value;

export function useLanguage(code: string): void {
  current.value = known(code) ?? english;
  keep('language', current.value.language);
}
