// The evenfall command: arguments in, exit status out.

import { createRequire } from 'node:module';
import { homedir } from 'node:os';
import { type Language, PAPERS } from '@evenfall/chart';
import { sentenceOf } from '@evenfall/core';
import { Argument, Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { type CueOptions, card, chart, cues, light, type Options, plan } from './actions.js';
import { completionScript, SHELLS, type Shell } from './completion.js';
import { described, describedCommands, noted } from './described.js';
import { addEvenings } from './evenings.js';
import { follow } from './follow.js';
import type { FollowFlags } from './follow-flags.js';
import { addFrames, timeOf } from './frames.js';
import { type Io, processIo } from './io.js';
import { manPage } from './man-page.js';
import { addNew, answerOptions } from './new-shoot.js';
import { type Act, anyCase, languageOption } from './options.js';
import type { PrintOptions } from './print-options.js';
import { printable } from './printable.js';
import { Refusal } from './refusal.js';
import type { RefusalFacts } from './refusal-facts.js';
import { addReview } from './review.js';
import { systemFault } from './system-error.js';
import { englishSystemFault } from './words/sentences-en.js';
import { speech } from './words/words.js';

const { version: VERSION } = createRequire(import.meta.url)('../package.json') as { version: string };
const SHOOT = 'shoot file, YAML or JSON; "-" reads standard input';

/**
 * Runs the command.
 *
 * @param argv arguments after the command's own name
 * @returns 0 done; 1 a file or an argument is wrong; 2 the request is sound but no ramp exists
 */
export async function run(argv: readonly string[], { err, ...rest }: Io): Promise<number> {
  // A fault may name a file, and a file may have any name.
  const io: Io = { ...rest, err: (text) => err(printable(text)) };
  let status = 0;
  let language: Language | undefined;
  const program = programFor(io, async (options, action) => {
    language = options.language;
    status = await action;
  });
  try {
    await program.parseAsync(argv.length === 0 ? ['--help'] : argv.map(fromHome), { from: 'user' });
    return status;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 1;
    const facts: readonly RefusalFacts[] =
      error instanceof Refusal ? error.facts : [{ kind: 'unexpected', said: messageOf(error) }];
    const { refusals } = speech(language).sentences;
    for (const each of facts) io.err(`evenfall: ${sentenceOf(refusals, 'kind', each)}\n`);
    return error instanceof Refusal ? error.status : 1;
  }
}

/** Runs the command on the process's own arguments and streams, and sets its exit status. */
export async function runHere(): Promise<void> {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    // A reader such as head may close the pipe early; that is no fault of ours.
    if (error.code === 'EPIPE') process.exit(0);
    process.stderr.write(
      `evenfall: standard output: cannot be written: ${englishSystemFault(systemFault(error))}\n`,
    );
    process.exit(1);
  });
  // There is nowhere left to say it.
  process.stderr.on('error', () => process.exit(1));
  process.exitCode = await run(process.argv.slice(2), processIo());
}

/** A shell leaves "~/" as it is in quotes, and behind an equals sign. */
function fromHome(argument: string): string {
  return argument.replace(/^(--[\w-]+=)?~(?=\/)/, (_, option = '') => `${option}${homedir()}`);
}

function messageOf(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split('\n')[0]!;
}

function programFor(io: Io, act: Act): Command {
  const program = new Command('evenfall');
  program
    .summary('plan the exposure of a day-to-night time-lapse')
    .description('Plans the exposure of a day-to-night (or night-to-day) time-lapse from a shoot file.')
    .helpOption('-h, --help', 'show help')
    .helpCommand('help [command]', 'show help for a command')
    .version(VERSION, '-V, --version', 'show the version')
    .exitOverride()
    .configureHelp({
      helpWidth: io.columns - 2,
      minWidthToWrap: 10,
      // That a command has options goes without saying.
      subcommandTerm: (command) =>
        `${command.name()} ${command.usage().replace('[options]', '').trim()}`.trim(),
    })
    .configureOutput({
      writeOut: (text) => io.out(text),
      writeErr: (text) => io.err(text),
      outputError: (text, write) => write(`evenfall: ${oneLine(text)}\n`),
    });
  noted(program, EXAMPLES.evenfall, io.columns);

  const command = (name: keyof typeof EXAMPLES, summary: string, description: string) =>
    noted(program.command(name), EXAMPLES[name], io.columns)
      .summary(summary)
      .description(description)
      .argument('<shoot>', SHOOT)
      .allowExcessArguments(false);

  addNew(program, io, act);

  const planCommand = noted(program.command('plan'), EXAMPLES.plan, io.columns)
    .summary('print the plan, or write it')
    .description('Plans the shoot: frames, light, and every cue from first to last.')
    .argument('[shoot]', SHOOT)
    .allowExcessArguments(false)
    .option('--json', 'print the plan file, for a program')
    .option(
      '-o, --output <file>',
      'write the plan file (.json), or its frames as a table (.csv); "-" is standard output, "-.csv" too',
    )
    .option('--choices', 'print what other weights would give: fewer cues, less error, cleaner ISO')
    .addOption(languageOption())
    .action((shoot: string | undefined, options: Options) => act(options, plan(shoot, options, io)));
  answerOptions(planCommand, 'In place of a file:');

  command('card', 'write the cue card', 'Writes a cue card to carry to the place.')
    .requiredOption(
      '-o, --output <file>',
      'card to write: .pdf, .svg, .html or .txt; "-.txt" is standard output',
    )
    .addOption(paper('a6; a5 in larger type; a4 or letter: four to a sheet, to cut (default: a6)'))
    .addOption(clock())
    .addOption(languageOption())
    .option('--dark', 'red on black, for a screen in the dark')
    .option('--json', 'print what was written, for a program')
    .action((shoot: string, options: Written) => act(options, card(shoot, options, io)));

  command(
    'chart',
    'draw light and schedule',
    'Draws the light, the target and the settings that follow it, against local time.',
  )
    .requiredOption('-o, --output <file>', 'chart to write: .svg or .pdf; "-" is standard output')
    .addOption(paper('sheet to fill, laid across (default: a4 for .pdf, 254 by 183 mm for .svg)'))
    .addOption(clock())
    .addOption(languageOption())
    .option('--dark', 'red on black, for a screen in the dark')
    .option('--json', 'print what was written, for a program')
    .action((shoot: string, options: Written) => act(options, chart(shoot, options, io)));

  command(
    'cues',
    'write the cues for a table or a calendar',
    'Writes the cues alone: as a table, as a calendar with an alarm before each, or for a program.',
  )
    .option('--json', 'print the cues, for a program')
    .option('-o, --output <file>', 'cues to write: .csv, .ics or .json; "-" is standard output')
    .option(
      '--ahead <seconds>',
      'how long before its cue an alarm rings; 300,60 for two, none (default: 60)',
      leadsAhead,
    )
    .option(
      '--travel <time>',
      'way to the place: the alarm for setting up rings so long before (default: 30m)',
      travel,
    )
    .addOption(clock())
    .addOption(languageOption())
    .action((shoot: string, options: CueOptions) => act(options, cues(shoot, options, io)));

  command(
    'light',
    'show sun, moon and light',
    'Shows the events of sun and moon and the curve of the light, without a camera.',
  )
    .option('--json', 'print the light table, for a program')
    .option(
      '-o, --output <file>',
      'write a chart (.svg, .pdf) or the light table (.json); "-" is standard output',
    )
    .addOption(paper('sheet for a chart to fill, laid across'))
    .addOption(clock())
    .addOption(languageOption())
    .option('--dark', 'a chart in red on black, for a screen in the dark')
    .action((shoot: string, options: Options & PrintOptions) => act(options, light(shoot, options, io)));

  addEvenings(program, SHOOT, io, act);

  noted(program.command('follow'), EXAMPLES.follow, io.columns)
    .summary('correct the plan by meter readings, live')
    .description(
      'Follows a plan through the evening. At a terminal, type what the meter says, or what you did: the answer is what ' +
        'to set now and what comes next. From a pipe, or with --json, it takes one JSON object a line and answers in one.',
    )
    .argument('<plan>', 'plan file, as "evenfall plan SHOOT -o plan.json" writes it')
    .option('--start-over', 'start the evening over; its journal so far is kept under another name')
    .option('--no-journal', 'read no journal and keep none')
    .option('--meter <stops>', 'by how much one reading differs from the next (default: 0.07)', meterEv)
    .option('--ring <seconds>', 'at a terminal: ring so long before each cue, and at it', secondsAhead)
    .option('--json', 'at a terminal: lines as a program has them')
    .addOption(clock())
    .addOption(languageOption())
    .option('--dark', 'at a terminal: red letters')
    .allowExcessArguments(false)
    .action((plan: string, flags: FollowFlags) => act(flags, follow(plan, flags, io)));

  addReview(program, io, act);
  addFrames(program, io, act);

  noted(program.command('completion'), EXAMPLES.completion, io.columns)
    .summary('print a completion script for a shell')
    .description('Prints a script by which a shell completes commands, options and their words.')
    .addArgument(new Argument('<shell>', 'which shell').choices(SHELLS))
    .allowExcessArguments(false)
    .action((shell: Shell) => io.out(completionScript(shell, describedCommands(program))));

  noted(program.command('man'), EXAMPLES.man, io.columns)
    .summary('print the man page')
    .description('Prints the man page, which says what the help of every command says.')
    .allowExcessArguments(false)
    .action(() => io.out(manPage(described(program), describedCommands(program), VERSION)));
  return program;
}

interface Written extends PrintOptions {
  readonly json?: boolean;
  readonly output: string;
}

function paper(description: string): Option {
  return anyCase(new Option('--paper <size>', description), PAPERS);
}

function clock(): Option {
  return new Option('--clock <hours>', 'count 24 hours or twice 12 (default: 24)').choices(['12', '24']);
}

function secondsAhead(text: string): number {
  const seconds = Number(text);
  if (text.trim() !== '' && seconds >= 0 && seconds <= 86_400) return seconds;
  throw new InvalidArgumentError('Give seconds from 0 to 86400.');
}

function leadsAhead(text: string): number[] {
  return text === 'none' ? [] : text.split(',').map(secondsAhead);
}

function travel(text: string): number {
  const seconds = timeOf(text);
  if (seconds !== undefined && seconds <= 86_400) return seconds;
  throw new InvalidArgumentError('Give a time up to a day, such as 45m, 1h30m or 0.');
}

function meterEv(text: string): number {
  const ev = Number(text);
  if (text.trim() !== '' && ev > 0 && ev <= 3) return ev;
  throw new InvalidArgumentError('Give stops above 0, at most 3.');
}

/** "error: unknown option '--jsn'\n(Did you mean --json?)" on one line, without its first word. */
function oneLine(text: string): string {
  return text
    .trim()
    .replace(/^error: /, '')
    .replaceAll(/\s*\n\s*/g, ' ');
}

const EXAMPLES = {
  evenfall: `
Example, from nothing to a card in the pocket:
  evenfall plan --at 53.35,-6.26
  evenfall new evening.yaml
  evenfall plan evening.yaml
  evenfall card evening.yaml -o card.pdf

A shoot file says where, when, how often and with which camera. The least one:
  format: evenfall-shoot/1
  place: { latitudeDeg: 57.1, longitudeDeg: 9.9 }
  date: 2026-09-12
  intervalS: 6
  camera:
    shutter: { shortest: 1/4000, longest: "4" }
    iso: { lowest: 100, highest: 6400 }
    aperture: "5.6"

In a checkout or a project that has it installed, say npx evenfall.
Exit status: 0 done, 1 a file or an argument is wrong, 2 no ramp exists.
"evenfall plan --help" and so on tell more.`,
  plan: `
Example:
  evenfall plan evening.yaml                  read it on the screen
  evenfall plan --at 53.35,-6.26 --interval 8 --iso 100-3200
  evenfall plan evening.yaml -o plan.json     keep it, or drive a rig with it
  evenfall plan evening.yaml --json | less    see every frame

Where no ramp exists it says why, and which single change would cure it.`,
  card: `
Example:
  evenfall card evening.yaml -o card.pdf              print at A6, 100 %
  evenfall card evening.yaml -o card.pdf --paper a4   four to a sheet, to cut
  evenfall card evening.yaml -o card.html --dark      for a telephone at night
  evenfall card evening.yaml -o card.txt --language de

Sheets as .svg are numbered: card-1.svg, card-2.svg and so on.`,
  chart: `
Example:
  evenfall chart evening.yaml -o chart.svg    legible in black and white
  evenfall chart evening.yaml -o chart.pdf    fills a sheet of A4, laid across`,
  cues: `
Example:
  evenfall cues evening.yaml -o cues.ics      put it into a telephone
  evenfall cues evening.yaml -o cues.ics --ahead 300,30 --travel 1h
  evenfall cues evening.yaml -o cues.csv      open it as a spreadsheet`,
  light: `
Example:
  evenfall light evening.yaml                 when it gets dark, and how fast
  evenfall light evening.yaml -o light.svg    the same as a picture`,
  completion: `
Example, in the shell's own start-up file:
  source <(evenfall completion bash)
  source <(evenfall completion zsh)
  evenfall completion fish | source`,
  man: `
Example:
  evenfall man > evenfall.1
  man ./evenfall.1`,
  follow: `
Example:
  evenfall plan evening.yaml -o plan.json
  evenfall follow plan.json

At a terminal:
  12.4            the meter says EV 12.4 at ISO 100, now
  18:20 12.4      or then
  1/60            the camera meters 1/60, the rest as it stands
  done, missed    the cue that was due
  ?               everything else

For a program, each line answered by one:
  {"at":"2026-10-14T18:20:00+01:00","ev100":12.4}     a meter reading at ISO 100
  {"frame":120}                                       what holds for this frame
  {"done":3}                                          cue 3 is done

What comes in is kept in a journal beside the plan, here plan.json.journal.
Started again, the command goes on where it was, however it ended; --start-over
begins a new evening.

A line that is not understood changes nothing and says so. docs/follow.md tells more.`,
};
