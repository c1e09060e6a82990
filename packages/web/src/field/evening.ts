// The run under way, followed: what the camera stands at and what is next, at the field's clock.

import type { PlanMade } from '@evenfall/core';
import { computed } from '@preact/signals-core';
import { frameAtMs } from '../chart/time-ticks.js';
import { nowMs } from './clock.js';
import type { FieldEvent } from './events.js';
import { type Stand, standAfter, standAtStart, standBy } from './follow.js';
import { type Run, run, runPlan } from './run.js';

const frameNow = computed(() => {
  const plan = runPlan.value;
  return plan === undefined ? 0 : frameAtMs(plan.frames, nowMs.value, plan.shoot.intervalS);
});

let worked:
  | {
      plan: PlanMade;
      from: number;
      meterEv: number | undefined;
      start: Stand;
      events: readonly FieldEvent[];
      stands: readonly Stand[];
    }
  | undefined;

/** After every event so far: what was worked out before is kept as long as the list only grows or shrinks. */
function standsAfter(plan: PlanMade, { from, meterEv, events: list }: Run): Stand {
  const isKnown = worked?.plan === plan && worked.from === from && worked.meterEv === meterEv;
  const known = isKnown ? worked : undefined;
  const start = known?.start ?? standAtStart(plan, from, meterEv);
  const changedAt = list.findIndex((event, i) => event !== known?.events[i]);
  const stands = known?.stands.slice(0, changedAt < 0 ? list.length : changedAt) ?? [];
  for (const event of list.slice(stands.length)) stands.push(standAfter(stands.at(-1) ?? start, event));
  worked = { plan, from, meterEv, start, events: list, stands };
  return stands.at(-1) ?? start;
}

/** As the last event left it. */
export const lastStand = computed(() =>
  runPlan.value === undefined || run.value === undefined ? undefined : standsAfter(runPlan.value, run.value),
);

/** As it is now. */
export const standNow = computed(() => lastStand.value && standBy(lastStand.value, frameNow.value));
