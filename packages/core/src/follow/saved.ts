// A followed evening as plain JSON, to go on with in another process. What does not change, the plan and its tables, is
// made again from the plan; what was learnt and done is a few kB.

import { givenOf } from '../files/fault.js';
import { type FileError, placed } from '../files/file-error.js';
import { checkPlan } from '../plan/plan-check.js';
import type { Plan } from '../plan/types.js';
import type { RampCue } from '../ramp/way.js';
import { sentenceOf } from '../words/sentences.js';
import { planOrClosest } from './closest.js';
import { digestOf } from './digest.js';
import { eveningOf, planDigest } from './evening.js';
import type { KitNow } from './kit-now.js';
import { englishSavedFaults, type SavedFaultFacts } from './saved-fault.js';
import { checkState, type FollowState } from './state.js';
import type { FollowOptionsFull } from './types.js';

const FORMAT = 'evenfall-follow/1';

/** Deepest nesting of what is looked at: a saved evening has six levels. */
const DEEPEST = 16;

/** An evening on its way, as {@link saveFollow} gives it: plain JSON, `evenfall-follow/1`. */
export interface SavedFollow {
  /** Goes up where another version could not go on from it. */
  readonly format: 'evenfall-follow/1';
  /** Tells the plan that it belongs to from others. */
  readonly plan: string;
  /** What was learnt and done. What is in it may be another tomorrow. */
  readonly state: Readonly<Record<string, unknown>>;
  /** Tells whether it is whole. */
  readonly check: string;
}

/** The `state` to go on from, or in one line why there is none: `errors`, exactly one. */
export type FollowResumed =
  | { readonly kind: 'ok'; readonly state: FollowState }
  | { readonly kind: 'wrong'; readonly errors: readonly FileError<SavedFaultFacts>[] }; // exactly one

/** All of a state that changes, as JSON has it. */
type Kept = Omit<FollowState, 'kind' | 'evening' | 'told'> & {
  readonly options: FollowOptionsFull;
  readonly kit: KitNow | undefined;
  readonly told: readonly (readonly number[])[];
};

/**
 * A followed evening as plain JSON of a few kB, to be kept, sent, and taken up by {@link resumeFollow}.
 *
 * @param state from {@link startFollow}, {@link resumeFollow} or an answer
 * @returns the same for the same state; JSON and back changes nothing
 * @throws RangeError on a state that is none
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { followFrame, resumeFollow, saveFollow, startFollow } from '@evenfall/core';
 *
 * const { state } = followFrame(startFollow(plan), { frame: 40 });
 * const text = JSON.stringify(saveFollow(state)); // on the disk, say, while the power is gone
 * const resumed = resumeFollow(plan, JSON.parse(text));
 * if (resumed.kind === 'wrong') throw new Error(resumed.errors[0]?.message);
 * resumed.state.frame; // → 40
 * ```
 */
export function saveFollow(state: FollowState): SavedFollow {
  const { kind: _, evening, told, ...changing } = checkState(state);
  const { options, kitNow: kit } = evening;
  const kept: Kept = { ...changing, options, kit, told: told.map(rowOf) };
  const saved = { format: FORMAT, plan: evening.planDigest, state: { ...kept } } as const;
  return { ...saved, check: digestOf(saved) };
}

/**
 * Takes up a saved evening: from here on {@link followFrame} answers as if nothing had happened. Never throws for what
 * a file can hold; one of another version or another plan, or not whole, is a normal answer.
 *
 * @param plan the one that was followed
 * @param saved from {@link saveFollow}, as a JSON parser gave it
 * @returns the state, or one error
 * @throws RangeError on a plan that contradicts its own kit
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { resumeFollow, saveFollow, startFollow } from '@evenfall/core';
 *
 * const other = { ...plan, shoot: { ...plan.shoot, intervalS: 30 } };
 * const resumed = resumeFollow(other, saveFollow(startFollow(plan)));
 * resumed.kind === 'wrong' && resumed.errors[0]?.path; // → ['plan']
 * ```
 */
export function resumeFollow(plan: Plan, saved: unknown): FollowResumed {
  checkPlan(plan);
  const given = isGroup(saved) ? saved : {};
  const { format, check, ...rest } = given;
  if (format !== FORMAT) {
    return wrong(['format'], { kind: 'saved-by-another-version', given: givenOf(format), ours: FORMAT });
  }
  if (isDeeper(rest, DEEPEST) || check !== digestOf({ format, ...rest })) {
    return wrong(['check'], { kind: 'saved-not-whole' });
  }
  // Written by saveFollow of this version, as its digest tells.
  const { options, kit, told, ...changing } = rest.state as unknown as Kept;
  const made = planOrClosest(plan);
  if (rest.plan !== planDigest(made)) return wrong(['plan'], { kind: 'saved-with-another-plan' });
  const evening = eveningOf(made, options, kit);
  return { kind: 'ok', state: { ...changing, kind: 'follow-state', evening, told: told.map(cueOf) } };
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isDeeper(value: unknown, levels: number): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return levels === 0 || Object.values(value).some((each) => isDeeper(each, levels - 1));
}

function wrong(path: readonly string[], facts: SavedFaultFacts): FollowResumed {
  const english = (fault: SavedFaultFacts) => sentenceOf(englishSavedFaults, 'kind', fault);
  return { kind: 'wrong', errors: placed([{ path, ...facts }], english) };
}

function rowOf({ frame, to, filter }: RampCue): readonly number[] {
  return [frame, to.stack, to.aperture, to.level, to.iso, filter ? 1 : 0];
}

function cueOf([frame, stack, aperture, level, iso, filter]: readonly number[]): RampCue {
  return {
    frame: frame!,
    to: { stack: stack!, aperture: aperture!, level: level!, iso: iso! },
    filter: filter === 1,
  };
}
