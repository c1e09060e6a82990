// By how much the camera's clock was fast. A zone that was not set or summer time shows in the settings: with the right
// hours they are those that were planned. A few seconds show where the frames begin, end and change all alike.

import type { PlanMade } from '../plan/types.js';
import type { Shot } from './taken.js';

const QUARTER_MS = 900_000;
/** Zones reach from -12 to +14 hours. */
const MOST_QUARTERS = 14 * 4;
/** Stops of mean difference that another hour must do better by, before the camera's own is left. */
const CLEARLY_EV = 0.3;
/** A frame that lies beside the plan counts as one so many stops off. */
const OUTSIDE_EV = 2;

/**
 * Milliseconds by which the clock was fast, in quarters of an hour; from start to start where no zone explains it.
 *
 * @param shots in order, one or more
 * @param frames of the plan
 */
export function hoursFastMs(
  shots: readonly Shot[],
  { frames, shoot }: Pick<PlanMade, 'frames' | 'shoot'>,
  startMs: number,
): number {
  const differenceAt = (fastMs: number) => {
    let sum = 0;
    for (const { clockMs, bareEv100 } of shots) {
      const frame = frames[Math.round((clockMs - fastMs - startMs) / (1000 * shoot.intervalS))];
      sum +=
        frame === undefined
          ? OUTSIDE_EV
          : Math.min(OUTSIDE_EV, Math.abs(bareEv100 - (frame.settingEv100 - frame.filterStops)));
    }
    return sum / shots.length;
  };
  const asItIs = differenceAt(0);
  let best = { fastMs: 0, differenceEv: asItIs - CLEARLY_EV };
  const startToStartMs = shots[0]!.clockMs - startMs;
  const quarters = Array.from({ length: MOST_QUARTERS }, (_, i) => (i + 1) * QUARTER_MS);
  for (const fastMs of [...quarters.flatMap((ms) => [ms, -ms])]) {
    const differenceEv = differenceAt(fastMs);
    if (differenceEv < best.differenceEv) best = { fastMs, differenceEv };
  }
  if (best.fastMs !== 0) return best.fastMs;
  // Nothing of it lies within the plan: the date is not set.
  return asItIs === OUTSIDE_EV ? startToStartMs : 0;
}

/**
 * Seconds more by which it was fast: where first frame, last frame and cues are all off by the same. Otherwise 0: a person who
 * begins late, or is late, is no clock.
 */
export function secondsFast(
  offS: { readonly first: number; readonly last: number; readonly cues: readonly number[] },
  intervalS: number,
): number {
  const { first, last, cues } = offS;
  if (Math.abs(first) <= intervalS / 2 || Math.abs(first - last) > intervalS / 2) return 0;
  if (cues.length < 3) return 0;
  const near = cues.filter((lateS) => Math.abs(lateS - first) <= intervalS);
  return near.length >= 0.8 * cues.length ? first : 0;
}
