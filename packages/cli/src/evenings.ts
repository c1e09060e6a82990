// When to go: the same shoot on the evenings to come.

import type { Language } from '@evenfall/chart';
import { planEvenings, readShoot, type Shoot, writeEvenings, writeEveningsCsv } from '@evenfall/core';
import { screenOf } from './colors.js';
import { eveningsText } from './evenings-text.js';
import type { Io } from './io.js';
import { loadShoot } from './load-shoot.js';
import { Refusal } from './refusal.js';
import { refuseLanguage } from './refuse-language.js';
import { speech } from './words/words.js';

export interface EveningsOptions {
  readonly from?: string;
  readonly days: number;
  readonly csv?: boolean;
  readonly json?: boolean;
  readonly language?: Language;
}

/** Prints the list; status 2 where none of the evenings can be done. */
export async function evenings(
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
    json
      ? writeEvenings(found)
      : csv
        ? writeEveningsCsv(found)
        : eveningsText(found, words, await screenOf(io)),
  );
  return found.evenings.some(({ kind }) => kind === 'ok') ? 0 : 2;
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
