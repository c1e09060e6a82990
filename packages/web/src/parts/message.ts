// One line that tells what has just happened, spoken by screen readers, with a way back where there is one.

import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { undo } from '../state/shoot.js';
import { words } from '../words/words.js';

interface Message {
  readonly text: string;
  readonly lines?: readonly string[];
  readonly undo?: boolean;
}

const message = signal<Message | undefined>(undefined);

// Long enough to read twice. What can be taken back, or lists faults, stays until it is closed.
const GONE_AFTER_MS = 12_000;

let timer: ReturnType<typeof setTimeout> | undefined;

export function say(text: string, more: Omit<Message, 'text'> = {}): void {
  clearTimeout(timer);
  message.value = { text, ...more };
  if (!more.undo && !more.lines) timer = setTimeout(hush, GONE_AFTER_MS);
}

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
                      undo();
                      hush();
                    }}
                  >
                    ${words().undo}
                  </button>`
                : nothing
            }
            <button type="button" class="small plain" @click=${hush}>${words().close}</button>
          </div>`
    }
  </div>`;
}
