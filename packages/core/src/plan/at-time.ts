// A plan by the clock, for a program that acts on it.

import { finite } from '../check.js';
import { groupWith, hold, listOf, text } from '../hold.js';
import type { PlanFrame, PlanMade } from './types.js';

const timed = listOf(groupWith({ at: text }));

/**
 * The times of a plan as numbers, beside their texts.
 *
 * @param plan from `planShoot` or `readPlan`
 * @returns UTC epoch milliseconds of each frame and each cue, in their order
 * @throws RangeError where it has none, as an evening that cannot be planned
 * @example
 * ```ts
 * // With the shoot and plan of planShoot's example.
 * import { planTimes } from '@evenfall/core';
 *
 * const { frameMs, cueMs } = planTimes(plan);
 * frameMs[1] - frameMs[0]; // → 1000 * shoot.intervalS
 * cueMs.length; // → plan.cues.length
 * ```
 */
export function planTimes(plan: Pick<PlanMade, 'frames' | 'cues'>): {
  readonly frameMs: readonly number[];
  readonly cueMs: readonly number[];
} {
  hold('plan', plan, groupWith({ frames: timed, cues: timed }));
  const { frames, cues } = plan;
  const ms = ({ at }: { readonly at: string }) => Date.parse(at);
  return { frameMs: frames.map(ms), cueMs: cues.map(ms) };
}

/**
 * The frame that holds at an instant: the last that has begun.
 *
 * @param plan from `planShoot` or `readPlan`
 * @param atMs UTC epoch milliseconds
 * @returns undefined before the first frame, and from the end of the last one's interval on
 * @throws RangeError where `atMs` is not finite, or the plan has no frames
 * @example
 * ```ts
 * // With the shoot and plan of planShoot's example.
 * import { frameAt } from '@evenfall/core';
 *
 * const startMs = Date.parse(plan.summary.startAt);
 * frameAt(plan, startMs)?.frame; // → 0
 * frameAt(plan, startMs + 2500 * shoot.intervalS)?.frame; // → 2
 * frameAt(plan, startMs - 1); // → undefined
 * ```
 */
export function frameAt(plan: Pick<PlanMade, 'frames' | 'shoot'>, atMs: number): PlanFrame | undefined {
  hold('plan', plan, groupWith({ frames: timed }));
  finite('atMs', atMs);
  const { frames, shoot } = plan;
  const i = frames.findLastIndex(({ at }) => Date.parse(at) <= atMs);
  const frame = frames[i];
  if (frame === undefined) return undefined;
  const isOver = i === frames.length - 1 && atMs >= Date.parse(frame.at) + 1000 * shoot.intervalS;
  return isOver ? undefined : frame;
}
