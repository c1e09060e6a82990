// Where the shoot stands at a moment: which cue is next, whether it is due or late, what the camera stands at.

import type { FollowCue, FollowSetting, PlanFrame, PlanMade } from '@evenfall/core';
import { frameAtMs } from '../chart/time-ticks.js';
import type { Stand } from './follow.js';

export interface FieldState {
  readonly phase: 'before' | 'running' | 'over';
  readonly frameNow: number; // 0 before the first
  readonly frame: PlanFrame; // the plan's, for the frame under way
  readonly held: FollowSetting; // what the camera stands at, as far as told
  readonly next: FollowCue | undefined; // first cue not done
  readonly following: readonly FollowCue[]; // two after it
  readonly urgency: 'waiting' | 'soon' | 'due' | 'late';
  readonly toGoMs: number; // to the next cue, negative where it is late; to the end where there is none
  readonly behind: number; // cues told whose time has passed since anybody last said something
  readonly inIntervalS: number; // seconds since the frame under way began
}

const SOON_MS = 30_000;
const GRACE_MS = 10_000;

/** How late a cue may come and still be in time: nobody's hands and clock agree to the second. */
const graceMs = (intervalMs: number) => Math.max(intervalMs, GRACE_MS);

/**
 * @param stand as it is now
 * @param last as the last event left it
 */
export function fieldState(plan: PlanMade, atMs: number, stand: Stand, last: Stand): FieldState {
  const { frames, shoot } = plan;
  const intervalMs = shoot.intervalS * 1000;
  const startMs = Date.parse(plan.summary.startAt);
  const endMs = Date.parse(plan.summary.endAt) + intervalMs;
  const frameNow = frameAtMs(frames, atMs, shoot.intervalS);
  const [next, ...following] = stand.cues;
  const toGoMs = (next === undefined ? endMs : Date.parse(next.at)) - atMs;
  const lateMs = graceMs(intervalMs);
  return {
    phase: atMs < startMs ? 'before' : atMs >= endMs ? 'over' : 'running',
    frameNow,
    frame: frames[frameNow] as PlanFrame,
    held: stand.held,
    next,
    following: following.slice(0, 2),
    urgency:
      next === undefined || toGoMs > SOON_MS
        ? 'waiting'
        : toGoMs > intervalMs
          ? 'soon'
          : toGoMs >= -lateMs
            ? 'due'
            : 'late',
    toGoMs,
    behind: last.cues.filter(({ at }) => Date.parse(at) + lateMs < atMs).length,
    inIntervalS: atMs < startMs ? 0 : ((atMs - startMs) % intervalMs) / 1000,
  };
}

/** From which frame on a cue pressed now is done: its own where it comes about in time, else the next to begin. */
export function doneFrame({ next, toGoMs, frameNow }: FieldState, intervalS: number): number {
  if (next === undefined) return frameNow;
  const intervalMs = intervalS * 1000;
  const inTime = toGoMs <= Math.max(SOON_MS, 3 * intervalMs) && toGoMs >= -graceMs(intervalMs);
  return inTime ? next.frame : frameNow + 1;
}

// The frame under way is lost to it, and a hand needs time for the next.
const HAND_FRAMES = 2;

/** The first frame that may be planned anew. */
export const freeFrame = ({ phase, frameNow }: FieldState) =>
  phase === 'before' ? 0 : frameNow + HAND_FRAMES;
