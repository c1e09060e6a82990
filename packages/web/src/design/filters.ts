// The ND filters owned: any number, by stops, density or factor.

import type { FilterSpec } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { remediesFor, selectControl, tickControl } from '../parts/controls.js';
import { numberOr, typed } from '../parts/typed.js';
import { faultsAt, put, putAll, shoot, shown } from '../state/shoot.js';
import { words } from '../words/words.js';

/** Those that most bags hold stand open, one press each. Our choice. */
const COMMON = [3, 6, 10];
const OTHER = [1, 2, 4, 5, 7, 8, 9];
const MOST = 12;

function add(stops: number): void {
  const filters = shoot.peek().filters;
  const base = words().kit.newName(stops);
  let name = base;
  for (let n = 2; filters.some((filter) => filter.name === name); n++) name = `${base}, ${n}`;
  put(['filters'], [...filters, { name, stops }]);
}

function remove(index: number, name: string): void {
  putAll([
    [['filters', index], undefined],
    ...(shown(['startFilter']) === name ? [[['startFilter'], undefined] as const] : []),
  ]);
}

function rename(index: number, from: string, to: string): void {
  putAll([
    [['filters', index, 'name'], to],
    ...(shown(['startFilter']) === from ? [[['startFilter'], to] as const] : []),
  ]);
}

const scaleOf = (filter: FilterSpec) =>
  (['stops', 'density', 'factor'] as const).find((key) => key in filter);

export function filterList() {
  const w = words().kit;
  const filters = (shown(['filters']) ?? []) as readonly FilterSpec[];
  return html`<fieldset class="control filters">
      <legend>${w.filters}</legend>
      ${
        filters.length < MOST
          ? html`<div class="add-filter" role="group" aria-label=${w.add}>
              <span class="help">${w.addCommon}</span>
              ${COMMON.map(
                (stops) =>
                  html`<button type="button" aria-label=${w.addOne(stops)} @click=${() => add(stops)}>${stops}</button>`,
              )}
              <select
                aria-label="${w.add}, ${w.addOther}"
                @change=${(event: Event) => {
                  const select = event.target as HTMLSelectElement;
                  const stops = OTHER[select.selectedIndex - 1];
                  select.selectedIndex = 0;
                  if (stops !== undefined) add(stops);
                }}
              >
                <option selected>${w.addOther}</option>
                ${OTHER.map((stops) => html`<option>${w.addStops(stops)}</option>`)}
              </select>
            </div>`
          : nothing
      }
      ${filters.length === 0 ? html`<p class="help">${w.noFilters}</p>` : nothing}
      <ul>
        ${filters.map((filter, i) => {
          const scale = scaleOf(filter) ?? 'stops';
          const faults = faultsAt(['filters', i]);
          return html`<li>
            <input
              type="text"
              autocomplete="off"
              aria-label=${w.filterName(i + 1)}
              aria-invalid=${faults.length > 0 ? 'true' : nothing}
              .value=${live(filter.name)}
              @input=${(event: Event) => rename(i, filter.name, (event.target as HTMLInputElement).value)}
            />
            <span class="entry"
              ><input
                type="text"
                inputmode="decimal"
                autocomplete="off"
                aria-label="${w.filterStrength(i + 1)}, ${w.strengths[scale]}"
                aria-invalid=${faults.length > 0 ? 'true' : nothing}
                ${typed(shown(['filters', i, scale]), numberOr)}
                @input=${(event: Event) =>
                  put(['filters', i, scale], numberOr((event.target as HTMLInputElement).value) ?? '')}
              /><span class="unit">${w.strengths[scale]}</span></span
            >
            <button type="button" class="plain drop" aria-label=${w.remove(filter.name)} @click=${() => remove(i, filter.name)}>×</button>
            ${faults.map(({ text }) => html`<p class="fault">${text}</p>`)}
          </li>`;
        })}
      </ul>
      ${remediesFor(['another-filter'])}
    </fieldset>
    ${
      filters.length > 0
        ? selectControl<string | undefined>({
            path: ['startFilter'],
            label: w.startFilter,
            cures: ['start-filter'],
            choices: [
              [undefined, w.startFree],
              ['none', words().chart.noFilter],
              ...filters.map(({ name }) => [name, name] as const),
            ],
          })
        : nothing
    }
    ${filters.length > 1 ? tickControl({ path: ['stackFilters'], label: w.stack }) : nothing}`;
}
