// The shoots of docs/examples, and the plans the library makes of them.

import { readFileSync } from 'node:fs';
import { type Camera, type PlanMade, planShoot, readShoot, type Shoot } from '@evenfall/core';
import { parse } from 'yaml';

export type Example = 'dusk' | 'dawn';

/** An example's shoot with some of its keys changed; the zone that the command would look up is written in. */
export function shootWith(name: Example, change: Partial<Shoot> = {}, camera: Partial<Camera> = {}): Shoot {
  const value = parse(readFileSync(new URL(`../../docs/examples/${name}.yaml`, import.meta.url), 'utf8'));
  const timeZone = value.place.timeZone ?? 'Europe/London';
  const read = readShoot({
    ...value,
    ...change,
    place: { ...value.place, timeZone },
    camera: { ...value.camera, ...camera },
  });
  if (read.kind === 'wrong') throw new Error(read.errors[0]?.message);
  return read.shoot;
}

export function planned(shoot: Shoot): PlanMade {
  const plan = planShoot(shoot);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}
