// The cues command: cues alone, for a table, a calendar or a program.

import { calendarTexts } from '@evenfall/chart';
import { planShoot, writeCalendar, writeCuesCsv } from '@evenfall/core';
import type { Io } from '../io.js';
import { refuse, wordsOf } from '../print-options.js';
import { Refusal } from '../refusal.js';
import { speech } from '../words/words.js';
import type { CueOptions } from './options.js';
import { writeFrom } from './write-from.js';

export async function cues(
  shootPath: string,
  { output: given, json, ahead, travel, ...look }: CueOptions,
  io: Io,
): Promise<number> {
  const words = wordsOf(look);
  const output = given ?? (json ? '-.json' : undefined);
  if (output === undefined) throw new Refusal([{ kind: 'no-output' }]);
  return writeFrom(
    shootPath,
    output,
    speech(look.language),
    io,
    planShoot,
    {
      '.csv': (plan, path) => {
        refuse({ ahead, travel, ...look }, ['ahead', 'travel', 'language', 'clock'], path);
        return [{ path, content: writeCuesCsv(plan) }];
      },
      '.ics': (plan, path) => {
        const texts = calendarTexts(plan, words);
        return [
          { path, content: writeCalendar(plan, { aheadS: ahead ?? 60, travelS: travel ?? 1800, texts }) },
        ];
      },
      '.json': (plan, path) => {
        refuse({ ahead, travel, ...look }, ['ahead', 'travel', 'language', 'clock'], path);
        return [{ path, content: `${JSON.stringify(plan.cues, null, 2)}\n` }];
      },
    },
    json,
  );
}
