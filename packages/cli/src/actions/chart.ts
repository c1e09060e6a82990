// The chart command.

import { planShoot } from '@evenfall/core';
import { planChartMakers } from '../chart-files.js';
import type { Io } from '../io.js';
import { speech } from '../words/words.js';
import type { Written } from './options.js';
import { writeFrom } from './write-from.js';

export async function chart(shootPath: string, { output, json, ...look }: Written, io: Io): Promise<number> {
  return writeFrom(shootPath, output, speech(look.language), io, planShoot, planChartMakers(look), json);
}
