// The evening that the simulator varies: 900 frames of a clear September dusk, planned for hands in third-stop cues.

import { type PlanMade, planShoot, readShoot } from '@evenfall/core';

/** A hand plan of 48 cues, one of them a filter. The tolerance makes it: nothing larger than a third keeps it. */
export const EVENING_SHOOT = {
  format: 'evenfall-shoot/1',
  title: 'Simulated evening',
  place: { latitudeDeg: 52, longitudeDeg: 5, timeZone: 'Europe/Amsterdam' },
  date: '2026-09-22',
  span: { startAt: '2026-09-22T18:50:00+02:00', endAt: '2026-09-22T20:49:52+02:00' },
  intervalS: 8,
  camera: {
    shutter: { shortest: '1/4000', longest: '6' },
    iso: { lowest: 100, highest: 6400 },
    aperture: '4',
  },
  filters: [{ name: 'ND 1.8', stops: 6 }],
  look: { nightEv: -2.7 },
  limits: { toleranceEv: 0.25 },
};

/** The plan of a shoot file's value; throws with the reason where there is none. */
export function planOf(value: unknown): PlanMade {
  const read = readShoot(value);
  if (read.kind === 'wrong') throw new Error(read.errors.map(({ message }) => message).join('\n'));
  const plan = planShoot(read.shoot);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}
