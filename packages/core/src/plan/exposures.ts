// The plan of a shoot that asks for no more than exposures. A file of its own, so that moves and remedies need not be
// loaded with it.

import { byDials } from '../ramp/by-dials.js';
import { latticeOf } from '../ramp/lattice.js';
import type { Shoot } from '../shoot/shoot.js';
import { checkShoot } from '../shoot/shoot-check.js';
import { shutterFits } from '../shoot/time-left.js';
import { exposedPlan } from './made.js';
import { withLensNotes } from './notes.js';
import { prepare } from './prepare.js';
import { HELD_ENOUGH } from './reserve.js';
import type { PlanMade } from './types.js';

/**
 * The same plan where a shoot has one and asks for no more than exposures: for a page that wants its first plan before
 * moves and remedies are loaded.
 *
 * @param shoot from {@link readShoot}
 * @returns what `planShoot` returns; undefined where that has moves, readings, a shutter timed freely, a kit that may fall short or a reason to tell of
 * @throws RangeError on a shoot that `readShoot` would refuse
 * @example
 * ```ts
 * // With the shoot and plan of planShoot's example.
 * import { planExposures } from '@evenfall/core';
 *
 * const { camera } = shoot;
 * const able = { ...shoot, camera: { ...camera, iso: { lowest: 100, highest: 51200 } } };
 * planExposures(able)?.summary.frameCount; // → plan.summary.frameCount
 * planExposures(shoot); // → undefined
 * planExposures({ ...shoot, intervalS: 1 }); // → undefined
 * ```
 */
export function planExposures(shoot: Shoot): PlanMade | undefined {
  checkShoot(shoot);
  const { camera, moves, readings } = shoot;
  if (moves.length + readings.length > 0 || camera.bulb) return undefined;
  const prepared = prepare(shoot);
  if (prepared.kind === 'no-span' || !shutterFits(prepared.problem)) return undefined;
  const lattice = latticeOf(prepared.problem);
  const ramp = lattice.shutterMin > lattice.shutterMax ? undefined : byDials(prepared.problem, lattice);
  const plan = ramp && withLensNotes(exposedPlan(shoot, prepared, ramp), prepared.forecast);
  return plan === undefined || plan.summary.eveningsHeldShare < HELD_ENOUGH ? undefined : plan;
}
