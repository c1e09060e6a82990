// The browser's Print gives the cue card. Its pages are drawn ahead, in idle time: print waits for nothing.

import type { Plan, PlanMade } from '@evenfall/core';
import { effect } from '@preact/signals-core';
import { plan } from './state/plan.js';
import { words } from './words/words.js';

// Typing goes first.
const SETTLED_MS = 400;

let timer: ReturnType<typeof setTimeout> | undefined;
let drawn: Plan | undefined;
let draw: ((plan: PlanMade) => string[]) | undefined;

/** The card of the plan as it stands; where there is none, why: an old card must not pass for the new one. */
function drawNow(): void {
  const now = plan.peek();
  const holder = document.getElementById('card');
  if (now === undefined || now === drawn || draw === undefined || holder === null) return;
  drawn = now;
  if ('frames' in now) {
    // SVG made here from checked text, escaped where it is drawn.
    holder.innerHTML = draw(now)
      .map((page) => `<section>${page}</section>`)
      .join('');
  } else {
    const why = document.createElement('p');
    why.textContent = words().library.why(now.infeasible);
    holder.replaceChildren(why);
  }
}

const whenIdle: (task: () => void) => void =
  'requestIdleCallback' in window
    ? (task) => void requestIdleCallback(task, { timeout: 3000 })
    : (task) => void setTimeout(task, 500);

export function keepCardReady(): void {
  whenIdle(async () => {
    const { cardPages, languages, wordsFor } = await import('@evenfall/chart');
    const language = () => languages.find((code) => code === words().language) ?? 'en';
    draw = (made) => cardPages(made, { words: wordsFor({ language: language() }) });
    effect(() => {
      plan.value;
      words(); // another language, another card
      drawn = undefined;
      clearTimeout(timer);
      timer = setTimeout(() => whenIdle(drawNow), SETTLED_MS);
    });
  });
  addEventListener('beforeprint', drawNow);
}
