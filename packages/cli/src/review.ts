// After the shoot: frames that were taken, held against the plan.

import { extname } from 'node:path';
import {
  type PlanMade,
  type ReviewOptions,
  reviewFrames,
  type TakenFrame,
  writeReview,
} from '@evenfall/core';
import { screenOf } from './colors.js';
import type { Io } from './io.js';
import { journalOf } from './journal-of.js';
import { loadPlan } from './load-plan.js';
import { loadShoot } from './load-shoot.js';
import { makerFor, write } from './output.js';
import { readPhoto } from './photo-exif.js';
import { type PhotoFile, photoFiles } from './photo-files.js';
import { framesOfTable } from './photo-table.js';
import { type PrintOptions, refuse } from './print-options.js';
import { progressOf } from './progress.js';
import { Refusal } from './refusal.js';
import { refuseLanguage } from './refuse-language.js';
import { type Reviewed, reviewMakers } from './review-files.js';
import { reviewText } from './review-text.js';
import { type CommandWords, speech } from './words/words.js';

export interface ReviewFlags extends PrintOptions {
  readonly json?: boolean;
  readonly output?: string;
  readonly levels?: boolean;
  readonly journal?: string;
  readonly clockFast?: number;
  readonly most?: number;
  readonly evenFlicker?: boolean;
  readonly replaceSpoilt?: boolean;
  readonly next?: string;
}

/** Files that are read at the same time. */
const AT_ONCE = 16;

export async function review(
  planPath: string,
  paths: readonly string[],
  flags: ReviewFlags,
  io: Io,
): Promise<number> {
  const { json, output, paper, clock, dark, language } = flags;
  const words = speech(language);
  if (json && output !== undefined) throw new Refusal([{ kind: 'not-together', options: ['-o', '--json'] }]);
  refuseLanguage(language, json ? '--json' : undefined);
  if (output === undefined) refuse({ paper, clock, dark }, ['paper', 'clock', 'dark'], undefined);
  if (flags.evenFlicker && !flags.levels && !paths.some(isTable)) {
    throw new Refusal([{ kind: 'changes-nothing', options: ['even-flicker'] }]);
  }
  if (flags.next !== undefined && !/\.ya?ml$/i.test(output ?? '')) {
    throw new Refusal([
      { kind: 'changes-nothing', options: ['next'], ...(output === undefined ? {} : { path: output }) },
    ]);
  }
  const makers = reviewMakers({ paper, clock, dark, language } as PrintOptions);
  const make = output === undefined ? undefined : makerFor(output, makers, planPath);
  const plan = await loadPlan(planPath);
  if (plan.kind === 'infeasible') throw new Refusal([{ kind: 'not-a-plan-made', source: planPath }], 2);
  const taken = await framesOf(paths, plan, flags.levels === true, words, io);
  const options = { ...optionsOf(flags), ...(await journalOf(flags.journal, plan)) };
  const reviewed: Reviewed = {
    plan,
    review: reviewFrames(plan, taken.frames, options),
    pathOf: taken.pathOf,
    next: flags.next === undefined ? plan.shoot : await loadShoot(flags.next, words, io),
  };
  if (make !== undefined && output !== undefined) {
    write(await make(reviewed, output), { output }, planPath, words, io);
  } else if (json) io.out(writeReview(reviewed.review));
  else io.out(reviewText(reviewed.review, plan, words, await screenOf(io)));
  return 0;
}

function optionsOf({ clockFast, most, evenFlicker, replaceSpoilt }: ReviewFlags): ReviewOptions {
  return {
    ...(clockFast === undefined ? {} : { clockFastS: clockFast }),
    ...(most === undefined ? {} : { mostEv: most }),
    ...(evenFlicker ? { evenFlicker } : {}),
    ...(replaceSpoilt ? { replaceSpoilt } : {}),
  };
}

interface Taken {
  readonly frames: readonly TakenFrame[];
  /** Where a frame lies, by its name. */
  readonly pathOf: (file: string) => string;
}

const isTable = (path: string) => extname(path).toLowerCase() === '.csv';

/** Frames of tables, and of the files that tell how they were taken; the others are named. */
async function framesOf(
  paths: readonly string[],
  plan: PlanMade,
  withLevels: boolean,
  words: CommandWords,
  io: Io,
): Promise<Taken> {
  const tables = await Promise.all(paths.filter(isTable).map((path) => framesOfTable(path, plan.shoot)));
  const files = await photoFiles(paths.filter((path) => !isTable(path)));
  const frames: TakenFrame[] = tables.flat();
  const progress = progressOf(words.review.reading, files.length, io);
  let next = 0;
  const passedOver: string[] = [];
  const work = async () => {
    for (let file = files[next++]; file !== undefined; file = files[next++]) {
      const read = await readPhoto(file, withLevels);
      if (read.kind === 'ok') frames.push(read.frame);
      else passedOver.push(words.sentences.passedOver(file.path, read.because));
      progress.step();
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  progress.end();
  for (const line of passedOver.sort()) io.err(`evenfall: ${line}\n`);
  if (frames.length === 0) throw new Refusal([{ kind: 'no-frames', paths }]);
  const pathByName = new Map(files.map(({ name, path }: PhotoFile) => [name, path]));
  return { frames, pathOf: (file) => pathByName.get(file) ?? file };
}
