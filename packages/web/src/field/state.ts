// Where the shoot stands at a moment: what is to be done next, whether it is due or late, what the camera stands at.

import type { FollowCue, FollowSetting, PlanFrame, PlanMade } from '@evenfall/core';
import { frameAtMs } from '../chart/time-ticks.js';
import type { Stand } from './follow.js';

export interface FieldState {
  /**
   * The one thing to do: `start` the camera, `set` all of what is held now, the next `cue`; `none`: let it run;
   * `over`: nothing any more.
   */
  readonly order: 'start' | 'set' | 'cue' | 'none' | 'over';
  readonly frameNow: number; // 0 before the first
  readonly frame: PlanFrame; // the plan's, for the frame under way
  readonly held: FollowSetting; // what the camera stands at, as far as told, or should
  readonly ready: boolean; // before the start: the camera stands at it
  readonly next: FollowCue | undefined; // the cue to do, where that is what is to be done
  readonly following: readonly FollowCue[]; // two after it
  readonly urgency: 'waiting' | 'soon' | 'due' | 'late';
  readonly atClock: string; // when what is to be done is due, RFC 3339
  readonly toGoMs: number; // to then, negative where it is late; to the end where there is nothing to do
  readonly behind: number; // cues told whose time has passed since anybody last said something
  readonly inIntervalS: number; // seconds since the frame under way began
}

const SOON_MS = 30_000;
const GRACE_MS = 10_000;

/** How late a cue may come and still be in time: nobody's hands and clock agree to the second. */
const graceMs = (intervalMs: number) => Math.max(intervalMs, GRACE_MS);

/** When the last frame's interval is over, UTC epoch milliseconds. */
export const endMs = ({ summary, shoot }: PlanMade) => Date.parse(summary.endAt) + shoot.intervalS * 1000;

/**
 * @param stand as it is now
 * @param last as the last event left it
 */
export function fieldState(plan: PlanMade, atMs: number, stand: Stand, last: Stand): FieldState {
  const { frames, shoot, summary } = plan;
  const intervalMs = shoot.intervalS * 1000;
  const startMs = Date.parse(summary.startAt);
  const frameNow = frameAtMs(frames, atMs, shoot.intervalS);
  const frame = frames[frameNow] as PlanFrame;
  const order = orderAt();
  const next = order === 'cue' ? stand.cues[0] : undefined;
  const atClock = { start: summary.startAt, set: frame.at, cue: next?.at, none: undefined, over: undefined }[
    order
  ];
  const toGoMs = (atClock === undefined ? endMs(plan) : Date.parse(atClock)) - atMs;
  const lateMs = graceMs(intervalMs);
  const behind = last.cues.filter(({ at }) => Date.parse(at) <= atMs).length;
  return {
    order,
    frameNow,
    frame,
    held: stand.held,
    ready: stand.ready,
    next,
    following: order === 'over' ? [] : stand.cues.slice(order === 'cue' ? 1 : 0).slice(0, 2),
    urgency: urgencyNow(),
    atClock: atClock ?? summary.endAt,
    toGoMs,
    behind,
    inIntervalS: atMs < startMs ? 0 : ((atMs - startMs) % intervalMs) / 1000,
  };

  function orderAt(): FieldState['order'] {
    if (atMs < startMs) return 'start';
    if (atMs >= endMs(plan)) return 'over';
    if (stand.owed) return 'set';
    return stand.cues.length === 0 ? 'none' : 'cue';
  }

  function urgencyNow(): FieldState['urgency'] {
    if (order === 'set') return behind > 0 ? 'late' : 'due';
    if (atClock === undefined || toGoMs > SOON_MS) return 'waiting';
    if (toGoMs > intervalMs) return 'soon';
    return toGoMs >= -lateMs ? 'due' : 'late';
  }
}

/** Whether a cue is so far off that nobody is likely to have done it. */
export const isFar = ({ order, toGoMs }: FieldState, intervalS: number) =>
  order === 'cue' && toGoMs > Math.max(SOON_MS, 3 * intervalS * 1000);

/** From which frame on what is pressed now is done: a cue's own where it comes about in time, else the next to begin. */
export function doneFrame(state: FieldState, intervalS: number): number {
  const { next, toGoMs, frameNow } = state;
  const inTime = next !== undefined && !isFar(state, intervalS) && toGoMs >= -graceMs(intervalS * 1000);
  return inTime ? next.frame : frameNow + 1;
}

// The frame under way is lost to it, and a hand needs time for the next.
const HAND_FRAMES = 2;

/** The first frame that may be planned again. */
export const freeFrame = ({ order, frameNow }: FieldState) =>
  order === 'start' ? 0 : frameNow + HAND_FRAMES;
