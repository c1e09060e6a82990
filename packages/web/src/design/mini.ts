// The evening in one line, over the page while its picture is out of sight: a change is seen wherever it is made.

import { effect, signal } from '@preact/signals-core';
import { html, nothing, svg } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { layout } from '../chart/layout.js';
import { settingsPath } from '../chart/picture.js';
import { paintSky } from '../chart/sky-canvas.js';
import { printable, printCard } from '../print.js';
import { gaveUp, impossible, made } from '../state/plan.js';
import { words } from '../words/words.js';
import { miniFigures, miniRest } from './summary.js';

const outOfSight = signal(false);

let observer: IntersectionObserver | undefined;

export const watchPicture = ref((element) => {
  observer?.disconnect();
  if (element === undefined) return;
  observer = new IntersectionObserver(([entry]) => {
    // Below the screen it is not what has been left behind.
    outOfSight.value = entry !== undefined && !entry.isIntersecting && entry.boundingClientRect.top < 0;
  });
  observer.observe(element);
});

let stop: (() => void) | undefined;

function paint(canvas?: Element): void {
  stop?.();
  stop = undefined;
  if (!(canvas instanceof HTMLCanvasElement)) return;
  stop = effect(() => {
    if (made.value !== undefined) paintSky(canvas, made.value);
  });
}

export function miniView() {
  const [plan, now] = [made.value, layout.value];
  if (!outOfSight.value || plan === undefined || now === undefined) return nothing;
  const { left, right, top, evBottom } = now.geometry;
  const none = impossible.value ?? gaveUp.value;
  const d = settingsPath(now.data.settings, now.geometry);
  // The picture itself again, stretched: lines keep their width.
  const { toPicture, problem, files } = words();
  return html`<div class="mini">
    <button type="button" class="to-picture" @click=${() => scrollTo({ top: 0 })}>
      <span class="unseen">${toPicture}</span>
      <span class="mini-top">
        <span class="mini-picture">
          <canvas class="sky" ${ref(paint)}></canvas>
          ${
            // The picture itself again, stretched: lines keep their width.
            svg`<svg viewBox="${left} ${top} ${right - left} ${evBottom - top}" preserveAspectRatio="none" aria-hidden="true">
              <path class="edge settings" d=${d} /><path class="settings" d=${d} /></svg>`
          }
        </span>
        ${none === undefined ? miniFigures() : html`<strong>${impossible.value ? problem.noneFor[impossible.value.reason] : problem.givenUp}</strong>`}
      </span>
      ${none === undefined ? miniRest() : nothing}
    </button>
    <button type="button" class="small" ?disabled=${!printable.value} aria-label=${files.print} @click=${() => void printCard()}>
      ${files.printShort}
    </button>
  </div>`;
}
