// Where the shoot of a plan comes from: a file, or answers given as options.

import type { Shoot } from '@evenfall/core';
import type { Io } from './io.js';
import { doubtZone, loadShoot } from './load-shoot.js';
import type { Next } from './plan-text.js';
import type { Answers } from './questions.js';
import { Refusal } from './refusal.js';
import { asArgument } from './wording.js';
import type { CommandWords } from './words/words.js';

/** A path, "-" for standard input; or answers. */
export type ShootSource = string | Answers;

/** @throws Refusal where there is neither, or both */
export function sourceOf(path: string | undefined, answers: Answers): ShootSource {
  const [first] = Object.keys(answers);
  if (path === undefined) {
    if (first === undefined) throw new Refusal([{ kind: 'no-shoot' }]);
    return answers;
  }
  if (first !== undefined) throw new Refusal([{ kind: 'not-together', options: [path, `--${first}`] }]);
  return path;
}

/** @throws Refusal with one line a fault */
export async function shootFrom(source: ShootSource, words: CommandWords, io: Io): Promise<Shoot> {
  if (typeof source === 'string') return loadShoot(source, words, io);
  const { checkedShoot } = await import('./new-shoot.js');
  const { shoot } = checkedShoot(source, io);
  doubtZone(shoot, '--at', words, io);
  return shoot;
}

/** What to go on with. What came down a pipe is gone: there nothing would work. */
export function nextOf(source: ShootSource, { plan: w, newShoot }: CommandWords): Next {
  if (source === '-') return [];
  if (typeof source !== 'string') {
    return [[newShoot.keep, `npx evenfall new evening.yaml ${answersText(source)} --yes`]];
  }
  const path = asArgument(source);
  return [
    [w.nextCard, `npx evenfall card ${path} -o card.pdf`],
    [w.nextChart, `npx evenfall chart ${path} -o chart.svg`],
  ];
}

/** The options that give these answers, as they can be pasted into a shell. */
function answersText(answers: Answers): string {
  return Object.entries(answers)
    .map(([question, text]) => `--${question} ${asArgument(text)}`)
    .join(' ');
}
