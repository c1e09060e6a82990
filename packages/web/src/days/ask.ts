// A month takes thirty plans: a worker of their own works them out one after another, so that neither the page nor its
// plan waits, and each is shown as it comes.

import type { Evening, Shoot } from '@evenfall/core';
import { newWorker } from '#new-worker';
import type { Ask } from '../plan/planner.js';

let worker: Worker | undefined;
let asked = 0;

/** Nobody waits for the rest any more. */
export function giveUp(): void {
  asked++;
}

/**
 * @param dates YYYY-MM-DD, in the order in which they are worked out
 * @param answer called with each evening as it comes, unless given up before; with undefined where the rest cannot be had
 */
export function askDays(
  shoot: Shoot,
  dates: readonly string[],
  answer: (evening: Evening | undefined) => void,
): void {
  const id = ++asked;
  try {
    worker ??= newWorker();
  } catch {
    answer(undefined);
    return;
  }
  const used = worker;
  const ask = (index: number) => {
    const fromDate = dates[index];
    if (fromDate !== undefined) used.postMessage({ id, shoot, fromDate } satisfies Ask);
  };
  let next = 0;
  used.onmessage = ({ data }: MessageEvent<{ id: number; evening?: Evening }>) => {
    if (data.id !== asked) return;
    answer(data.evening);
    if (data.evening !== undefined) ask(++next);
  };
  used.onerror = (event) => {
    event.preventDefault();
    worker = undefined;
    if (id === asked) answer(undefined);
  };
  ask(next);
}
