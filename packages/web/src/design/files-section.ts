// Keep, share, print.

import { signal } from '@preact/signals-core';
import { html } from 'lit-html';
import type { SaveKind } from '../file-work.js';
import { readNumber } from '../parts/read-number.js';
import { printCard } from '../print.js';
import { copyLink } from '../shared-link.js';
import { part } from '../state/part.js';
import { impossible, made } from '../state/plan.js';
import { keep, kept } from '../state/store.js';
import { words } from '../words/words.js';

const KINDS: readonly SaveKind[] = ['shootYaml', 'shootJson', 'plan', 'calendar', 'csv'];

/** Minutes on the way: the calendar's alarm for setting up rings so early. Half an hour where nobody has said. */
const travelMin = signal(isMinutes(kept('travelMin')) ? Number(kept('travelMin')) : 30);

function isMinutes(value: unknown): boolean {
  return typeof value === 'number' && value >= 0 && value <= 1440;
}

const save = async (kind: SaveKind) =>
  (await part(import('../file-work.js')))?.save(kind, { travelS: 60 * travelMin.peek() });

function setTravel({ target }: Event): void {
  const input = target as HTMLInputElement;
  const minutes = readNumber(input.value);
  const right = isMinutes(minutes);
  input.setAttribute('aria-invalid', String(!right));
  if (!right) return;
  travelMin.value = minutes!;
  keep('travelMin', minutes);
}

async function openChosen(event: Event): Promise<void> {
  const input = event.target as HTMLInputElement;
  const file = input.files?.[0];
  if (file === undefined) return;
  await (await part(import('../file-work.js')))?.open(file);
  // The same file may be chosen again after it was fixed.
  input.value = '';
}

export function filesSection() {
  const w = words().files;
  const ready = made.value !== undefined && impossible.value === undefined;
  return html`<section class="files">
    <h2>${w.title}</h2>
    <div class="buttons">
      <button type="button" ?disabled=${!ready} @click=${() => void printCard()}>
        ${w.print}
      </button>
      <button type="button" @click=${() => void copyLink()}>${w.link}</button>
      <label class="button"
        >${w.open}
        <input
          type="file"
          class="unseen"
          accept=".json,.yaml,.yml,application/json"
          @change=${(event: Event) => void openChosen(event)}
      /></label>
    </div>
    <p class="help">${w.printHelp}</p>
    <div class="buttons" role="group" aria-label=${w.save}>
      <span class="lead">${w.save}</span>
      ${KINDS.map(
        (kind) =>
          html`<button
            type="button"
            class="small"
            ?disabled=${!ready && !kind.startsWith('shoot')}
            @click=${() => void save(kind)}
          >
            ${w[kind]}
          </button>`,
      )}
    </div>
    <div class="buttons">
      <label class="lead" for="travel">${w.travel}</label>
      <input
        id="travel"
        type="text"
        inputmode="numeric"
        size="4"
        autocomplete="off"
        aria-describedby="travel-help"
        .value=${String(travelMin.value)}
        @input=${setTravel}
      />
    </div>
    <p class="help" id="travel-help">${w.travelHelp}</p>
  </section>`;
}
