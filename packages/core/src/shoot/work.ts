// How much there is to compute in a shoot, before any of it is: frames, and settings to weigh on each.

import { dialStep } from '../exposure/dial.js';
import { stepLimit } from '../ramp/problem.js';
import type { Shoot } from './shoot.js';

/** Most frames a plan holds: a day at a second. */
export const MOST_FRAMES = 100_000;

/**
 * Most work a shoot may be, in settings weighed over all its frames: about a second on a slow machine, and 200 MB.
 * An evening of 900 frames with three filters and a held aperture comes to a fortieth of it.
 */
export const MOST_WORK = 24_000_000;

/** Work of a setting beside that of a move, where the shutter is timed freely and every move is priced by itself. */
const MOVES_A_SETTING = 6;
/** Frames that laying out the moves themselves comes to. */
const FRAMES_OF_MOVES = 100;

/** How many positions each control has in a shoot, and how many tables of them a limit on filter changes asks for. */
interface Extent {
  readonly stacks: number;
  readonly apertures: number;
  readonly isos: number;
  readonly levels: number; // that may lie within tolerance
  readonly step: number; // most steps at a cue
  readonly tables: number;
}

/** An upper bound of the work a shoot's plan is, with so many frames; see {@link MOST_WORK}. */
export function planWork(shoot: Shoot, frameCount: number): number {
  const { stacks, apertures, isos, levels, step, tables } = extentOf(shoot);
  const settings = stacks * apertures * isos;
  if (shoot.camera.bulb) {
    const moves = settings * (4 * step + (stacks - 1) * isos);
    return ((frameCount + FRAMES_OF_MOVES) * tables * (moves + settings)) / MOVES_A_SETTING;
  }
  return frameCount * tables * stacks * apertures * levels * (isos + Math.min(step, isos));
}

/**
 * Holds a shoot of so many frames to what may be planned at once.
 *
 * @throws RangeError where it is more
 */
export function checkWork(shoot: Shoot, frameCount: number): void {
  const work = planWork(shoot, frameCount);
  if (work <= MOST_WORK) return;
  throw new RangeError(
    `intervalS must leave less to compute, got ${shoot.intervalS}: ${frameCount} frames with this kit are ${(work / MOST_WORK).toFixed(1)} times what a plan may be`,
  );
}

/**
 * An upper bound of the work it takes to say whether a changed shoot has a ramp: where no shutter is timed freely,
 * all ISOs of a level are looked at in one go.
 */
export function verdictWork(shoot: Shoot, frameCount: number): number {
  if (shoot.camera.bulb) return planWork(shoot, frameCount) / 2; // most are said at a glance
  const { stacks, apertures, levels, tables, step } = extentOf(shoot);
  return frameCount * (1 + tables * stacks * apertures * levels * (1 + step / 3));
}

/** What makes the work of a shoot. */
export function extentOf({ camera, filters, stackFilters, limits }: Shoot): Extent {
  const { stepsPerStop, aperture, iso, shutter } = camera;
  const steps = (control: 'aperture' | 'iso' | 'shutter', from: string, to: string) =>
    (dialStep(control, to, stepsPerStop) ?? 0) - (dialStep(control, from, stepsPerStop) ?? 0) + 1;
  const owned = filters.length;
  const isos = steps('iso', String(iso.lowest), String(iso.highest));
  const apertures = typeof aperture === 'string' ? 1 : steps('aperture', aperture.widest, aperture.narrowest);
  const all = steps('shutter', shutter.longest, shutter.shortest) + isos + apertures;
  return {
    stacks: 1 + owned + (stackFilters ? (owned * (owned - 1)) / 2 : 0),
    apertures,
    isos,
    levels: Math.min(all, Math.floor(2 * limits.toleranceEv * stepsPerStop) + 1),
    step: stepLimit(limits.largestStepEv, stepsPerStop),
    tables: owned === 0 || limits.maxFilterChanges === undefined ? 1 : limits.maxFilterChanges + 1,
  };
}
