// What a move is planned against, and what is said about it: shared by the files that find faults.

import type { Bracket } from '../footage/bracket.js';
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
  readonly bracket?: Bracket | undefined;
  readonly optics?: Optics | undefined;
}

/** From the first frame to the last. */
export function recordingOf({ budgets, intervalS }: Asked): number {
  return (budgets.length - 1) * intervalS;
}

/** Longest shutter of all frames, exact seconds. */
export function longestShutterS({ budgets }: Asked): number {
  return budgets.reduce((most, { shutterS }) => Math.max(most, shutterS), 0);
}
