// Kits by name: kept once, chosen again for another evening.

import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { say } from '../parts/message.js';
import { dropKit, keepKit, kits, useKit } from '../state/shelf.js';
import { words } from '../words/words.js';

const name = signal('');

export function kitsView() {
  const w = words().kits;
  return html`<details class="more">
    <summary>${w.title}</summary>
    <div class="fields">
      ${
        kits.value.length === 0
          ? nothing
          : html`<ul class="shelf">
              ${kits.value.map(
                (kit) => html`<li>
                  <button
                    type="button"
                    @click=${() => {
                      useKit(kit);
                      say(w.used(kit.name), { undo: true });
                    }}
                  >
                    ${kit.name}
                  </button>
                  <button
                    type="button"
                    class="small plain"
                    aria-label=${words().kit.remove(kit.name)}
                    @click=${() => say(w.dropped(kit.name), { undo: { name: words().undo, act: dropKit(kit.name) } })}
                  >
                    ${words().kit.removeShort}
                  </button>
                </li>`,
              )}
            </ul>`
      }
      <div class="control">
        <label for="kit-name">${w.name}</label>
        <div class="entry">
          <input
            id="kit-name"
            type="text"
            autocomplete="off"
            .value=${name.value}
            @input=${(event: Event) => {
              name.value = (event.target as HTMLInputElement).value;
            }}
          />
          <button
            type="button"
            ?disabled=${name.value.trim() === ''}
            @click=${() => {
              keepKit(name.value.trim());
              name.value = '';
            }}
          >
            ${w.keep}
          </button>
        </div>
      </div>
    </div>
  </details>`;
}
