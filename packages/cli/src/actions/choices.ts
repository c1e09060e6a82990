// What other weights would give.

import { planChoices, writePlan } from '@evenfall/core';
import { choicesText } from '../choices-text.js';
import { screenOf } from '../colors.js';
import type { Io } from '../io.js';
import { infeasibleText } from '../plan-text.js';
import { Refusal } from '../refusal.js';
import { type ShootSource, shootFrom } from '../shoot-source.js';
import { speech } from '../words/words.js';
import type { Options } from './options.js';

/** Status 2 where no ramp exists. */
export async function printChoices(
  source: ShootSource,
  { json, output, language }: Options,
  io: Io,
): Promise<number> {
  if (output !== undefined) throw new Refusal([{ kind: 'not-together', options: ['-o', '--choices'] }]);
  const words = speech(language);
  const answer = planChoices(await shootFrom(source, words, io));
  if (answer.kind === 'infeasible') {
    io.out(json ? writePlan(answer) : infeasibleText(answer, words, await screenOf(io)));
    return 2;
  }
  const { choices } = answer;
  io.out(json ? `${JSON.stringify(choices, null, 2)}\n` : choicesText(choices, words, io.columns));
  return 0;
}
