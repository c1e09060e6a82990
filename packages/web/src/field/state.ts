// Where the shoot stands at a moment: which cue is next, whether it is due or late, what the camera stands at.

import type { PlanCue, PlanFrame, PlanMade } from '@evenfall/core';
import { frameAtMs } from '../chart/time-ticks.js';

export interface FieldState {
  readonly phase: 'before' | 'running' | 'over';
  readonly frameNow: number; // 0 before the first
  readonly frame: PlanFrame; // what the plan wants of the frame under way
  readonly held: PlanFrame; // what the camera stands at, as far as told
  readonly next: PlanCue | undefined; // first cue not done
  readonly following: readonly PlanCue[]; // two after it
  readonly urgency: 'waiting' | 'soon' | 'due' | 'late';
  readonly toGoMs: number; // to the next cue, negative where it is late; to the end where there is none
  readonly behind: number; // cues whose time has passed by more than an interval
  readonly inIntervalS: number; // seconds since the frame under way began
}

const SOON_MS = 30_000;

/** @param doneThrough frame of the last cue done */
export function fieldState(plan: PlanMade, atMs: number, doneThrough: number): FieldState {
  const { frames, cues, shoot } = plan;
  const intervalMs = shoot.intervalS * 1000;
  const startMs = Date.parse(plan.summary.startAt);
  const endMs = Date.parse(plan.summary.endAt) + intervalMs;
  const frameNow = frameAtMs(frames, atMs, shoot.intervalS);
  const first = cues.findIndex(({ frame }) => frame > doneThrough);
  const waiting = first < 0 ? [] : cues.slice(first);
  const next = waiting[0];
  const toGoMs = (next === undefined ? endMs : Date.parse(next.at)) - atMs;
  return {
    phase: atMs < startMs ? 'before' : atMs >= endMs ? 'over' : 'running',
    frameNow,
    frame: frames[frameNow] as PlanFrame,
    held: frames[Math.min(doneThrough, frames.length - 1)] as PlanFrame,
    next,
    following: waiting.slice(1, 3),
    urgency:
      next === undefined || toGoMs > SOON_MS
        ? 'waiting'
        : toGoMs > intervalMs
          ? 'soon'
          : toGoMs >= -intervalMs
            ? 'due'
            : 'late',
    toGoMs,
    behind: waiting.filter(({ at }) => Date.parse(at) + intervalMs < atMs).length,
    inIntervalS: atMs < startMs ? 0 : ((atMs - startMs) % intervalMs) / 1000,
  };
}
