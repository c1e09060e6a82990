// When to go: the same shoot on the evenings to come.

import type { Language } from '@evenfall/chart';
import { planEvenings, readShoot, type Shoot, writeEvenings, writeEveningsCsv } from '@evenfall/core';
import { type Command, InvalidArgumentError } from 'commander';
import { screenOf } from './colors.js';
import { noted } from './described.js';
import { eveningsText } from './evenings-text.js';
import type { Io } from './io.js';
import { loadShoot } from './load-shoot.js';
import { type Act, languageOption, refuseLanguage } from './options.js';
import { Refusal } from './refusal.js';
import { speech } from './words/words.js';

interface EveningsOptions {
  readonly from?: string;
  readonly days: number;
  readonly csv?: boolean;
  readonly json?: boolean;
  readonly language?: Language;
}

const EXAMPLES = `
Example:
  evenfall evenings evening.yaml                            thirty, from its date
  evenfall evenings evening.yaml --from 2026-12-01 --days 60
  evenfall evenings evening.yaml --csv > evenings.csv       a spreadsheet

Readings in the file count on its own date alone. What is by the clock, a span or
lamps, is at the same time of each day.
Exit status: 2 where none of them can be done.`;

/** Adds "evenings" to the command. */
export function addEvenings(program: Command, shoot: string, io: Io, act: Act): void {
  noted(program.command('evenings'), EXAMPLES, io.columns)
    .summary('list the evenings to come: when to go')
    .description(
      'Plans the shoot on each of the evenings to come, a line each: sunset, the steepest minute, the moon at the end, ' +
        'stops to follow, cues, worst error, reserve, and whether it can be done at all.',
    )
    .argument('<shoot>', shoot)
    .option('--from <date>', 'first day, YYYY-MM-DD (default: the date in the file)')
    .option('--days <count>', 'how many, 1 to 366', dayCount, 30)
    .option('--csv', 'print a table for a spreadsheet')
    .option('--json', 'print the evenings file, for a program')
    .addOption(languageOption())
    .allowExcessArguments(false)
    .action((path: string, options: EveningsOptions) => act(options, evenings(path, options, io)));
}

/** Prints the list; status 2 where none of the evenings can be done. */
async function evenings(
  path: string,
  { from, days, csv, json, language }: EveningsOptions,
  io: Io,
): Promise<number> {
  if (csv && json) throw new Refusal([{ kind: 'not-together', options: ['--csv', '--json'] }]);
  refuseLanguage(language, csv ? '--csv' : json ? '--json' : undefined);
  const words = speech(language);
  const shoot = await loadShoot(path, words, io);
  const fromDate = from ?? shoot.date;
  checkDate(shoot, fromDate);
  const found = planEvenings(shoot, { fromDate, days });
  io.out(
    json ? writeEvenings(found) : csv ? writeEveningsCsv(found) : eveningsText(found, words, screenOf(io)),
  );
  return found.evenings.some(({ plan }) => plan !== undefined) ? 0 : 2;
}

/** The reader's own words for a date that is none. */
function checkDate(shoot: Shoot, date: string): void {
  const read = readShoot({ ...shoot, ...BY_THE_SUN[shoot.direction], readings: [], date });
  const fault = read.kind === 'wrong' ? read.errors.find(({ path }) => path[0] === 'date') : undefined;
  if (fault !== undefined) throw new Refusal([{ kind: 'fault', where: '--from', fault }]);
}

/** A span that is right on any date. */
const BY_THE_SUN = {
  dusk: { span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 } },
  dawn: { span: { fromSunAltitudeDeg: -12, toSunAltitudeDeg: 6 } },
} as const;

function dayCount(text: string): number {
  const days = Number(text);
  if (/^\d+$/.test(text) && days >= 1 && days <= 366) return days;
  throw new InvalidArgumentError('Give a whole number from 1 to 366.');
}
