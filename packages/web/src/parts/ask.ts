// A question that stands before something that should not come about by a wrong press.

import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';

interface Question {
  /** Told again each time it is drawn: times in it go on. */
  readonly text: () => string;
  readonly yes: string;
  readonly no: string;
  readonly act: () => void;
  /** Whether it is still a question; looked at each time it is drawn. Left out, it waits for an answer. */
  readonly stands?: () => boolean;
}

const question = signal<Question | undefined>(undefined);

/** Whether something is being asked. */
export const asking = () => question.value !== undefined;

export function askFirst(what: Question): void {
  question.value = what;
}

export function withdraw(): void {
  question.value = undefined;
}

export function mountDialog(element?: Element): void {
  if (element instanceof HTMLDialogElement)
    queueMicrotask(() => element.isConnected && !element.open && element.showModal());
}

export function questionView() {
  const now = question.value;
  if (now === undefined) return nothing;
  if (now.stands?.() === false) {
    queueMicrotask(() => question.peek() === now && withdraw());
    return nothing;
  }
  const answer = () => {
    withdraw();
    now.act();
  };
  // What changes nothing comes first, under the keyboard and under a finger that presses twice.
  return html`<dialog class="ask" aria-labelledby="question" ${ref(mountDialog)} @cancel=${withdraw} @close=${withdraw}>
    <p id="question">${now.text()}</p>
    <div class="actions">
      <button type="button" class="big" @click=${withdraw}>${now.no}</button>
      <button type="button" @click=${answer}>${now.yes}</button>
    </div>
  </dialog>`;
}
