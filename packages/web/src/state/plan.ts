// The plan of the shoot on the page, kept up to date.

import type { Plan, PlanMade, Shoot } from '@evenfall/core';
import { batch, computed, effect, signal } from '@preact/signals-core';
import { planner } from '../plan/planner.js';
import { changedKeys } from './path.js';
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

/** What took too long to plan, and the keys that set it apart from what was planned before it. */
const tooLong = signal<{ readonly shoot: Shoot; readonly keys: readonly string[] } | undefined>(undefined);

/** Where the plan of the shoot as it stands was given up: the keys to look at. */
export const gaveUp = computed(() => (tooLong.value?.shoot === shoot.value ? tooLong.value.keys : undefined));

/** Whether an answer to the shoot as it stands is still to come. */
export const pending = computed(() => last.value?.shoot !== shoot.value && gaveUp.value === undefined);

/** Resolves once nothing is to come. */
export const answered = (): Promise<void> =>
  new Promise((resolve) => {
    const stop = effect(() => {
      if (pending.value) return;
      resolve();
      queueMicrotask(() => stop());
    });
  });

/** The last plan of this piece of work that could be made: what chart and lists show while there is none. */
export const made = computed(() => (lastMade.value?.work === work.value ? lastMade.value.plan : undefined));

export const impossible = computed(() =>
  plan.value !== undefined && plan.value.kind === 'infeasible' ? plan.value.infeasible : undefined,
);

/** No plan, and none to be expected: there is nothing to show. */
export const nothingToShow = computed(
  () => (impossible.value !== undefined || gaveUp.value !== undefined) && made.value === undefined,
);

/** What makes planning long, where nothing tells more. */
const HEAVY = ['intervalS', 'span', 'filters', 'moves'];

const plans = planner(
  (answer, asked) => {
    if (asked.shoot !== shoot.peek()) return;
    const about = { shoot: asked.shoot, work: work.peek() };
    batch(() => {
      last.value = { ...about, plan: answer };
      if (answer.kind === 'ok') lastMade.value = { ...about, plan: answer };
    });
  },
  (asked) => {
    const before = last.peek()?.work === work.peek() ? last.peek()?.shoot : undefined;
    const keys = before === undefined ? HEAVY : changedKeys(before, asked.shoot).slice(0, 6);
    tooLong.value = { shoot: asked.shoot, keys };
  },
);

effect(() => plans.ask({ shoot: shoot.value }));
