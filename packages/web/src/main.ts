// Where the page begins.

import { effect } from '@preact/signals-core';
import { render } from 'lit-html';
import { appView } from './app.js';
import { drawnNow } from './chart/chart-view.js';
import { keepCueInSight } from './design/follow-cursor.js';
import { takeDrops } from './drop.js';
import { inField, runWasKept } from './field/run.js';
import { keepOffline, takeNewer } from './offline.js';
import { afterFirstPlan } from './parts/after-first-plan.js';
import { takeTurns } from './parts/in-turn.js';
import { loadCard, printByBrowser } from './print.js';
import { openFragment } from './shared-link.js';
import { made } from './state/plan.js';
import { loadReader } from './state/reader.js';
import { redo, shootWasKept, undo } from './state/shoot.js';
import { firstLanguage, words } from './words/words.js';

async function start(root: HTMLElement): Promise<void> {
  await firstLanguage().catch(() => undefined); // without its words the page speaks English
  // What was kept or came with the address is shown at once, not after the built-in shoot.
  if (shootWasKept || runWasKept || location.hash !== '') await loadReader();
  // Not in the middle of an evening, nor over a shoot that has just come by a link.
  if (!runWasKept && location.hash === '') void takeNewer();
  await openFragment();
  addEventListener('hashchange', () => void openFragment());
  // Apart from the drawing: the whole page is restyled whenever this is set.
  effect(() => {
    document.documentElement.lang = words().language;
  });
  effect(() => {
    render(appView(), root);
  });
  keepCueInSight();
  addEventListener('keydown', stepByKey);
  printByBrowser();
  takeDrops();
  takeTurns();
  void afterFirstPlan([loadReader, loadCard, keepOffline]);
}

/** Ctrl or Command with Z; a text field has its own. */
function stepByKey(event: KeyboardEvent): void {
  const field = event.target instanceof HTMLInputElement && !/^(?:checkbox|radio)$/.test(event.target.type);
  const key = event.key.toLowerCase();
  if (inField.peek() || field || !(event.ctrlKey || event.metaKey) || !(key === 'z' || key === 'y')) return;
  event.preventDefault();
  if (key === 'y' || event.shiftKey) redo();
  else undo();
}

void start(document.getElementById('app') as HTMLElement);

// For looking at from outside: the plan on the page, and what its chart has drawn of it.
Object.assign(globalThis, { evenfall: { plan: () => made.peek(), drawn: drawnNow } });
