// Where the page begins.

import { effect } from '@preact/signals-core';
import { render } from 'lit-html';
import { appView } from './app.js';
import { drawnNow } from './chart/chart-view.js';
import { keepCueInSight } from './design/follow-cursor.js';
import { keepOffline } from './offline.js';
import { keepCardReady } from './print.js';
import { openFragment } from './shared-link.js';
import { made } from './state/plan.js';
import { words } from './words/words.js';

const root = document.getElementById('app') as HTMLElement;

openFragment();
addEventListener('hashchange', openFragment);
effect(() => {
  document.documentElement.lang = words().language;
  render(appView(), root);
});
keepCueInSight();
keepCardReady();
keepOffline();

// For looking at from outside: the plan on the page, and what its chart has drawn of it.
Object.assign(globalThis, { evenfall: { plan: () => made.peek(), drawn: drawnNow } });
