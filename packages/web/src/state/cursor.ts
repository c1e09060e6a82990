// The one cursor that runs through chart, lanes, cue list and table: a frame of the plan.

import { changesByClock, type PlanCue, type PlanFrame } from '@evenfall/core';
import { computed, signal } from '@preact/signals-core';
import { made } from './plan.js';

const wanted = signal(0);

/** Frame under the cursor, counted from 0. */
export const cursor = computed(() => Math.min(wanted.value, (made.value?.frames.length ?? 1) - 1));

export function moveCursor(frame: number): void {
  wanted.value = Math.max(0, Math.min(Math.round(frame), (made.peek()?.frames.length ?? 1) - 1));
}

export const cursorFrame = computed<PlanFrame | undefined>(() => made.value?.frames[cursor.value]);

/** Position in the list of cues of the last one at or before a frame; -1 before the first. */
export function cueBefore(cues: readonly PlanCue[], frame: number): number {
  return cues.findLastIndex((cue) => cue.frame <= frame);
}

/** Position of that of the cursor in the list of all changes, where a rig's shutter has rows too. */
export const cursorCue = computed(() =>
  made.value ? cueBefore(changesByClock(made.value), cursor.value) : -1,
);
