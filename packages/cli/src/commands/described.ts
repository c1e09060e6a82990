// The command as data: what the help says of each command and option, for completion scripts and the man page.

import type { Command } from 'commander';
import { narrowed } from '../layout.js';

export interface DescribedOption {
  readonly long: string; // "--output"
  readonly short?: string; // "-o"
  readonly value?: string; // what it takes: "<file>"
  readonly choices: readonly string[]; // words it takes; empty where they are not listed
  readonly means: string;
}

export interface DescribedCommand {
  readonly name: string;
  readonly summary: string;
  readonly description: string;
  readonly usage: string; // "[options] <shoot>"
  readonly args: readonly { readonly name: string; readonly means: string }[];
  readonly options: readonly DescribedOption[];
  readonly notes: string; // what the help says below: examples, and what else there is to know
}

/** What stands below a command's help, as it was written for 80 columns. */
const NOTES = new WeakMap<Command, string>();

/** Adds a text below the help of a command. */
export function noted(command: Command, text: string, columns: number): Command {
  NOTES.set(command, text);
  return command.addHelpText('after', narrowed(text, columns));
}

/** What the exit status says, in its order. */
export const EXIT_STATUS = [
  'done',
  'a file or an argument is wrong, or a file cannot be written',
  'the request is sound, but the kit cannot do it: no ramp exists',
] as const;

export function described(command: Command): DescribedCommand {
  const help = command.createHelp();
  return {
    name: command.name(),
    summary: command.summary(),
    description: command.description(),
    usage: command.usage(),
    args: help.visibleArguments(command).map((each) => ({ name: each.name(), means: each.description })),
    options: help.visibleOptions(command).flatMap((option) => {
      const { long, short, flags, argChoices, description } = option;
      if (!long) return [];
      const [value] = /[<[].*[>\]]/.exec(flags) ?? [];
      return [
        {
          long,
          ...(short ? { short } : {}),
          ...(value === undefined ? {} : { value }),
          choices: argChoices ?? [],
          means: description,
        },
      ];
    }),
    notes: NOTES.get(command) ?? '',
  };
}

/** Every command but help, in the order of the help. */
export function describedCommands(program: Command): DescribedCommand[] {
  return program.commands.map(described);
}
