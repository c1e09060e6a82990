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
  /** The kind of change. */
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
  /** For a person, one sentence. */
  readonly text: string;
  /** Whole, 2 or more. */
  readonly frameCount?: number;
  /** Seconds, > 0. */
  readonly intervalS?: number;
  /** From the first frame to the last, seconds. */
  readonly recordingS?: number;
  /** Seconds of clip. */
  readonly clipS?: number;
  /** Longest shutter, exact seconds. */
  readonly shutterS?: number;
  /** Seconds of each interval for writing, >= 0. */
  readonly writeS?: number;
  /** Rest after a step, seconds, >= 0. */
  readonly settleS?: number;
  /** Whole way of each move, degrees or metres, signed. */
  readonly lengths?: readonly number[];
}

/** Something about the moves that a person should know, with every single change that cures it. */
export interface MoveFinding {
  /** What it is about. */
  readonly kind: 'no-time' | 'gear-too-slow' | 'steps-too-small' | 'too-fast' | 'too-slow' | 'blur';
  /** How much it matters. */
  readonly level: 'info' | 'caution' | 'warning';
  /** From 0; where it is worst. */
  readonly frame?: number;
  /** For a person, one or more sentences. */
  readonly text: string;
  /** None or more; each alone cures it. */
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
