// The light command: sun, moon and light, without a camera.

import { lightTable, type PlanInfeasible, type Shoot, writeLight, writePlan } from '@evenfall/core';
import { lightChartMakers, type ShootLight } from '../chart-files.js';
import { screenOf } from '../colors.js';
import type { Io } from '../io.js';
import { lightText } from '../light-text.js';
import { loadShoot } from '../load-shoot.js';
import { infeasibleText } from '../plan-text.js';
import { type PrintOptions, refuse } from '../print-options.js';
import { refuseLanguage } from '../refuse-language.js';
import { speech } from '../words/words.js';
import type { Options } from './options.js';
import { writeFrom } from './write-from.js';

/** Prints the light table, or writes it; status 2 where the sun never reaches the span. */
export async function light(
  shootPath: string,
  { json, output, ...look }: Options & PrintOptions,
  io: Io,
): Promise<number> {
  const words = speech(look.language);
  if (output !== undefined)
    return writeFrom(shootPath, output, words, io, shootLight, lightChartMakers(look), json);
  refuse(look, ['paper', 'dark', 'clock'], undefined);
  refuseLanguage(look.language, json ? '--json' : undefined);
  const screen = await screenOf(io);
  const shoot = await loadShoot(shootPath, words, io);
  const answer = lightTable(shoot);
  if (answer.kind === 'infeasible') {
    io.out(json ? writePlan(answer) : infeasibleText(answer, words, screen));
    return 2;
  }
  io.out(json ? writeLight(answer) : lightText(answer, shoot, words, screen));
  return 0;
}

function shootLight(shoot: Shoot): ShootLight | PlanInfeasible {
  const table = lightTable(shoot);
  return table.kind === 'ok' ? { kind: 'ok', table, shoot } : table;
}
