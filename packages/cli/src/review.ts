// After the shoot: frames that were taken, held against the plan.

import { extname } from 'node:path';
import { PAPERS } from '@evenfall/chart';
import {
  type PlanMade,
  type ReviewOptions,
  reviewFrames,
  type TakenFrame,
  writeReview,
} from '@evenfall/core';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { screenOf } from './colors.js';
import { noted } from './described.js';
import type { Io } from './io.js';
import { journalOf } from './journal-of.js';
import { loadPlan } from './load-plan.js';
import { loadShoot } from './load-shoot.js';
import { type Act, anyCase, languageOption, refuseLanguage } from './options.js';
import { makerFor, write } from './output.js';
import { readPhoto } from './photo-exif.js';
import { type PhotoFile, photoFiles } from './photo-files.js';
import { framesOfTable } from './photo-table.js';
import { type PrintOptions, refuse } from './print-options.js';
import { progressOf } from './progress.js';
import { Refusal } from './refusal.js';
import { type Reviewed, reviewMakers } from './review-files.js';
import { reviewText } from './review-text.js';
import { type CommandWords, speech } from './words/words.js';

interface ReviewFlags extends PrintOptions {
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

const EXAMPLES = `
Example:
  evenfall review plan.json frames                  what happened, on the screen
  evenfall review plan.json frames -o offsets.csv   stops to brighten, by file
  evenfall review plan.json frames -o review.svg    planned and taken, a chart
  evenfall review plan.json frames --levels         with the light as it was
  evenfall review plan.json frames --levels --next next.yaml -o readings.yaml
  evenfall review plan.json frames -o clip.ffconcat
    and clip.filter beside it, for a preview clip:
  ffmpeg -f concat -safe 0 -i clip.ffconcat -filter_script:v clip.filter clip.mp4

Files are opened for reading only. docs/review.md tells more.`;

/** Files that are read at the same time. */
const AT_ONCE = 16;

/** Adds "review" to the command. */
export function addReview(program: Command, io: Io, act: Act): void {
  noted(program.command('review'), EXAMPLES, io.columns)
    .summary('after the shoot: what happened, and offsets for every frame')
    .description(
      'Holds the frames that were taken against the plan: cues late or missed, frames missing, doubled or spoilt, settings ' +
        'nobody planned, and by how many stops each frame is to be brightened.',
    )
    .argument('<plan>', 'plan file, as "evenfall plan SHOOT -o plan.json" writes it')
    .argument('<frames...>', 'folders and files of frames, or a table (.csv)')
    .option('--json', 'print the review file, for a program')
    .option(
      '-o, --output <file>',
      'write the review (.json), offsets (.csv), a chart (.svg, .pdf), a clip (.ffconcat), readings (.yaml)',
    )
    .option('--levels', 'read how bright each JPEG came out: what the light really did')
    .option('--journal <file>', 'journal of the followed evening: its readings and filters')
    .option('--clock-fast <seconds>', 'by how much the camera clock is fast (default: found)', clockFast)
    .option('--most <stops>', 'largest correction, above 0 to 6 (default: 3)', most)
    .option('--even-flicker', 'take out small differences of the levels too')
    .option('--next <shoot>', 'with -o (.yaml): shoot to come at the place, to write readings for')
    .option('--replace-spoilt', 'show a spoilt frame as its nearest good neighbour')
    .addOption(anyCase(new Option('--paper <size>', 'sheet for a chart to fill, laid across'), PAPERS))
    .addOption(
      new Option('--clock <hours>', 'count 24 hours or twice 12 (default: 24)').choices(['12', '24']),
    )
    .addOption(languageOption())
    .option('--dark', 'a chart in red on black, for a screen in the dark')
    .allowExcessArguments(false)
    .action((plan: string, frames: string[], flags: ReviewFlags) =>
      act(flags, review(plan, frames, flags, io)),
    );
}

async function review(
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
  if ('infeasible' in plan) throw new Refusal([{ kind: 'not-a-plan-made', source: planPath }], 2);
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
  else io.out(reviewText(reviewed.review, plan, words, screenOf(io)));
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

function clockFast(text: string): number {
  const seconds = Number(text);
  if (text.trim() !== '' && Math.abs(seconds) <= 1e9) return seconds;
  throw new InvalidArgumentError('Give seconds, below 0 where the clock is slow.');
}

function most(text: string): number {
  const stops = Number(text);
  if (text.trim() !== '' && stops >= 0.01 && stops <= 6) return stops;
  throw new InvalidArgumentError('Give stops from 0.01 to 6.');
}
