// From a shoot to an answer in a file.

import type { PlanInfeasible, PlanMade, Shoot } from '@evenfall/core';
import type { ShootLight } from '../chart-files.js';
import type { Io } from '../io.js';
import { type Makers, makerFor, write } from '../output.js';
import { Refusal } from '../refusal.js';
import { type ShootSource, shootFrom } from '../shoot-source.js';
import type { CommandWords } from '../words/words.js';

/** Loads the shoot, works out the answer and writes it in the form its ending asks for; nothing where none exists. */
export async function writeFrom<Answer extends PlanMade | ShootLight>(
  source: ShootSource,
  output: string,
  words: CommandWords,
  io: Io,
  answerTo: (shoot: Shoot) => Answer | PlanInfeasible,
  makers: Makers<Answer>,
  json = false,
): Promise<number> {
  const path = typeof source === 'string' ? source : undefined;
  const make = makerFor(output, makers, path);
  const answer = answerTo(await shootFrom(source, words, io));
  if (answer.kind === 'infeasible') {
    throw new Refusal([{ kind: 'nothing-written', why: answer.infeasible }], 2);
  }
  write(await make(answer, output), { output, json }, path, words, io);
  return 0;
}
