// What is wrong with a move that can be planned, and every single change that would fix it.

import type { PlanMade } from '@evenfall/core';
import { computed, effect, untracked } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { applyRemedy } from '../parts/controls.js';
import type { Advice } from '../state/advice.js';
import { impossible, made, pending } from '../state/plan.js';
import { words } from '../words/words.js';
import { check, isChecked, isSound } from './verify-advice.js';
import { moveWords } from './words.js';

type Finding = NonNullable<PlanMade['move']>['findings'][number];

const adviceOn = ({ kind, remedies }: Finding): Advice[] =>
  remedies.map((remedy) => ({ ...remedy, why: moveWords().findings[kind] }));

/** The plan that holds, and what is found in it. */
const current = computed(() => {
  const plan = impossible.value === undefined ? made.value : undefined;
  return plan?.move === undefined ? undefined : { plan, findings: plan.move.findings };
});

const found = computed(() => {
  const now = current.value;
  return (now?.findings ?? []).map((finding) => ({
    finding,
    offered: adviceOn(finding),
  }));
});

effect(() => {
  const now = current.value;
  if (now === undefined || pending.value) return;
  const offers = untracked(() => found.value).flatMap(({ finding, offered }) =>
    offered.map(({ apply }) => ({ change: apply, against: finding.kind })),
  );
  untracked(() => check(now.plan, offers));
});

/** Findings, each with the advice that has been found to fix it. */
const fixed = computed(() => {
  const plan = current.value?.plan;
  return found.value.map(({ finding, offered }) => ({
    finding,
    list:
      plan === undefined
        ? []
        : offered.filter(({ apply }) => isSound(plan, { change: apply, against: finding.kind })),
  }));
});

/** Every change that would fix something; none while there is no plan. */
export const advice = computed<readonly Advice[]>(() => fixed.value.flatMap(({ list }) => list));

/** What should be fixed before the evening, above the chart. */
export function findingsView() {
  const plan = current.value?.plan;
  const all = plan !== undefined && isChecked(plan);
  const { cures, noCure } = words().problem;
  return fixed.value
    .filter(({ finding }) => finding.level !== 'info')
    .map(
      ({ finding, list }) => html`<section class="problem ${pending.value ? 'stale' : ''}">
        <h2>${moveWords().findings[finding.kind]}</h2>
        <p>${words().library.finding(finding)}</p>
        ${list.length > 0 ? html`<p>${cures}</p>` : all ? html`<p>${noCure}</p>` : nothing}
        <ul class="remedies">
          ${list.map(
            (one) => html`<li>
              <button type="button" ?disabled=${pending.value} @click=${() => applyRemedy(one)}>
                ${words().library.remedy(one)}
              </button>
            </li>`,
          )}
        </ul>
      </section>`,
    );
}
