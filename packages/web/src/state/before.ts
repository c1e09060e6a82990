// The plan as it stood before what has just been changed, for a moment: what a change did is told by both.

import type { PlanMade } from '@evenfall/core';
import { effect, signal } from '@preact/signals-core';
import { made } from './plan.js';

/** Undefined when nothing has changed for a while. */
export const planBefore = signal<PlanMade | undefined>(undefined);

// Long enough to compare two figures. Our choice.
const SHOWN_MS = 6000;

let last: PlanMade | undefined;
let timer: ReturnType<typeof setTimeout> | undefined;

effect(() => {
  const now = made.value;
  const was = last;
  last = now;
  if (was === undefined || now === undefined) {
    planBefore.value = undefined;
  } else if (was !== now) {
    // In a row of changes the first one counts: it is what the eye compares with.
    if (planBefore.peek() === undefined) planBefore.value = was;
    clearTimeout(timer);
    timer = setTimeout(() => {
      planBefore.value = undefined;
    }, SHOWN_MS);
  }
});
