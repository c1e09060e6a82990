// Marks on round local clock times of an axis that counts UTC milliseconds.

import type { PlanFrame } from '@evenfall/core';

export interface TimeTick {
  readonly value: number; // UTC epoch milliseconds
  readonly at: string; // RFC 3339, on a round local time
}

const STEPS_MIN = [1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 240, 360, 720, 1440];
const MINUTE_MS = 60_000;

/** Offset of local time from UTC, milliseconds, as an RFC 3339 time says it. */
function offsetMs(at: string): number {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(at) ?? [];
  if (sign === undefined) return 0;
  return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * MINUTE_MS;
}

/** An instant under the offset of another time, RFC 3339 to the second. */
export function atOffset(ms: number, offsetOf: string): string {
  return new Date(ms + offsetMs(offsetOf)).toISOString().slice(0, 19) + offsetOf.slice(-6);
}

/** Position of the last frame that starts at or before an instant; 0 before the first. */
export function frameAtMs(frames: readonly PlanFrame[], atMs: number, intervalS: number): number {
  const first = frames[0];
  if (first === undefined) return 0;
  // Frame times are rounded to the millisecond in the plan.
  const frame = Math.floor((atMs - Date.parse(first.at) + 1) / (intervalS * 1000));
  return Math.max(0, Math.min(frame, frames.length - 1));
}

/** At most so many marks. Each takes the offset of the frame under it: clocks may change in the night. */
export function timeTicks(frames: readonly PlanFrame[], intervalS: number, most: number): TimeTick[] {
  const [first, last] = [frames[0], frames.at(-1)];
  if (first === undefined || last === undefined) return [];
  const [fromMs, toMs] = [Date.parse(first.at), Date.parse(last.at)];
  const stepMs = (STEPS_MIN.find((m) => (toMs - fromMs) / (m * MINUTE_MS) <= most) ?? 1440) * MINUTE_MS;
  const offset = offsetMs(first.at);
  const ticks: TimeTick[] = [];
  for (let ms = Math.ceil((fromMs + offset) / stepMs) * stepMs - offset; ms <= toMs; ms += stepMs) {
    const under = frames[frameAtMs(frames, ms, intervalS)] ?? first;
    ticks.push({ value: ms, at: atOffset(ms, under.at) });
  }
  return ticks;
}
