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

export function say(text: string, more: Omit<Message, 'text'> = {}): void {
  message.value = { text, ...more };
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
