// Asks a worker for plans, the latest request first; plans in the page where workers are not to be had.

import type { Plan, Shoot } from '@evenfall/core';
import { newWorker } from '#new-worker';

export interface Request {
  readonly shoot: Shoot;
}

/** What a worker is sent; its answer is `{ id, plan }`, or `{ id, choices }` or `{ id, evening }` where those are wanted. */
export interface Ask extends Request {
  readonly id: number;
  readonly choices?: boolean;
  readonly fromDate?: string; // of the evening wanted, YYYY-MM-DD
}

// A plan that cannot be takes its time over remedies; nobody should wait for one that is out of date.
const PATIENCE_MS = 60;

/** When a plan is given up. Our choice: a shoot within the published limits takes a second, a slow phone some. */
export const GIVE_UP_S = 15;

interface Planner {
  /** Asks for a plan; an answer to an earlier request is dropped. */
  ask(request: Request): void;
}

/**
 * @param answer called with the plan of the last request
 * @param giveUp called instead where that takes too long
 */
export function planner(
  answer: (plan: Plan, request: Request) => void,
  giveUp: (request: Request) => void = () => undefined,
): Planner {
  let worker: Worker | undefined;
  let spare: Worker | undefined;
  let running: { readonly id: number; readonly request: Request; readonly sinceMs: number } | undefined;
  let waiting: Request | undefined;
  let count = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let tooLong: ReturnType<typeof setTimeout> | undefined;

  function tryWorker(): Worker | undefined {
    try {
      const made = newWorker();
      made.onmessage = ({ data }: MessageEvent<{ id: number; plan: Plan }>) => {
        if (made === worker) answered(data.id, data.plan);
      };
      made.onerror = (event) => {
        event.preventDefault();
        if (made === worker) goOnWithout();
      };
      return made;
    } catch {
      return undefined;
    }
  }

  function goOnWithout(): void {
    worker = undefined;
    const unanswered = waiting ?? running?.request;
    running = waiting = undefined;
    if (unanswered !== undefined) run(unanswered);
  }

  function answered(id: number, plan: Plan): void {
    if (running?.id !== id) return;
    const { request } = running;
    running = undefined;
    const next = waiting;
    waiting = undefined;
    if (next !== undefined) run(next);
    answer(plan, request);
  }

  function run(request: Request): void {
    const id = ++count;
    running = { id, request, sinceMs: performance.now() };
    if (id === 1) worker = tryWorker();
    if (worker !== undefined) {
      worker.postMessage({ id, ...request } satisfies Ask);
      clearTimeout(tooLong);
      tooLong = setTimeout(() => {
        if (running?.id === id) end(request);
      }, GIVE_UP_S * 1000);
      // Who asks a second time will ask a third: with a spare a long answer can be cut short at once.
      if (id > 1) spare ??= tryWorker();
      return;
    }
    clearTimeout(timer);
    timer = setTimeout(async () => {
      const { planShoot } = await import('./plan-whole.js');
      answered(id, planShoot(request.shoot));
    }, 0);
  }

  function end(request: Request): void {
    worker?.terminate();
    worker = spare ?? tryWorker();
    spare = running = undefined;
    giveUp(request);
  }

  function ask(request: Request): void {
    if (running === undefined || worker === undefined) {
      run(request);
    } else if (performance.now() - running.sinceMs > PATIENCE_MS) {
      worker.terminate();
      worker = spare ?? tryWorker();
      spare = waiting = undefined;
      run(request);
    } else {
      waiting = request;
      const { id } = running;
      setTimeout(() => {
        if (running?.id === id && waiting !== undefined) ask(waiting);
      }, PATIENCE_MS + 1);
    }
  }

  return { ask };
}
