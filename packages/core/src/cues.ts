// The schedule as a person performs it: when, which control, from what to what.

import type { Setting } from './kit.js';
import type { Control, PlanChange, PlanCue, PlanFrame } from './plan-format.js';

/** A filter stack in words: names joined by " + ", "none" for the bare lens. */
export function stackText(names: readonly string[]): string {
  return names.length === 0 ? 'none' : names.join(' + ');
}

/** Controls that differ between two settings, in the order hands work: filter, shutter, ISO, aperture. */
export function changesBetween(before: Setting, after: Setting): PlanChange[] {
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
 * @param shutterIsCue false where a rig times the shutter freely: then its movement is no cue
 */
export function cuesOf(frames: readonly PlanFrame[], shutterIsCue: boolean): PlanCue[] {
  return frames.flatMap(({ frame, at, sunAltitudeDeg }, i) => {
    if (i === 0) return [];
    const changes = changesBetween(frames[i - 1], frames[i]).filter(
      ({ control }) => shutterIsCue || control !== 'shutter',
    );
    return changes.length === 0 ? [] : [{ frame, at, sunAltitudeDeg, changes }];
  });
}
