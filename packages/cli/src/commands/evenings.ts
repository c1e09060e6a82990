// The command that says when to go.

import type { Command } from 'commander';
import type { EveningsOptions } from '../evenings.js';
import type { Io } from '../io.js';
import { noted } from './described.js';
import { type Act, languageOption, SHOOT } from './options.js';
import { dayCount } from './values.js';

const EXAMPLES = `
Example:
  evenfall evenings evening.yaml                            thirty, from its date
  evenfall evenings evening.yaml --from 2026-12-01 --days 60
  evenfall evenings evening.yaml --csv > evenings.csv       a spreadsheet

Readings in the file count on its own date alone. What is by the clock, a span or
lamps, is at the same time of each day.
Exit status: 2 where none of them can be done.`;

/** Adds "evenings" to the command. */
export function addEvenings(program: Command, io: Io, act: Act): void {
  noted(program.command('evenings'), EXAMPLES, io.columns)
    .summary('list the evenings to come: when to go')
    .description(
      'Plans the shoot on each of the evenings to come, a line each: sunset, the steepest minute, the moon at the end, ' +
        'stops to follow, cues, worst error, reserve, and whether it can be done at all.',
    )
    .argument('<shoot>', SHOOT)
    .option('--from <date>', 'first day, YYYY-MM-DD (default: the date in the file)')
    .option('--days <count>', 'how many, 1 to 366', dayCount, 30)
    .option('--csv', 'print a table for a spreadsheet')
    .option('--json', 'print the evenings file, for a program')
    .addOption(languageOption())
    .allowExcessArguments(false)
    .action((path: string, options: EveningsOptions) =>
      act(
        options,
        import('../evenings.js').then(({ evenings }) => evenings(path, options, io)),
      ),
    );
}
