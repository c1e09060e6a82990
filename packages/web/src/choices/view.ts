// What other weights would give the same evening, as a table to choose from.

import type { PlanChoice, Shoot } from '@evenfall/core';
import { effect, signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { adoptStyles } from '../parts/adopt-styles.js';
import { say } from '../parts/message.js';
import { pending } from '../state/plan.js';
import { reading, replaceShoot, shoot } from '../state/shoot.js';
import { words } from '../words/words.js';
import { askChoices, giveUp } from './ask.js';
import css from './choices.css?inline';
import { wanted } from './open.js';
import { alike, sameWeights, weightsOf, withWeights } from './weights.js';
import { choiceWords } from './words.js';

adoptStyles(css);

interface Answer {
  readonly shoot: Shoot;
  readonly choices: readonly PlanChoice[] | undefined; // undefined: they could not be had
}

const answered = signal<Answer | undefined>(undefined);

const inUse = (choice: PlanChoice, now: Shoot) => sameWeights(choice.apply.weights, weightsOf(now));

/** Whether an answer is one to the shoot as it stands. Taking one of its choices leaves it as good as it was. */
const holds = ({ shoot: asked, choices }: Answer, now: Shoot) =>
  alike(asked, now) && (choices === undefined || choices.some((choice) => inUse(choice, now)));

// Typing goes first.
const SETTLED_MS = 400;
let timer: ReturnType<typeof setTimeout> | undefined;

effect(() => {
  const now = wanted.value && !pending.value ? shoot.value : undefined;
  clearTimeout(timer);
  giveUp();
  const before = answered.peek();
  if (now === undefined || (before?.choices !== undefined && holds(before, now))) return;
  timer = setTimeout(
    () =>
      askChoices(now, (choices) => {
        answered.value = { shoot: now, choices };
      }),
    before === undefined ? 0 : SETTLED_MS,
  );
});

function take({ apply, cueCount }: PlanChoice): void {
  if (sameWeights(apply.weights, weightsOf(shoot.peek()))) return;
  replaceShoot(withWeights(shoot.peek(), apply.weights));
  say(choiceWords().taken(cueCount), { undo: true });
}

function toDefaults(): void {
  const { weights: _, ...plain } = shoot.peek();
  replaceShoot(plain);
  say(choiceWords().usualTaken, { undo: true });
}

export function choicesView() {
  const w = choiceWords();
  const now = shoot.value;
  const answer = answered.value;
  const current = answer !== undefined && holds(answer, now);
  const choices = answer?.choices;
  const told = !current ? w.working : choices === undefined ? w.failed : w.count(choices.length);
  return html`<div class="choices-in" aria-busy=${!current}>
    <p class="help">${w.help}</p>
    <p role="status">${told}</p>
    ${choices === undefined ? nothing : table(choices, now, current)}
    ${
      now.weights === undefined
        ? nothing
        : html`<p>
            ${w.own}
            <button type="button" ?disabled=${reading.value.kind === 'wrong'} @click=${toDefaults}>
              ${w.usual}
            </button>
          </p>`
    }
  </div>`;
}

function table(choices: readonly PlanChoice[], now: Shoot, current: boolean) {
  const w = choiceWords();
  const { columns } = w;
  // A press would take along what is being typed.
  const ready = current && reading.value.kind === 'ok';
  return html`<table class=${current ? '' : 'old'}>
    <thead>
      <tr>
        ${[columns.cues, columns.filters, columns.rms, columns.worst, columns.iso].map(
          (name) => html`<th scope="col">${name}</th>`,
        )}
      </tr>
    </thead>
    ${choices.map((choice) => row(choice, current && inUse(choice, now), ready))}
  </table>`;
}

/** Two lines: its numbers; what it is best at, and the press that takes it. */
function row(choice: PlanChoice, used: boolean, ready: boolean) {
  const w = choiceWords();
  const { cueCount, filterChanges, highestIso } = choice;
  const stops = (ev: number) => words().number(ev, 2);
  const rms = stops(choice.rmsErrorEv);
  const names = choice.names.filter((name) => !(used && name === 'as-asked'));
  return html`<tbody aria-current=${used ? 'true' : nothing}>
    <tr class="figures">
      <th scope="rowgroup" rowspan="2">${cueCount}</th>
      <td>${filterChanges}</td>
      <td>${rms}</td>
      <td>${stops(choice.worstErrorEv)}</td>
      <td>${highestIso}</td>
    </tr>
    <tr>
      <td colspan="4">
        <div class="best">
          <span>${names.map((name) => w.names[name]).join(', ')}</span>
          <button
            type="button"
            class="small"
            ?disabled=${!ready}
            aria-disabled=${used ? 'true' : nothing}
            @click=${() => take(choice)}
          >
            ${used ? w.inUse : w.use}<span class="unseen">: ${w.spoken(cueCount, rms)}</span>
          </button>
        </div>
      </td>
    </tr>
  </tbody>`;
}
