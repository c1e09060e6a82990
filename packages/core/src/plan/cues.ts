// The schedule as a person performs it: when, which control, from what to what.

import type { Setting } from '../shoot/kit.js';
import type { Control, PlanChange, PlanCue, PlanFrame } from './types.js';

type Dials = Pick<Setting, 'shutter' | 'iso' | 'aperture' | 'filters'>;

/**
 * A filter stack in words.
 *
 * @param names of the filters on the lens, in the order owned
 * @returns names joined by " + ", "none" for the bare lens
 * @example
 * ```ts
 * import { stackText } from '@evenfall/core';
 *
 * stackText(['ND 8', 'ND 64']); // → 'ND 8 + ND 64'
 * stackText([]); // → 'none'
 * ```
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

/**
 * The cues of a plan's frames: one for each frame that stands at another setting than the one before.
 *
 * @param frames in order; what the dials say, when and under what sun
 * @param shutterIsCue false where a rig times the shutter freely: then its movement is no cue
 * @returns in order of time; none for frames that stand at one setting
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
  return frames.flatMap(({ frame, at, sunAltitudeDeg }, i) => {
    if (i === 0) return [];
    const changes = changesBetween(frames[i - 1], frames[i]).filter(
      ({ control }) => shutterIsCue || control !== 'shutter',
    );
    return changes.length === 0 ? [] : [{ frame, at, sunAltitudeDeg, changes }];
  });
}
