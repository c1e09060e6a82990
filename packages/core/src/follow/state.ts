// What is known while an evening is followed.

import type { RampCue } from '../ramp/way.js';
import type { CameraState } from './camera.js';
import type { Evening } from './evening.js';
import type { Doubted } from './moment.js';
import type { ReachTold } from './reach.js';
import type { Trust } from './trust.js';

/**
 * All that is known so far, after {@link startFollow} or a {@link followFrame}. Never changed: hold on to any of them to
 * go back. It holds the plan's tables; {@link saveFollow} gives what else is in it as plain JSON. Give it to the next call
 * as it is; what is in it may be another tomorrow.
 */
export interface FollowState {
  /** Tells a state from an answer or a frame, to the compiler and to {@link followFrame}. */
  readonly kind: 'follow-state';
  /** Answered last, from 0; undefined before the first. */
  readonly frame: number | undefined;
  /** @internal Frames from the answer before to the last one. */
  readonly every: number;
  /** @internal */
  readonly evening: Evening;
  /** @internal */
  readonly camera: CameraState;
  /** @internal */
  readonly trust: Trust;
  /** @internal Cues told ahead with the last answer, `frame` counted from the shoot's first. */
  readonly told: readonly RampCue[];
  /** @internal */
  readonly doubted: Doubted | undefined;
  /** @internal Where the light was last told to leave the kit. */
  readonly reach: ReachTold;
  /** @internal Whether it is still to be told that the plan cannot keep up with the light. */
  readonly isTooFast: boolean;
}

/**
 * Returns a state as it is.
 *
 * @throws RangeError on anything that startFollow, followFrame and resumeFollow have not made
 */
export function checkState(state: FollowState): FollowState {
  const { kind, evening } = (state ?? {}) as Partial<FollowState>;
  if (kind !== 'follow-state') {
    const isAnswer = typeof state === 'object' && state !== null && 'cuesAhead' in state;
    throw new RangeError(
      `state must be from startFollow or resumeFollow, or the state of an answer, got ${isAnswer ? 'an answer: give its state' : String(state)}`,
    );
  }
  if (typeof evening?.zone?.offsetMin !== 'function') {
    throw new RangeError(
      'state must not go through JSON, got a copy without its plan: use saveFollow and resumeFollow',
    );
  }
  return state;
}
