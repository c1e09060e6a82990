// Commands about the command itself: completion scripts and the man page.

import { Argument, type Command } from 'commander';
import type { Io } from '../io.js';
import { described, describedCommands, noted } from './described.js';
import { SHELLS, type Shell } from './shells.js';

const COMPLETION = `
Example, in the shell's own start-up file:
  source <(evenfall completion bash)
  source <(evenfall completion zsh)
  evenfall completion fish | source`;

const MAN = `
Example:
  evenfall man > evenfall.1
  man ./evenfall.1`;

/** Adds "completion" and "man" to the command. */
export function addAbout(program: Command, version: string, io: Io): void {
  noted(program.command('completion'), COMPLETION, io.columns)
    .summary('print a completion script for a shell')
    .description('Prints a script by which a shell completes commands, options and their words.')
    .addArgument(new Argument('<shell>', 'which shell').choices(SHELLS))
    .allowExcessArguments(false)
    .action(async (shell: Shell) => {
      const { completionScript } = await import('../completion.js');
      io.out(completionScript(shell, describedCommands(program)));
    });

  noted(program.command('man'), MAN, io.columns)
    .summary('print the man page')
    .description('Prints the man page, which says what the help of every command says.')
    .allowExcessArguments(false)
    .action(async () => {
      const { manPage } = await import('../man-page.js');
      io.out(manPage(described(program), describedCommands(program), version));
    });
}
