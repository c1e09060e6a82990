// Options that several commands have.

import { type Language, languages } from '@evenfall/chart';
import { Option } from 'commander';
import { Refusal } from './refusal.js';

/** Takes an action, and the language in which to say what went wrong with it. */
export type Act = (
  options: { readonly language?: Language | undefined },
  action: Promise<number>,
) => Promise<void>;

export function languageOption(): Option {
  return anyCase(new Option('--language <code>', 'language it is written in (default: en)'), languages);
}

/**
 * What a program reads is in no language.
 *
 * @param data the option that asks for it, where it was given
 * @throws Refusal where a language is asked for beside it
 */
export function refuseLanguage(language: Language | undefined, data: string | undefined): void {
  if (language !== undefined && data !== undefined) {
    throw new Refusal([{ kind: 'not-together', options: ['--language', data] }]);
  }
}

/** One of a few words, in capitals too: A4 is how the sheet is known. */
export function anyCase(option: Option, words: readonly string[]): Option {
  option.choices(words);
  const word = option.parseArg!;
  return option.argParser((text) => word(text.toLowerCase(), undefined));
}
