// What a move is planned against, and what is said about it: shared by the files that find faults.

import type { Optics } from './angle.js';
import type { Travel } from './resolve.js';
import type { FrameBudget } from './time-budget.js';

/** Everything that decides whether the moves can be made and seen. */
export interface Asked {
  readonly travels: readonly Travel[];
  /** One a frame. */
  readonly budgets: readonly FrameBudget[];
  readonly intervalS: number;
  readonly clipFps: number;
  readonly writeS: number;
  readonly darkFrame: boolean;
  readonly optics?: Optics;
}

/** One change that cures a finding, in words and in numbers; a number is absent where the change is another. */
export interface MoveRemedy {
  readonly change:
    | 'more-frames'
    | 'fewer-frames'
    | 'longer-recording'
    | 'longer-interval'
    | 'shorter-shutter'
    | 'no-dark-frame'
    | 'shorter-write'
    | 'shorter-settle'
    | 'shorter-move'
    | 'longer-move';
  readonly text: string;
  readonly frameCount?: number;
  readonly intervalS?: number;
  /** From the first frame to the last. */
  readonly recordingS?: number;
  readonly clipS?: number;
  readonly shutterS?: number;
  readonly writeS?: number;
  readonly settleS?: number;
  /** One a move, in its unit, signed. */
  readonly lengths?: readonly number[];
}

/** Something about the moves that a person should know, with every single change that cures it. */
export interface MoveFinding {
  readonly kind: 'no-time' | 'gear-too-slow' | 'steps-too-small' | 'too-fast' | 'too-slow' | 'blur';
  readonly level: 'info' | 'caution' | 'warning';
  /** From 0; where it is worst. */
  readonly frame?: number;
  readonly text: string;
  readonly remedies: readonly MoveRemedy[];
}

/** From the first frame to the last. */
export function recordingOf({ budgets, intervalS }: Asked): number {
  return (budgets.length - 1) * intervalS;
}

/** Longest shutter of all frames, exact seconds. */
export function longestShutterS({ budgets }: Asked): number {
  return budgets.reduce((most, { shutterS }) => Math.max(most, shutterS), 0);
}
