// Options that several commands have, and what every command is added with.

import { type Language, languages, PAPERS } from '@evenfall/chart';
import { Option } from 'commander';

/** Takes an action, and the language in which to say what went wrong with it. */
export type Act = (
  options: { readonly language?: Language | undefined },
  action: Promise<number>,
) => Promise<void>;

export const SHOOT = 'shoot file, YAML or JSON; "-" reads standard input';

export function languageOption(): Option {
  return anyCase(new Option('--language <code>', 'language it is written in (default: en)'), languages);
}

/** One of a few words, in capitals too: A4 is how the sheet is known. */
export function anyCase(option: Option, words: readonly string[]): Option {
  option.choices(words);
  const word = option.parseArg!;
  return option.argParser((text) => word(text.toLowerCase(), undefined));
}

export function paperOption(description: string): Option {
  return anyCase(new Option('--paper <size>', description), PAPERS);
}

export function clockOption(): Option {
  return new Option('--clock <hours>', 'count 24 hours or twice 12 (default: 24)').choices(['12', '24']);
}
