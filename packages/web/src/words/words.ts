// The words in use. English is there from the start; any other language is loaded when it is chosen.

import { signal } from '@preact/signals-core';
import { part } from '../state/part.js';
import { keep, kept } from '../state/store.js';
import { english, type PageWords } from './en.js';

/** Languages by code (RFC 5646), each by its own name, and where its words are. */
export const LANGUAGES: readonly {
  readonly code: string;
  readonly name: string;
  readonly load: () => Promise<PageWords>;
}[] = [
  { code: 'en', name: english.languageName, load: async () => english },
  { code: 'de', name: 'Deutsch', load: async () => (await part(import('./de.js')))?.german ?? english },
];

const current = signal<PageWords>(english);

/** The words of the language chosen. */
export const words = (): PageWords => current.value;

export async function useLanguage(code: string): Promise<void> {
  const language = LANGUAGES.find((known) => known.code === code);
  if (language === undefined) return;
  keep('language', code);
  current.value = await language.load();
}

/** The language kept, else the device's own where there are words for it. Resolves once they are there. */
export async function firstLanguage(): Promise<void> {
  const wanted = [kept('language'), navigator.language.slice(0, 2)];
  const language = wanted
    .map((code) => LANGUAGES.find((known) => known.code === code))
    .find((known) => known !== undefined);
  if (language !== undefined) current.value = await language.load();
}
