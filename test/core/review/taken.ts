// An evening as a camera would have printed it into its files: marks of the dials, local time without a zone.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import {
  type PlanFrame,
  type PlanMade,
  planShoot,
  readShoot,
  type TakenFrame,
} from '../../../packages/core/src/index.js';

const dusk = fileURLToPath(new URL('../../../docs/examples/dusk.yaml', import.meta.url));

/** The demo evening's plan, changed. */
export function duskPlan(change: object = {}): PlanMade {
  const file = parse(readFileSync(dusk, 'utf8'));
  const read = readShoot({ ...file, place: { timeZone: 'Europe/London', ...file.place }, ...change });
  if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
  const plan = planShoot(read.shoot);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

/** "1/60" as files have it: the number of the mark, not the exact time. */
export function printed(label: string): number {
  const [over, under = 1] = label.split('/').map(Number);
  return over! / under;
}

/** What a camera's file says of a frame taken as planned; its clock `fastS` seconds fast, its times to the second. */
export function takenAs(
  { frame, at, shutter, iso, aperture }: PlanFrame,
  { fastS = 0, name = `IMG_${String(1000 + frame).padStart(4, '0')}.JPG` } = {},
): TakenFrame {
  const offsetMs = (at.endsWith('Z') ? 0 : Number(at.slice(-6, -3)) * 60 + Number(at.slice(-2))) * 60_000;
  const local = new Date(Date.parse(at) + offsetMs + 1000 * fastS).toISOString();
  return { file: name, at: local.slice(0, 19), shutterS: printed(shutter), iso, fNumber: printed(aperture) };
}
