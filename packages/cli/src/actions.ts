// What each command does, once its arguments are read. Each returns its exit status.

import { calendarTexts, type Language } from '@evenfall/chart';
import {
  lightTable,
  type PlanInfeasible,
  type PlanMade,
  planChoices,
  planShoot,
  type Shoot,
  writeCalendar,
  writeCuesCsv,
  writeFramesCsv,
  writeLight,
  writePlan,
} from '@evenfall/core';
import { cardMakers } from './card-files.js';
import { lightChartMakers, planChartMakers, type ShootLight } from './chart-files.js';
import { choicesText } from './choices-text.js';
import { screenOf } from './colors.js';
import type { Io } from './io.js';
import { lightText } from './light-text.js';
import { loadShoot } from './load-shoot.js';
import { answersIn } from './new-shoot.js';
import { type Makers, makerFor, write } from './output.js';
import { infeasibleText, planText } from './plan-text.js';
import { type PrintOptions, refuse, wordsOf } from './print-options.js';
import type { Answers } from './questions.js';
import { Refusal } from './refusal.js';
import { refuseLanguage } from './refuse-language.js';
import { nextOf, type ShootSource, shootFrom, sourceOf } from './shoot-source.js';
import { type CommandWords, speech } from './words/words.js';

export interface Options {
  readonly language?: Language;
  readonly json?: boolean;
  readonly output?: string;
}

/** An answer that goes into a file, and how it should look there. */
export interface Written extends PrintOptions {
  readonly json?: boolean;
  readonly output: string;
}

const PLAN_MAKERS: Makers<PlanMade> = {
  '.json': (plan, path) => [{ path, content: writePlan(plan) }],
  '.csv': (plan, path) => [{ path, content: writeFramesCsv(plan) }],
};

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
  if (choices) return printChoices(source, options, io);
  const words = speech(language);
  if (output !== undefined) {
    refuse({ language }, ['language'], output);
    return writeFrom(source, output, words, io, planShoot, PLAN_MAKERS, json);
  }
  const screen = screenOf(io);
  const answer = planShoot(await shootFrom(source, words, io));
  const infeasible = answer.kind === 'infeasible';
  if (json) io.out(writePlan(answer));
  else
    io.out(
      infeasible
        ? infeasibleText(answer, words, screen)
        : planText(answer, nextOf(source, words), words, screen),
    );
  return infeasible ? 2 : 0;
}

async function printChoices(
  source: ShootSource,
  { json, output, language }: Options,
  io: Io,
): Promise<number> {
  if (output !== undefined) throw new Refusal([{ kind: 'not-together', options: ['-o', '--choices'] }]);
  const words = speech(language);
  const answer = planChoices(await shootFrom(source, words, io));
  if (answer.kind === 'infeasible') {
    io.out(json ? writePlan(answer) : infeasibleText(answer, words, screenOf(io)));
    return 2;
  }
  const { choices } = answer;
  io.out(json ? `${JSON.stringify(choices, null, 2)}\n` : choicesText(choices, words, io.columns));
  return 0;
}

export async function card(shootPath: string, { output, json, ...look }: Written, io: Io): Promise<number> {
  return writeFrom(shootPath, output, speech(look.language), io, planShoot, cardMakers(look), json);
}

export async function chart(shootPath: string, { output, json, ...look }: Written, io: Io): Promise<number> {
  return writeFrom(shootPath, output, speech(look.language), io, planShoot, planChartMakers(look), json);
}

/** Seconds from 0 to 86400, each where it was given. */
export interface CueOptions extends Options, PrintOptions {
  readonly ahead?: readonly number[]; // by which alarms come before their cue
  readonly travel?: number; // to the place
}

export async function cues(
  shootPath: string,
  { output: given, json, ahead, travel, ...look }: CueOptions,
  io: Io,
): Promise<number> {
  const words = wordsOf(look);
  const output = given ?? (json ? '-.json' : undefined);
  if (output === undefined) throw new Refusal([{ kind: 'no-output' }]);
  return writeFrom(
    shootPath,
    output,
    speech(look.language),
    io,
    planShoot,
    {
      '.csv': (plan, path) => {
        refuse({ ahead, travel, ...look }, ['ahead', 'travel', 'language', 'clock'], path);
        return [{ path, content: writeCuesCsv(plan) }];
      },
      '.ics': (plan, path) => {
        const texts = calendarTexts(plan, words);
        return [
          { path, content: writeCalendar(plan, { aheadS: ahead ?? 60, travelS: travel ?? 1800, texts }) },
        ];
      },
      '.json': (plan, path) => {
        refuse({ ahead, travel, ...look }, ['ahead', 'travel', 'language', 'clock'], path);
        return [{ path, content: `${JSON.stringify(plan.cues, null, 2)}\n` }];
      },
    },
    json,
  );
}

/** Prints the light table, or writes it; status 2 where the sun never reaches the span. */
export async function light(
  shootPath: string,
  { json, output, ...look }: Options & PrintOptions,
  io: Io,
): Promise<number> {
  const words = speech(look.language);
  if (output !== undefined)
    return writeFrom(shootPath, output, words, io, shootLight, lightChartMakers(look), json);
  refuse(look, ['paper', 'dark', 'clock'], undefined);
  refuseLanguage(look.language, json ? '--json' : undefined);
  const screen = screenOf(io);
  const shoot = await loadShoot(shootPath, words, io);
  const answer = lightTable(shoot);
  if (answer.kind === 'infeasible') {
    io.out(json ? writePlan(answer) : infeasibleText(answer, words, screen));
    return 2;
  }
  io.out(json ? writeLight(answer) : lightText(answer, shoot, words, screen));
  return 0;
}

function shootLight(shoot: Shoot): ShootLight | PlanInfeasible {
  const table = lightTable(shoot);
  return table.kind === 'ok' ? { kind: 'ok', table, shoot } : table;
}

/** Loads the shoot, works out the answer and writes it in the form its ending asks for; nothing where none exists. */
async function writeFrom<Answer extends PlanMade | ShootLight>(
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
