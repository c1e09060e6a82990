// The evenfall command: arguments in, exit status out.

import { createRequire } from 'node:module';
import { homedir } from 'node:os';
import type { Language } from '@evenfall/chart';
import { Command, CommanderError } from 'commander';
import { addAbout } from './commands/about.js';
import { noted } from './commands/described.js';
import { addEvenings } from './commands/evenings.js';
import { addFollow } from './commands/follow.js';
import { addFrames } from './commands/frames.js';
import { addNew } from './commands/new.js';
import type { Act } from './commands/options.js';
import { addReview } from './commands/review.js';
import { addShootCommands } from './commands/shoot-commands.js';
import { type Io, processIo } from './io.js';
import { told } from './layout.js';
import { printable } from './printable.js';
import { Refusal } from './refusal.js';
import type { RefusalFacts } from './refusal-facts.js';
import { systemFault } from './system-error.js';

const { version: VERSION } = createRequire(import.meta.url)('../package.json') as { version: string };

/**
 * Runs the command.
 *
 * @param argv arguments after the command's own name
 * @returns 0 done; 1 a file or an argument is wrong; 2 the request is sound but no ramp exists
 */
export async function run(argv: readonly string[], { err, ...rest }: Io): Promise<number> {
  const { errColumns } = rest;
  const io: Io = {
    ...rest,
    err(text) {
      // A fault may name a file, and a file may have any name.
      const said = printable(text);
      err(errColumns === undefined ? said : told(said, errColumns));
    },
  };
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
    const { refusalText } = await import('./refusal-text.js');
    for (const each of facts) io.err(`evenfall: ${refusalText(each, language)}\n`);
    return error instanceof Refusal ? error.status : 1;
  }
}

/** Runs the command on the process's own arguments and streams, and sets its exit status. */
export async function runHere(): Promise<void> {
  const io = processIo(async (error) => {
    // A reader such as head may close the pipe early; that is no fault of ours.
    if (error.code === 'EPIPE') process.exit(0);
    const { englishSystemFault } = await import('./words/sentences-en.js');
    io.err(`evenfall: standard output: cannot be written: ${englishSystemFault(systemFault(error))}\n`);
    process.exit(1);
  });
  process.exitCode = await run(process.argv.slice(2), io);
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
      // Asked of node's streams otherwise, which then would be loaded.
      getOutHelpWidth: () => io.columns,
      getErrHelpWidth: () => io.columns,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
      outputError: (text, write) => write(`evenfall: ${oneLine(text)}\n`),
    });
  noted(program, EXAMPLES, io.columns);
  addNew(program, io, act);
  addShootCommands(program, io, act);
  addEvenings(program, io, act);
  addFollow(program, io, act);
  addReview(program, io, act);
  addFrames(program, io, act);
  addAbout(program, VERSION, io);
  return program;
}

/** "error: unknown option '--jsn'\n(Did you mean --json?)" on one line, without its first word. */
function oneLine(text: string): string {
  return text
    .trim()
    .replace(/^error: /, '')
    .replaceAll(/\s*\n\s*/g, ' ');
}

const EXAMPLES = `
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
"evenfall plan --help" and so on tell more.`;
