// The schedule as a person performs it: when, which control, from what to what.

import { aGroup, aNumber, groupWith, hold, listOf, text } from '../hold.js';
import type { Setting } from '../shoot/kit.js';
import type { Control, PlanChange, PlanCue, PlanFrame } from './types.js';

/** What the dials say, and what is on the lens. */
export type Dials = Pick<Setting, 'shutter' | 'iso' | 'aperture' | 'filters'>;

/**
 * A filter stack in words.
 *
 * @param names of the filters on the lens, in the order owned
 * @returns names joined by " + ", "none" for the bare lens
 */
export function stackText(names: readonly string[]): string {
  return names.length === 0 ? 'none' : names.join(' + ');
}

/** Controls that differ between two settings, in the order hands work: filter, shutter, ISO, aperture. */
export function changesBetween(before: Dials, after: Dials): PlanChange[] {
  const all: readonly (readonly [Control, string, string])[] = [
    ['filter', stackText(before.filters), stackText(after.filters)],
    ['shutter', before.shutter, after.shutter],
    ['iso', String(before.iso), String(after.iso)],
    ['aperture', before.aperture, after.aperture],
  ];
  return all.filter(([, from, to]) => from !== to).map(([control, from, to]) => ({ control, from, to }));
}

const DIALS = listOf(
  groupWith({
    at: text,
    sunAltitudeDeg: aNumber,
    shutter: text,
    iso: aNumber,
    aperture: text,
    filters: listOf(text),
  }),
);

/**
 * The cues of a plan's frames: one for each frame that stands at another setting than the one before.
 *
 * @param frames in order; what the dials say, when and under what sun
 * @param shutterIsCue false where a rig times the shutter freely: then its movement is no cue
 * @returns in order of time; none for frames that stand at one setting
 * @throws RangeError naming what a frame lacks
 * @example
 * ```ts
 * import { cuesOf } from '@evenfall/core';
 *
 * const day = { iso: 100, aperture: '4', filters: [], sunAltitudeDeg: 3 };
 * const frames = [
 *   { ...day, frame: 0, at: '2026-09-22T19:00:00+02:00', shutter: '1/500' },
 *   { ...day, frame: 1, at: '2026-09-22T19:00:07+02:00', shutter: '1/400' },
 * ];
 * cuesOf(frames, true)[0]?.changes; // → [{ control: 'shutter', from: '1/500', to: '1/400' }]
 * cuesOf(frames, false); // → []
 * ```
 */
export function cuesOf(
  frames: readonly (Pick<PlanFrame, 'frame' | 'at' | 'sunAltitudeDeg'> & Dials)[],
  shutterIsCue: boolean,
): PlanCue[] {
  hold('frames', frames, DIALS);
  return frames.flatMap(({ frame, at, sunAltitudeDeg }, i) => {
    if (i === 0) return [];
    const changes = changesBetween(frames[i - 1], frames[i]).filter(
      ({ control }) => shutterIsCue || control !== 'shutter',
    );
    return changes.length === 0 ? [] : [{ frame, at, sunAltitudeDeg, changes }];
  });
}

/** A third of a stop: a click of most dials, so that a hand can set it where the rig fails. Our choice. */
const TOLD_EV = 1 / 3;

/**
 * Where a rig that times the shutter freely has it, by the clock: at every third of a stop from what was told before,
 * be it the first setting, one of these or a cue, which tells the whole setting.
 *
 * @param frames in order
 * @param cues of the other controls
 */
export function shutterTimesOf(
  frames: readonly Pick<PlanFrame, 'frame' | 'at' | 'sunAltitudeDeg' | 'shutter' | 'shutterS'>[],
  cues: readonly Pick<PlanCue, 'frame'>[],
): PlanCue[] {
  const toldByCue = new Set(cues.map(({ frame }) => frame));
  let told = frames[0];
  return frames.flatMap((now) => {
    const { frame, at, sunAltitudeDeg, shutter: to } = now;
    const byCue = toldByCue.has(frame);
    if (!byCue && Math.abs(Math.log2(now.shutterS / told.shutterS)) < TOLD_EV - 1e-9) return [];
    const from = told.shutter;
    told = now;
    return byCue ? [] : [{ frame, at, sunAltitudeDeg, changes: [{ control: 'shutter' as const, from, to }] }];
  });
}

const CUES = groupWith({ cues: listOf(aGroup) });

/**
 * All that changes, by the clock: the cues and, where a rig times the shutter freely, where that stands between them.
 *
 * @param plan its `cues` and `shutterTimes`
 * @returns in order of time, at most one a frame
 * @throws RangeError on what has no cues
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { changesByClock } from '@evenfall/core';
 *
 * // On a dial nothing changes but at a cue.
 * changesByClock(plan).length === plan.cues.length; // → true
 * ```
 */
export function changesByClock(plan: {
  readonly cues: readonly PlanCue[];
  readonly shutterTimes?: readonly PlanCue[] | undefined;
}): readonly PlanCue[] {
  hold('plan', plan, CUES);
  const { cues, shutterTimes = [] } = plan;
  return shutterTimes.length === 0 ? cues : [...cues, ...shutterTimes].sort((a, b) => a.frame - b.frame);
}
