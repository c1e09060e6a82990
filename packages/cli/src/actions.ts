// What each command does, once its arguments are read. Each returns its exit status.

import { calendarTexts } from '@evenfall/chart';
import {
  type LightTable,
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
import pc from 'picocolors';
import { cardMakers } from './card-files.js';
import { lightChartMakers, planChartMakers } from './chart-files.js';
import { choicesText } from './choices-text.js';
import type { Io } from './io.js';
import { lightText } from './light-text.js';
import { loadShoot } from './load-shoot.js';
import { type Makers, makerFor, written } from './output.js';
import { infeasibleText, planText } from './plan-text.js';
import { type PrintOptions, refuse, wordsOf } from './print-options.js';
import { Refusal } from './refusal.js';

export interface Options {
  readonly json?: boolean;
  readonly output?: string;
}

/** An answer that goes into a file, and how it should look there. */
interface Written extends PrintOptions {
  readonly output: string;
}

const PLAN_MAKERS: Makers<PlanMade> = {
  '.json': (plan, path) => [{ path, content: writePlan(plan) }],
  '.csv': (plan, path) => [{ path, content: writeFramesCsv(plan) }],
};

/** Prints the plan, or writes it, or prints what other weights would give; status 2 where no ramp exists. */
export async function plan(
  shootPath: string,
  options: Options & { readonly choices?: boolean },
  io: Io,
): Promise<number> {
  const { json, output, choices } = options;
  if (choices) return printChoices(shootPath, options, io);
  if (output !== undefined) return writeFrom(shootPath, output, io, planShoot, PLAN_MAKERS);
  const colors = pc.createColors(io.color);
  const answer = planShoot(await loadShoot(shootPath, io));
  const infeasible = 'infeasible' in answer;
  if (json) io.out(writePlan(answer));
  else io.out(infeasible ? infeasibleText(answer, colors) : planText(answer, shootPath, colors));
  return infeasible ? 2 : 0;
}

async function printChoices(shootPath: string, { json, output }: Options, io: Io): Promise<number> {
  if (output !== undefined) throw new Refusal(['-o does not go with --choices; leave one out']);
  const answer = planChoices(await loadShoot(shootPath, io));
  if ('infeasible' in answer) {
    io.out(json ? writePlan(answer) : infeasibleText(answer, pc.createColors(io.color)));
    return 2;
  }
  io.out(json ? `${JSON.stringify(answer, null, 2)}\n` : choicesText(answer));
  return 0;
}

export async function card(shootPath: string, { output, ...look }: Written, io: Io): Promise<number> {
  return writeFrom(shootPath, output, io, planShoot, cardMakers(look));
}

export async function chart(shootPath: string, { output, ...look }: Written, io: Io): Promise<number> {
  return writeFrom(shootPath, output, io, planShoot, planChartMakers(look));
}

/** `ahead`: seconds from 0 to 86400 by which an alarm comes before its cue, where it was given. */
export async function cues(
  shootPath: string,
  { output, ahead, ...look }: Written & { readonly ahead?: number },
  io: Io,
): Promise<number> {
  const words = wordsOf(look);
  return writeFrom(shootPath, output, io, planShoot, {
    '.csv': (plan, path) => {
      refuse({ ahead, ...look }, ['ahead', 'language', 'clock'], path);
      return [{ path, content: writeCuesCsv(plan) }];
    },
    '.ics': (plan, path) => {
      const texts = calendarTexts(plan, words);
      return [{ path, content: writeCalendar(plan, { aheadS: ahead ?? 60, texts }) }];
    },
    '.json': (plan, path) => {
      refuse({ ahead, ...look }, ['ahead', 'language', 'clock'], path);
      return [{ path, content: `${JSON.stringify(plan.cues, null, 2)}\n` }];
    },
  });
}

/** Prints the light table, or writes it; status 2 where the sun never reaches the span. */
export async function light(
  shootPath: string,
  { json, output, ...look }: Options & PrintOptions,
  io: Io,
): Promise<number> {
  if (output !== undefined) return writeFrom(shootPath, output, io, lightTable, lightChartMakers(look));
  refuse(look, ['paper', 'dark', 'language', 'clock'], undefined);
  const colors = pc.createColors(io.color);
  const shoot = await loadShoot(shootPath, io);
  const answer = lightTable(shoot);
  if ('infeasible' in answer) {
    io.out(json ? writePlan(answer) : infeasibleText(answer, colors));
    return 2;
  }
  io.out(json ? writeLight(answer) : lightText(answer, shoot, colors));
  return 0;
}

/** Loads the shoot, works out the answer and writes it in the form its ending asks for; nothing where none exists. */
async function writeFrom<Answer extends PlanMade | LightTable>(
  shootPath: string,
  output: string,
  io: Io,
  answerTo: (shoot: Shoot) => Answer | PlanInfeasible,
  makers: Makers<Answer>,
): Promise<number> {
  const make = makerFor(output, makers, shootPath);
  const answer = answerTo(await loadShoot(shootPath, io));
  if ('infeasible' in answer) {
    const why = answer.infeasible.text.replace(/[.\s]+$/, '');
    throw new Refusal([`nothing written: ${why}; "evenfall plan" says what would cure it`], 2);
  }
  io.out(written(await make(answer, output), shootPath));
  return 0;
}
