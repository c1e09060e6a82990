// What other weights would give: a part of its own, loaded when its section is opened.

import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { part } from '../state/part.js';
import { words } from '../words/words.js';
import { opened, possible } from './open.js';
import type { choicesView } from './view.js';

/** The part, once it is there. */
const view = signal<typeof choicesView | undefined>(undefined);

function toggled(event: Event): void {
  opened.value = (event.target as HTMLDetailsElement).open;
  if (!opened.value || view.value !== undefined) return;
  // Where it does not come, opening it again asks again.
  void part(import('./view.js')).then((loaded) => {
    view.value = loaded?.choicesView;
  });
}

export function choicesSection() {
  if (!possible.value) return nothing;
  return html`<details class="table choices" .open=${opened.value} @toggle=${toggled}>
    <summary><h2>${words().choices.title}</h2></summary>
    ${opened.value ? (view.value?.() ?? html`<p class="help">…</p>`) : nothing}
  </details>`;
}
