// The new command: a dozen questions, and the shoot file that the answers make. The plan command takes the same answers
// as options, without a file.

import { existsSync, writeFileSync } from 'node:fs';
import { faultText, type Language } from '@evenfall/chart';
import { type FileError, readShoot, rfc3339, type Shoot, zoneOf } from '@evenfall/core';
import { PATHS, shootOf, usual } from './answers.js';
import { asMeant } from './as-meant.js';
import type { Io } from './io.js';
import { linesOf } from './layout.js';
import { doubtZone, withZone } from './load-shoot.js';
import { type Answers, answersIn, QUESTIONS, type Question } from './questions.js';
import { Refusal } from './refusal.js';
import { type FirstShoot, shootText } from './shoot-text.js';
import { systemFault } from './system-error.js';
import { asArgument } from './wording.js';
import { type CommandWords, speech } from './words/words.js';

export interface NewOptions extends Answers {
  readonly language?: Language;
  readonly yes?: boolean;
  readonly json?: boolean;
}

export async function writeNew(path: string, options: NewOptions, io: Io): Promise<number> {
  const words = speech(options.language);
  const toScreen = path === '-';
  if (!toScreen && existsSync(path)) throw alreadyThere(path);
  const given = answersIn(options);
  const answers = options.yes ? given : await asked(given, words, io);
  if (answers === undefined) {
    io.err(`evenfall: ${words.newShoot.brokenOff}\n`);
    return 1;
  }
  const { value, shoot } = checkedShoot(answers, io);
  doubtZone(shoot, '--at', words, io);
  const text = options.json
    ? `${JSON.stringify(value, null, 2)}\n`
    : shootText(value, planCommand(toScreen ? 'evening.yaml' : path), words);
  if (toScreen) {
    io.out(text);
    return 0;
  }
  try {
    writeFileSync(path, text, { flag: 'wx' });
  } catch (error) {
    throw new Refusal([{ kind: 'cannot-write', path, because: systemFault(error) }]);
  }
  io.out(`${words.wrote([path])}\n${words.newShoot.next(planCommand(path))}\n`);
  return 0;
}

const planCommand = (path: string) => `npx evenfall plan ${asArgument(path)}`;

function alreadyThere(path: string): Refusal {
  return new Refusal([{ kind: 'cannot-write', path, because: { code: 'EEXIST' } }]);
}

/**
 * The shoot of these answers, and the value of the file that holds it.
 *
 * @throws Refusal, a line a fault, each under its option
 */
export function checkedShoot(
  answers: Answers,
  io: Io,
): { readonly value: FirstShoot; readonly shoot: Shoot } {
  const read = readAnswers(answers, io);
  if (read.kind === 'ok') return read;
  throw refusalFor(read.errors);
}

/** A line an option: two ends of a range that are wrong are one slip. */
function refusalFor(errors: readonly FileError[]): Refusal {
  const byPlace = new Map<string, FileError>();
  for (const fault of errors) if (!byPlace.has(placeOf(fault))) byPlace.set(placeOf(fault), fault);
  return new Refusal([...byPlace].map(([where, fault]) => ({ kind: 'fault', where, fault })));
}

function readAnswers(answers: Answers, io: Io) {
  const value = asMeant(shootOf(answers, todayAt(answers, io))) as FirstShoot;
  const read = readShoot(withZone(value));
  return read.kind === 'ok' ? { kind: 'ok' as const, value, shoot: read.shoot } : read;
}

/** "--at: latitudeDeg" as the option and what of it; a key that no option stands for as the file has it. */
function placeOf({ path, where }: FileError): string {
  const question = questionOf(path);
  return question === undefined ? where : `--${question}`;
}

function questionOf(path: FileError['path']): Question | undefined {
  return QUESTIONS.find((question) =>
    PATHS[question].some((keys) => keys.every((key, i) => path[i] === key)),
  );
}

/** The date at the place; that of UTC where the place is not known yet. */
function todayAt(answers: Answers, io: Io): string {
  const { place } = withZone(shootOf({ at: '', ...answers }, '2000-01-01')) as {
    place: { longitudeDeg?: unknown; timeZone?: string };
  };
  const { longitudeDeg, timeZone } = place;
  const zone = zoneOf(
    typeof longitudeDeg === 'number' && timeZone !== undefined
      ? { longitudeDeg, timeZone }
      : { longitudeDeg: 0, timeZone: 'UTC' },
  );
  return rfc3339(io.nowMs(), zone).slice(0, 10);
}

/** Asks what is not given; undefined where a person broke off. What is wrong is told, and at a terminal asked again. */
async function asked(given: Answers, words: CommandWords, io: Io): Promise<Answers | undefined> {
  const terminal = io.terminal?.();
  const lines = (terminal?.lines() ?? io.stdinLines())[Symbol.asyncIterator]();
  const { questions, brackets } = words.newShoot;
  const left = QUESTIONS.filter((question) => given[question] === undefined);
  let answers = given;
  // What was given beforehand is right before anything is asked; the place is asked for first of all that may lack.
  checkedShoot({ at: '0, 0', ...given }, io);
  try {
    for (let i = 0; i < left.length; ) {
      const question = left[i]!;
      const fallback = usual(question, answers, todayAt(answers, io));
      const shown = words.newShoot.shown(fallback ?? '');
      const prompt = linesOf(
        `${i + 1}/${left.length} ${questions[question]}${shown === '' ? '' : ` ${brackets(shown)}`}: `,
        terminal?.columns(),
      );
      terminal?.say(
        prompt
          .slice(0, -1)
          .map((line) => `${line}\n`)
          .join(''),
      );
      terminal?.ask(prompt[prompt.length - 1]!);
      const { done, value } = await lines.next();
      if (done && terminal !== undefined) return undefined;
      const text = (value ?? '').trim();
      const next = text === '' && fallback !== undefined ? answers : { ...answers, [question]: text };
      const read = readAnswers({ at: '0, 0', ...next }, io);
      if (read.kind === 'ok') {
        answers = next;
        i++;
      } else if (terminal === undefined) {
        throw refusalFor(read.errors);
      } else {
        const told = linesOf(`! ${faultText(read.errors[0]!, words.card)}`, terminal.columns());
        terminal.say(`${told.join('\n')}\n`);
      }
    }
  } finally {
    terminal?.close();
  }
  return answers;
}
