// Labelled controls bound to a path of the shoot, each with what is wrong with it and what would cure it.

import type { Remedy } from '@evenfall/core';
import { batch } from '@preact/signals-core';
import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { type Advice, advisor } from '../state/advice.js';
import type { Path } from '../state/path.js';
import { impossible, pending } from '../state/plan.js';
import { faultsAt, put, replaceShoot, shoot, shown } from '../state/shoot.js';
import { leftField, typingAt } from '../state/typing.js';
import { words } from '../words/words.js';
import { say } from './message.js';
import { readNumber } from './read-number.js';
import { numberOr, typed } from './typed.js';

/** Kinds of remedy, by the control that could cure it. */
export type Cure = Remedy['change'];

type Offered = Remedy | Advice;

export const idOf = (path: Path) => `c-${path.join('-')}`;

interface Common {
  readonly path: Path;
  readonly label: string;
  readonly cures?: readonly Cure[];
  readonly tell?: (fault: string) => string; // a fault in the unit of the page
}

/** A control with its label, its unit, its faults and its remedies. */
export function labelled(
  { path, label, cures = [], tell = (fault) => fault }: Common,
  control: TemplateResult,
  unit = '',
  help = '',
): TemplateResult {
  const id = idOf(path);
  const faults = faultsAt(path);
  return html`<div class="control">
    <div class="name">
      <label for=${id}>${label}</label> ${unit === '' ? nothing : html`<span class="unit">${unit}</span>`}
    </div>
    <div class="entry">${control}</div>
    ${help === '' ? nothing : html`<p class="help" id="${id}-help">${help}</p>`}
    ${faults.map(({ text }) => html`<p class="fault" id="${id}-fault">${tell(text)}</p>`)} ${remediesFor(cures)}
  </div>`;
}

/** Remedies of these kinds, each with the button that applies it. */
export function remediesFor(cures: readonly Cure[]): TemplateResult | typeof nothing {
  const offered: readonly Offered[] = impossible.value?.remedies ?? advisor.value?.value ?? [];
  const found = offered.filter(({ change }) => cures.includes(change));
  if (found.length === 0 || pending.value) return nothing;
  return html`${found.map(
    (remedy) => html`<div class="cure">
      <p>${'why' in remedy ? html`<b>${remedy.why}.</b> ` : nothing}${textOf(remedy)}</p>
      <button type="button" class="small" @click=${() => applyRemedy(remedy)}>
        ${words().problem.apply}<span class="unseen">: ${textOf(remedy)}</span>
      </button>
    </div>`,
  )}`;
}

/** Advice comes in the language of the page already. */
const textOf = (remedy: Offered) => words().library.remedy(remedy);

export function applyRemedy(remedy: Offered): void {
  replaceShoot({ ...shoot.peek(), ...remedy.apply });
  say(words().problem.applied(textOf(remedy)), { undo: true });
}

const described = (path: Path, help = '') =>
  [help === '' ? '' : `${idOf(path)}-help`, faultsAt(path).length > 0 ? `${idOf(path)}-fault` : '']
    .filter((id) => id !== '')
    .join(' ') || nothing;

const invalid = (path: Path) => (faultsAt(path).length > 0 ? 'true' : nothing);

interface NumberControl extends Common {
  readonly unit?: string;
  readonly help?: string;
  readonly placeholder?: string;
  readonly step?: number; // of its buttons and arrow keys, in the unit of the page; default 1
  readonly signed?: boolean; // may be negative: the keypads of some phones have no minus
  readonly show?: (value: unknown) => unknown; // from the file's unit to the one on the page
  readonly store?: (value: unknown) => unknown; // and back
  readonly choose?: (value: unknown) => void; // default: put it at the path
  readonly left?: (text: string) => void; // the text as it stands when the field is left
}

const STEPS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

export function numberControl(spec: NumberControl): TemplateResult {
  const { path, unit = '', help = '', placeholder = '', show = (v) => v, store = (v) => v } = spec;
  const { choose = (value: unknown) => put(path, value), step = 1, signed = false, left } = spec;
  const value = show(shown(path));
  const start = typeof value === 'number' ? value : Number(placeholder) || 0;
  // To the step's own digits: 0.1 three times over is no 0.30000000000000004.
  const by = (steps: number) => choose(store(Number((start + steps * step).toFixed(6))));
  const turner = (sign: '−' | '+', steps: number) =>
    html`<button type="button" class="turn" tabindex="-1" aria-hidden="true" @click=${() => by(steps)}>${sign}</button>`;
  return labelled(
    spec,
    html`<input
        id=${idOf(path)}
        class=${Number.isNaN(Number(placeholder)) ? 'in-words' : nothing}
        type="text"
        inputmode="decimal"
        autocomplete="off"
        placeholder=${placeholder || nothing}
        aria-invalid=${invalid(path)}
        aria-describedby=${described(path, help)}
        ${typed(value, numberOr)}
        @input=${(event: Event) => {
          // Told at once: the page drawn between the two would have what stood there before.
          const typedNow = numberOr((event.target as HTMLInputElement).value);
          batch(() => {
            typingAt(path);
            choose(store(typedNow));
          });
        }}
        @keydown=${(event: KeyboardEvent) => {
          const steps = STEPS[event.key];
          if (steps === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
          event.preventDefault();
          by(steps);
        }}
        @change=${({ target }: Event) => {
          leftField();
          left?.((target as HTMLInputElement).value);
        }}
        @blur=${leftField}
      />${
        signed
          ? html`<button type="button" class="turn" aria-label=${words().otherSign} @click=${() => choose(store(-start))}>±</button>`
          : nothing
      }${turner('−', -1)}${turner('+', 1)}`,
    unit,
    help,
  );
}

interface TextControl extends Common {
  readonly type?: 'text' | 'date';
  readonly choose?: (text: string) => void; // default: put it at the path
  readonly placeholder?: string;
  readonly list?: string; // the id of a datalist
}

/** Not of a date: that is changed at every digit of its year. */
const leaves = (type: 'text' | 'date') => (type === 'date' ? nothing : leftField);

export function textControl(spec: TextControl): TemplateResult {
  const { path, type = 'text', placeholder = '', list = '', choose = (text) => put(path, text) } = spec;
  return labelled(
    spec,
    html`<input
      id=${idOf(path)}
      type=${type}
      autocomplete="off"
      placeholder=${placeholder || nothing}
      aria-invalid=${invalid(path)}
      aria-describedby=${described(path)}
      .value=${live(String(shown(path) ?? ''))}
      @input=${(event: Event) => {
        const typedNow = (event.target as HTMLInputElement).value;
        // At once: drawn between the two, the field would get what stood there before, and a date in it begin anew.
        batch(() => {
          typingAt(path);
          choose(typedNow);
        });
      }}
      @change=${leaves(type)}
      @blur=${leftField}
      list=${list || nothing}
    />`,
  );
}

export type Choice<T> = readonly [value: T, text: string];

interface SelectControl<T> extends Common {
  readonly choices: readonly Choice<T>[];
  readonly value?: T; // default: what stands at the path
  readonly choose?: (value: T) => void; // default: put it there
  readonly help?: string;
  readonly turns?: 1 | -1; // a dial, with buttons for less and more: -1 where the list begins with most
}

export function selectControl<T>(spec: SelectControl<T>): TemplateResult {
  const { path, choices, value = shown(path) as T, choose = (v: T) => put(path, v), help = '', turns } = spec;
  const at = choices.findIndex(([choice]) => choice === value);
  const take = (i: number) => {
    const chosen = choices[i];
    if (chosen !== undefined) choose(chosen[0]);
  };
  const turner = (sign: '−' | '+', to: number) =>
    html`<button type="button" class="turn" tabindex="-1" aria-hidden="true" ?disabled=${choices[to] === undefined} @click=${() => take(to)}>${sign}</button>`;
  return labelled(
    spec,
    html`<select
      id=${idOf(path)}
      aria-invalid=${invalid(path)}
      aria-describedby=${described(path, help)}
      @change=${(event: Event) => take((event.target as HTMLSelectElement).selectedIndex)}
      @paste=${(event: ClipboardEvent) => {
        const text = event.clipboardData?.getData('text') ?? '';
        const wanted = readNumber(text);
        take(
          choices.findIndex(
            ([, mark]) => mark === text.trim() || (wanted !== undefined && readNumber(mark) === wanted),
          ),
        );
      }}
    >
      ${choices.map(([, text], i) => html`<option .selected=${live(i === at)}>${text}</option>`)}
    </select>${turns === undefined ? nothing : html`${turner('−', at - turns)}${turner('+', at + turns)}`}`,
    '',
    help,
  );
}

/** Two or three choices side by side. */
export function radioControl<T>(spec: SelectControl<T>): TemplateResult {
  const { path, label, choices, value = shown(path) as T, choose = (v: T) => put(path, v) } = spec;
  const name = idOf(path);
  return html`<fieldset class="control radios">
    <legend>${label}</legend>
    <div class="entry">
      ${choices.map(
        ([choice, text], i) => html`<label class="radio"
          ><input
            type="radio"
            name=${name}
            id=${i === 0 ? name : nothing}
            .checked=${live(choice === value)}
            @change=${() => choose(choice)}
          /><span>${text}</span></label
        >`,
      )}
    </div>
    ${faultsAt(path).map(({ text }) => html`<p class="fault">${text}</p>`)}
  </fieldset>`;
}

interface Tick {
  readonly path: Path;
  readonly label: string;
  readonly value?: boolean;
  readonly choose?: (value: boolean) => void;
}

export function tickControl({ path, label, value, choose = (v) => put(path, v) }: Tick): TemplateResult {
  return html`<div class="control tick">
    <label
      ><input
        type="checkbox"
        id=${idOf(path)}
        .checked=${live(value ?? shown(path) === true)}
        @change=${(event: Event) => choose((event.target as HTMLInputElement).checked)}
      /><span>${label}</span></label
    >
  </div>`;
}
