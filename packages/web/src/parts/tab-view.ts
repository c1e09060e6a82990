// Said in a tab that is not the one that keeps the work.

import { html, nothing } from 'lit-html';
import { standing, takeOver } from '../state/tab.js';
import { words } from '../words/words.js';

export function tabView() {
  if (standing.value !== 'second') return nothing;
  const w = words().tab;
  return html`<div class="other-tab" role="alert">
    <p><b>${w.other}</b> ${w.nothingKept}</p>
    <button type="button" @click=${takeOver}>${w.here}</button>
  </div>`;
}
