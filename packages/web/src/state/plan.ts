// The plan of the shoot on the page, kept up to date.

import type { Plan, PlanMade, Shoot } from '@evenfall/core';
import { batch, computed, effect, signal } from '@preact/signals-core';
import { planner } from '../plan/planner.js';
import { shoot } from './shoot.js';

/** The last answer: a plan, or why there is none. */
export const plan = signal<Plan | undefined>(undefined);

/** The shoot that the last answer is to. */
const answered = signal<Shoot | undefined>(undefined);

/** Whether an answer to the shoot as it stands is still to come. */
export const pending = computed(() => answered.value !== shoot.value);

/** The last plan that could be made: what chart and lists show while there is none. */
export const made = signal<PlanMade | undefined>(undefined);

export const impossible = computed(() =>
  plan.value !== undefined && 'infeasible' in plan.value ? plan.value.infeasible : undefined,
);

const plans = planner((answer, asked) => {
  if (asked.shoot !== shoot.peek()) return;
  batch(() => {
    plan.value = answer;
    if ('frames' in answer) made.value = answer;
    answered.value = asked.shoot;
  });
});

effect(() => plans.ask({ shoot: shoot.value }));
