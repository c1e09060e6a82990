// Said where a part of the page did not load.

import { html, nothing } from 'lit-html';
import { partMissing } from '../state/part.js';
import { words } from '../words/words.js';

export function partView() {
  if (!partMissing.value) return nothing;
  const w = words().part;
  return html`<div class="other-tab" role="alert">
    <p><b>${w.missing}</b> ${w.reloadHelp}</p>
    <button type="button" @click=${() => location.reload()}>${w.reload}</button>
  </div>`;
}
