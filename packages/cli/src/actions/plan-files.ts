// A plan as a program reads it: the plan file, its frames as a table.

import { type PlanMade, planShoot, writeFramesCsv, writePlan } from '@evenfall/core';
import type { Io } from '../io.js';
import type { Makers } from '../output.js';
import { refuse } from '../print-options.js';
import type { ShootSource } from '../shoot-source.js';
import { speech } from '../words/words.js';
import type { Options, Written } from './options.js';
import { writeFrom } from './write-from.js';

export { writePlan };

const PLAN_MAKERS: Makers<PlanMade> = {
  '.json': (plan, path) => [{ path, content: writePlan(plan) }],
  '.csv': (plan, path) => [{ path, content: writeFramesCsv(plan) }],
};

export function writePlanFile(
  source: ShootSource,
  { output, json, language }: Options & Pick<Written, 'output'>,
  io: Io,
): Promise<number> {
  refuse({ language }, ['language'], output);
  return writeFrom(source, output, speech(language), io, planShoot, PLAN_MAKERS, json);
}
