// Where the light will leave the kit, over all that is left of the evening: told once, and again only where it changes.

import { warningOf } from './english.js';
import { type Evening, frameStartMs, frameText } from './evening.js';
import { expectedOffsetEv, type Trust } from './trust.js';
import type { FollowWarning } from './warning.js';

type End = 'dark' | 'bright';

/** What was told last of an end of the kit; an end is absent where the light was not told to leave it. */
export type ReachTold = { readonly [end in End]?: Beyond };

interface Beyond {
  readonly now: boolean;
  readonly frame: number; // the first
  readonly worstEv: number;
}

/** Our choice: what is told to a tenth of a stop is told from half of one. */
export const LEAST_BEYOND_EV = 0.05;
/** Our choices: what a reading more or less does not change. */
const BACK_WITHIN_EV = -0.1;
const CHANGED_EV = 0.5;
const CHANGED_MS = 10 * 60_000;
/** Beyond the cues ahead the light is looked at so far apart. */
const APART_MS = 30_000;

/**
 * What is to be said now of the rest of the evening, and what has been told then.
 *
 * @param targets of the frames ahead, from `frame` on
 */
export function reachAhead(
  evening: Evening,
  trust: Trust,
  frame: number,
  targets: Float64Array,
  told: ReachTold,
): { readonly told: ReachTold; readonly warnings: readonly FollowWarning[] } {
  const later = targetsLater(evening, trust, frame + targets.length);
  const warnings: FollowWarning[] = [];
  const next: { [end in End]?: Beyond } = { ...told };
  for (const end of ['bright', 'dark'] as const) {
    const { beyond, mostEv } = beyondOf(evening, end, frame, targets, later);
    const before = told[end];
    if (beyond === undefined) {
      if (before === undefined || mostEv > BACK_WITHIN_EV) continue;
      delete next[end];
      warnings.push(warningOf({ kind: 'within-reach', end }));
    } else if (before === undefined || hasChanged(evening, frame, before, beyond)) {
      next[end] = beyond;
      const at = frameText(evening, beyond.frame);
      warnings.push(warningOf({ kind: 'out-of-reach', ...beyond, at, end }, evening.plan.clocksBack));
    }
  }
  return { told: next, warnings };
}

/** Frames and targets after those ahead, every half minute to the end. */
function targetsLater(evening: Evening, trust: Trust, from: number): (readonly [number, number])[] {
  const { plan, frameCount, intervalMs } = evening;
  const apart = Math.max(1, Math.floor(APART_MS / intervalMs));
  const later: [number, number][] = [];
  for (let frame = from; frame < frameCount; frame += apart) {
    const { targetEv100, sceneEv100 } = plan.frames[frame]!;
    later.push([frame, targetEv100 + expectedOffsetEv(trust, frameStartMs(evening, frame), sceneEv100)]);
  }
  return later;
}

/** By how much the light lies beyond an end of the kit, at most, and from where on, if at all. */
function beyondOf(
  { reach, shoot }: Evening,
  end: End,
  frame: number,
  targets: Float64Array,
  later: readonly (readonly [number, number])[],
) {
  const { toleranceEv } = shoot.limits;
  let first: number | undefined;
  let mostEv = Number.NEGATIVE_INFINITY;
  const look = (at: number, ev: number) => {
    const byEv = (end === 'dark' ? reach.darkEv100 - ev : ev - reach.brightEv100) - toleranceEv;
    if (byEv >= LEAST_BEYOND_EV) first ??= at;
    mostEv = Math.max(mostEv, byEv);
  };
  targets.forEach((ev, i) => {
    look(frame + i, ev);
  });
  for (const [at, ev] of later) look(at, ev);
  const beyond = first === undefined ? undefined : { now: first === frame, frame: first, worstEv: mostEv };
  return { beyond, mostEv };
}

/** Whether it comes or ends otherwise than was told: what is told as of now is so until it is gone for a while. */
function hasChanged({ intervalMs }: Evening, frame: number, before: Beyond, after: Beyond): boolean {
  if (Math.abs(after.worstEv - before.worstEv) >= CHANGED_EV) return true;
  if (before.now) return (after.frame - frame) * intervalMs >= CHANGED_MS;
  return after.now || Math.abs(after.frame - before.frame) * intervalMs >= CHANGED_MS;
}
