// Why there is no plan, and every single change that would cure it.

import type { PlanNote } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { moving } from '../moves/load.js';
import { applyRemedy, idOf } from '../parts/controls.js';
import { GIVE_UP_S } from '../plan/planner.js';
import { gaveUp, impossible, made, pending } from '../state/plan.js';
import { faults, inWords } from '../state/shoot.js';
import { words } from '../words/words.js';

export function problemView() {
  return html`<div class="problems" role="status">
    ${wrongInput()} ${givenUp()} ${noPlan()} ${moving.value?.findingsView()}
  </div>`;
}

function wrongInput() {
  if (faults.value.length === 0) return nothing;
  return html`<section class="problem">
    <h2>${words().problem.wrong}</h2>
    <ul>
      ${faults.value.map(inWords).map(({ message, path }) => html`<li><a href="#${idOf(path)}" @click=${focusOn(idOf(path))}>${message}</a></li>`)}
    </ul>
  </section>`;
}

/** The fragment is kept for shared shoots: a link inside the page moves the focus alone. */
function focusOn(id: string) {
  return (event: Event) => {
    event.preventDefault();
    document.getElementById(id)?.focus();
  };
}

function givenUp() {
  if (gaveUp.value === undefined) return nothing;
  const w = words().problem;
  return html`<section class="problem">
    <h2>${w.givenUp}</h2>
    <p>${w.tooLong(GIVE_UP_S, gaveUp.value.join(', '))}</p>
    ${made.value === undefined ? nothing : html`<p class="help">${w.stale}</p>`}
  </section>`;
}

function noPlan() {
  const why = impossible.value;
  if (why === undefined || gaveUp.value !== undefined) return nothing;
  const w = words().problem;
  return html`<section class="problem ${pending.value ? 'stale' : ''}">
    <h2>${w.noneFor[why.reason] ?? w.none}</h2>
    <p>${words().library.why(why)}</p>
    ${
      why.remedies.length === 0
        ? html`<p>${w.noCure}</p>`
        : html`<p>${w.cures}</p>
            <ul class="remedies">
              ${why.remedies.map(
                (remedy) => html`<li>
                  <button type="button" ?disabled=${pending.value} @click=${() => applyRemedy(remedy)}>
                    ${words().library.remedy(remedy)}
                  </button>
                  ${words().library.reserve(remedy)}
                </li>`,
              )}
            </ul>`
    }
    ${made.value === undefined ? nothing : html`<p class="help">${w.stale}</p>`}
  </section>`;
}

/** What holds on every evening, and is said last. */
const STANDING: readonly PlanNote['kind'][] = ['sun', 'move-caution'];

/** What matters tonight in the order of the plan, then what always holds. */
export function notesView() {
  const plan = made.value;
  const notes = plan === undefined ? [] : (moving.value?.otherNotes(plan) ?? plan.notes);
  if (notes.length === 0) return nothing;
  const w = words();
  const list = (some: readonly PlanNote[]) =>
    html`<ul>
      ${some.map(
        (note) =>
          html`<li class=${note.level}><strong>${w.levels[note.level]}.</strong> ${w.library.note(note)}</li>`,
      )}
    </ul>`;
  const standing = notes.filter(({ kind }) => STANDING.includes(kind));
  return html`<section class="notes">
    <h2>${w.notes}</h2>
    ${list(notes.filter((note) => !standing.includes(note)))}
    ${standing.length === 0 ? nothing : html`<h3>${w.always}</h3>${list(standing)}`}
  </section>`;
}
