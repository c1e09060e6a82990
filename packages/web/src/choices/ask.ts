// Choices take about fifteen plans: a worker of their own works them out, so that neither the page nor its plan waits.

import type { PlanChoice, PlanChoices, PlanInfeasible, Shoot } from '@evenfall/core';
import { newWorker } from '#new-worker';
import type { Ask } from '../plan/planner.js';

let worker: Worker | undefined;
let busy = false;

function end(): void {
  worker?.terminate();
  worker = undefined;
  busy = false;
}

/** Gives up what is being worked out: nobody waits for it any more. */
export function giveUp(): void {
  if (busy) end();
}

/** @param answer called once, unless given up before: with the choices, or undefined where they could not be had */
export function askChoices(shoot: Shoot, answer: (choices?: readonly PlanChoice[]) => void): void {
  giveUp();
  try {
    worker ??= newWorker();
  } catch {
    answer();
    return;
  }
  const asked = worker;
  asked.onmessage = ({ data }: MessageEvent<{ choices?: PlanChoices | PlanInfeasible }>) => {
    if (asked !== worker) return;
    busy = false;
    answer(data.choices?.kind === 'ok' ? data.choices.choices : undefined);
  };
  asked.onerror = (event) => {
    event.preventDefault();
    if (asked !== worker) return;
    end();
    answer();
  };
  busy = true;
  asked.postMessage({ id: 0, shoot, choices: true } satisfies Ask);
}
