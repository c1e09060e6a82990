// How what is printed looks: its paper, its clock, its language, its colours.

import { type CardOptions, type Language, type Paper, type Words, wordsFor } from '@evenfall/chart';
import { Refusal } from './refusal.js';

/** As given on the command line; each undefined where it was not. */
export interface PrintOptions {
  readonly paper?: Paper;
  readonly clock?: '12' | '24';
  readonly language?: Language;
  readonly dark?: boolean;
}

export function wordsOf({ clock, language }: PrintOptions): Words {
  return wordsFor({ language: language ?? 'en', clock: clock === '12' ? 12 : 24 });
}

/** Options of card pages; A6 where no paper is given. */
export function cardOptions(options: PrintOptions): {
  readonly [Key in keyof CardOptions]-?: NonNullable<CardOptions[Key]>;
} {
  const { paper = 'a6', dark = false } = options;
  return { words: wordsOf(options), paper, dark };
}

/**
 * An option that would change nothing is refused, never ignored.
 *
 * @param path file to write; undefined where the answer goes to the screen
 * @throws Refusal naming the options
 */
export function refuse<Given extends object>(
  options: Given,
  names: readonly (keyof Given & string)[],
  path: string | undefined,
): void {
  const given = names.filter((name) => options[name] !== undefined);
  if (given.length === 0) return;
  throw new Refusal([{ kind: 'changes-nothing', options: given, ...(path === undefined ? {} : { path }) }]);
}
