// The field's clock: the device's own, or a rehearsal's that runs sixty times as fast.

import { computed, effect, signal } from '@preact/signals-core';
import { asking } from '../parts/ask.js';
import { changeRun, inField, run, runPlan } from './run.js';
import { endMs } from './state.js';

const REHEARSAL_SPEED = 60;
const TICK_MS = 200;
const KEEP_EVERY_MS = 1000;

/** The time in the field, UTC epoch milliseconds. */
export const nowMs = signal(Date.now());

/** A rehearsal waits while somebody types or is asked something; it stops at its end. */
export const held = signal(false);

const mode = computed(() => (inField.value ? run.value?.mode : undefined));
const over = computed(() => runPlan.value !== undefined && nowMs.value >= endMs(runPlan.value));
const stands = computed(() => held.value || asking() || over.value || run.value?.paused === true);

/** Puts a rehearsal's clock to a time. */
export function setClock(atMs: number): void {
  nowMs.value = atMs;
  changeRun({ atMs });
}

effect(() => {
  if (mode.value === 'live') return ticking(() => Date.now());
  if (mode.value === undefined) return undefined;
  nowMs.value = run.peek()?.atMs ?? 0;
  if (stands.value) return undefined;
  let lastMs = performance.now();
  let keptMs = lastMs;
  return ticking(() => {
    const realMs = performance.now();
    const atMs = nowMs.peek() + (realMs - lastMs) * REHEARSAL_SPEED;
    lastMs = realMs;
    if (realMs - keptMs >= KEEP_EVERY_MS) {
      keptMs = realMs;
      changeRun({ atMs });
    }
    return atMs;
  });
});

function ticking(read: () => number): () => void {
  nowMs.value = read();
  const timer = setInterval(() => {
    nowMs.value = read();
  }, TICK_MS);
  return () => {
    clearInterval(timer);
    // Standing still, the time on the page is the one to come back to.
    if (run.peek()?.mode === 'rehearsal') changeRun({ atMs: nowMs.peek() });
  };
}
