// The plan of the shoot on the page, kept up to date.

import type { Plan, PlanMade, Shoot } from '@evenfall/core';
import { batch, computed, effect, signal } from '@preact/signals-core';
import { planner } from '../plan/planner.js';
import { shoot, work } from './shoot.js';

interface Answer<P> {
  readonly plan: P;
  readonly shoot: Shoot;
  readonly work: object; // the piece of work that the shoot belonged to
}

const last = signal<Answer<Plan> | undefined>(undefined);
const lastMade = signal<Answer<PlanMade> | undefined>(undefined);

/** The last answer to this piece of work: a plan, or why there is none. */
export const plan = computed(() => (last.value?.work === work.value ? last.value.plan : undefined));

/** Whether an answer to the shoot as it stands is still to come. */
export const pending = computed(() => last.value?.shoot !== shoot.value);

/** The last plan of this piece of work that could be made: what chart and lists show while there is none. */
export const made = computed(() => (lastMade.value?.work === work.value ? lastMade.value.plan : undefined));

export const impossible = computed(() =>
  plan.value !== undefined && 'infeasible' in plan.value ? plan.value.infeasible : undefined,
);

/** No plan, and none to be expected: there is nothing to show. */
export const nothingToShow = computed(() => impossible.value !== undefined && made.value === undefined);

const plans = planner((answer, asked) => {
  if (asked.shoot !== shoot.peek()) return;
  const about = { shoot: asked.shoot, work: work.peek() };
  batch(() => {
    last.value = { ...about, plan: answer };
    if ('frames' in answer) lastMade.value = { ...about, plan: answer };
  });
});

effect(() => plans.ask({ shoot: shoot.value }));
