// One line that tells what has just happened, spoken by screen readers, with a way back where there is one.

import { effect, signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { draft, undo } from '../state/shoot.js';
import { words } from '../words/words.js';

interface Message {
  readonly text: string;
  readonly lines?: readonly string[];
  /** How to take it back; `true`: the shoot as it stood before. */
  readonly undo?: true | { readonly name: string; readonly act: () => void };
}

const message = signal<Message | undefined>(undefined);

// Long enough to read twice; longer where nothing else takes it back. What lists faults stays until it is closed, the
// way back to the last shoot no longer than until something else is changed: it would take that along.
const GONE_AFTER_MS = 12_000;
const WAY_BACK_MS = 30_000;
const LAST_CHANCE_MS = 60_000;

let timer: ReturnType<typeof setTimeout> | undefined;

export function say(text: string, more: Omit<Message, 'text'> = {}): void {
  clearTimeout(timer);
  undoes = draft.peek();
  message.value = { text, ...more };
  const onlyWay = more.undo !== undefined && more.undo !== true;
  if (!more.lines)
    timer = setTimeout(hush, onlyWay ? LAST_CHANCE_MS : more.undo ? WAY_BACK_MS : GONE_AFTER_MS);
}

let undoes: unknown;
effect(() => {
  if (draft.value !== undoes && message.peek()?.undo === true) hush();
});

export function hush(): void {
  message.value = undefined;
}

export function messageView() {
  const now = message.value;
  return html`<div class="message" role="status">
    ${
      now === undefined
        ? nothing
        : html`<div class="message-box">
            <div>
              <p>${now.text}</p>
              ${now.lines ? html`<ul>${now.lines.map((line) => html`<li>${line}</li>`)}</ul>` : nothing}
            </div>
            ${
              now.undo
                ? html`<button
                    type="button"
                    class="small"
                    @click=${() => {
                      hush();
                      if (now.undo === true) undo();
                      else now.undo?.act();
                    }}
                  >
                    ${now.undo === true ? words().undo : now.undo.name}
                  </button>`
                : nothing
            }
            <button type="button" class="plain" aria-label=${words().close} @click=${hush}>×</button>
          </div>`
    }
  </div>
  ${now === undefined ? nothing : html`<div class="message-room"></div>`}`;
}
