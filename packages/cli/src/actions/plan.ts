// The plan command. With it is loaded what prints a plan; files and choices are where they are asked for.

import { planShoot } from '@evenfall/core';
import { screenOf } from '../colors.js';
import type { Io } from '../io.js';
import { infeasibleText, planText } from '../plan-text.js';
import { type Answers, answersIn } from '../questions.js';
import { refuseLanguage } from '../refuse-language.js';
import { nextOf, shootFrom, sourceOf } from '../shoot-source.js';
import { speech } from '../words/words.js';
import type { Options } from './options.js';

/**
 * Prints the plan, or writes it, or prints what other weights would give; status 2 where no ramp exists.
 *
 * @param path of a shoot file; undefined where the options say what it would
 */
export async function plan(
  path: string | undefined,
  options: Options & Answers & { readonly choices?: boolean },
  io: Io,
): Promise<number> {
  const { json, output, choices, language } = options;
  const source = sourceOf(path, answersIn(options));
  refuseLanguage(language, json ? '--json' : undefined);
  if (choices) {
    const { printChoices } = await import('./choices.js');
    return printChoices(source, options, io);
  }
  if (output !== undefined) {
    const { writePlanFile } = await import('./plan-files.js');
    return writePlanFile(source, { ...options, output }, io);
  }
  const words = speech(language);
  const screen = await screenOf(io);
  const answer = planShoot(await shootFrom(source, words, io));
  const infeasible = answer.kind === 'infeasible';
  const printed = json
    ? (await import('./plan-files.js')).writePlan(answer)
    : infeasible
      ? infeasibleText(answer, words, screen)
      : planText(answer, nextOf(source, words), words, screen);
  io.out(printed);
  return infeasible ? 2 : 0;
}
