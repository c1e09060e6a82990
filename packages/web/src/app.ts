// The page around the views: name, views, colours, messages.

import { effect, signal } from '@preact/signals-core';
import { html, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { designView } from './design/view.js';
import { inField, runPlan } from './field/run.js';
import { questionView } from './parts/ask.js';
import { clocksBack } from './parts/clock.js';
import { messageView } from './parts/message.js';
import { partView } from './parts/part-view.js';
import { region } from './parts/region.js';
import { tabView } from './parts/tab-view.js';
import { part, partMissing } from './state/part.js';
import { plan } from './state/plan.js';
import { canRedo, canUndo, redo, undo } from './state/shoot.js';
import { darkForEyes, type ThemeChoice, themeChoice } from './state/theme.js';
import { LANGUAGES, useLanguage, words } from './words/words.js';

/** The field view, loaded on the way there; the offline worker has it in keeping. */
const fieldView = signal<(() => TemplateResult) | undefined>(undefined);
effect(() => {
  if (!inField.value) return;
  void part(import('./field/view.js')).then((field) => {
    fieldView.value = field?.fieldView;
  });
});

effect(() => {
  clocksBack.value = (inField.value ? runPlan : plan).value?.clocksBack;
});

const THEMES: readonly ThemeChoice[] = ['system', 'light', 'dark'];

export function appView() {
  const w = words();
  if (inField.value) return fieldView.value?.() ?? fieldMissing();
  return html`<a class="skip" href="#plan" @click=${skip}>${w.skip}</a>
    ${region(header)} ${region(tabView)} ${region(partView)} ${designView()} ${region(messageView)}
    ${region(questionView)}`;
}

function header() {
  const w = words();
  return html`<header class="top">
      <h1>${w.name}</h1>
      <p class="tagline">${w.tagline}</p>
      <div class="steps">
        <button type="button" class="plain" aria-label=${w.stepBack} ?disabled=${!canUndo.value} @click=${undo}>
          ↶
        </button>
        <button type="button" class="plain" aria-label=${w.stepForward} ?disabled=${!canRedo.value} @click=${redo}>
          ↷
        </button>
      </div>
      <label
        ><span class="unseen">${w.theme.label}</span>
        <select
          @change=${(event: Event) => {
            darkForEyes.value = false;
            themeChoice.value = THEMES[(event.target as HTMLSelectElement).selectedIndex] ?? 'system';
          }}
        >
          ${THEMES.map(
            (choice) =>
              html`<option .selected=${live(choice === (darkForEyes.value ? 'dark' : themeChoice.value))}>
                ${w.theme[choice]}
              </option>`,
          )}
        </select></label
      >
      <label
        ><span class="unseen">${w.languageLabel}</span>
        <select
          @change=${(event: Event) =>
            void useLanguage(LANGUAGES[(event.target as HTMLSelectElement).selectedIndex]?.code ?? 'en')}
        >
          ${LANGUAGES.map(
            ({ code, name }) =>
              html`<option lang=${code} .selected=${live(code === w.language)}>${name}</option>`,
          )}
        </select></label
      >
    </header>`;
}

/** On the way to the field, and where it cannot be shown. */
function fieldMissing() {
  if (!partMissing.value) return html``;
  return html`<main class="field">
    <h1 class="unseen">${words().field.title}</h1>
    ${partView()}
    <button
      type="button"
      @click=${() => {
        inField.value = false;
      }}
    >
      ${words().field.leave}
    </button>
  </main>`;
}

function skip(event: Event): void {
  event.preventDefault();
  document.getElementById('plan')?.focus();
}
