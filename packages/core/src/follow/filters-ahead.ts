// How many filter changes the next minutes may use where they are limited, and to which filters. One too early could leave
// the night without; but to look at all that is left at every step takes ten times as long. The plan has weighed it: each of
// its changes stands for the light at which it came, and one whose light comes later than is looked ahead is kept back.

import type { CameraState } from './camera.js';
import type { Evening } from './evening.js';

export interface FiltersAhead {
  readonly changesLeft: number; // Infinity: no limit
  /** Which stacks a change may lead to; absent: any. */
  readonly stacks?: ReadonlySet<number>;
}

/** @param targets of the frames looked at, from `frame` on */
export function filtersAhead(
  { shoot, live, frameCount, changes }: Evening,
  { present, filterChanges }: CameraState,
  frame: number,
  targets: Float64Array,
): FiltersAhead {
  const { maxFilterChanges } = shoot.limits;
  if (maxFilterChanges === undefined) return { changesLeft: Number.POSITIVE_INFINITY };
  const changesLeft = Math.max(0, maxFilterChanges - filterChanges);
  if (present === undefined || frame + targets.length >= frameCount) return { changesLeft };
  const { stops } = live.lattice;
  // Down as the light falls, up as it comes: a change that has been made, or been overtaken, leads nowhere from here.
  const sign = shoot.direction === 'dusk' ? -1 : 1;
  const ahead = changes.filter(({ stack }) => sign * (stops[stack]! - stops[present.stack]!) > 0);
  const end = targets[targets.length - 1]!;
  const later = ahead.filter(({ targetEv100 }) => sign * (targetEv100 - end) > 0);
  return {
    changesLeft: Math.max(0, changesLeft - later.length),
    // Where none is to spare, a change to other filters than the plan's would be one too many.
    ...(changesLeft > ahead.length ? {} : { stacks: new Set(ahead.map(({ stack }) => stack)) }),
  };
}
