// The browser's Print gives the cue card. Its pages are drawn ahead, in idle time: print waits for nothing.

import type { PlanMade } from '@evenfall/core';
import { effect } from '@preact/signals-core';
import { made } from './state/plan.js';
import { words } from './words/words.js';

// Typing goes first.
const SETTLED_MS = 400;

let timer: ReturnType<typeof setTimeout> | undefined;
let wanted: PlanMade | undefined;
let drawn: PlanMade | undefined;
let draw: ((plan: PlanMade) => string[]) | undefined;

function drawNow(): void {
  if (wanted === undefined || wanted === drawn || draw === undefined) return;
  const holder = document.getElementById('card');
  if (holder === null) return;
  drawn = wanted;
  // SVG made here from checked text, escaped where it is drawn.
  holder.innerHTML = draw(wanted)
    .map((page) => `<section>${page}</section>`)
    .join('');
}

const whenIdle: (task: () => void) => void =
  'requestIdleCallback' in window
    ? (task) => void requestIdleCallback(task, { timeout: 3000 })
    : (task) => void setTimeout(task, 500);

export function keepCardReady(): void {
  whenIdle(async () => {
    const { cardPages, languages, wordsFor } = await import('@evenfall/chart');
    const language = () => languages.find((code) => code === words().language) ?? 'en';
    draw = (plan) => cardPages(plan, { words: wordsFor({ language: language() }) });
    effect(() => {
      wanted = made.value;
      words(); // another language, another card
      drawn = undefined;
      clearTimeout(timer);
      timer = setTimeout(() => whenIdle(drawNow), SETTLED_MS);
    });
  });
  addEventListener('beforeprint', drawNow);
}
