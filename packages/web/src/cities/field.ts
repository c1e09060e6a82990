// One field for the place: a city's name, or coordinates as they are copied from elsewhere.

import { computed, signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { readPlace } from '../parts/read-number.js';
import { coordinatesText } from '../parts/text.js';
import { part } from '../state/part.js';
import { words } from '../words/words.js';
import type { City, findCities } from './find.js';

const MOST = 6;

const wanted = signal('');
const finder = signal<typeof findCities | undefined>(undefined);
const found = computed(() => finder.value?.(wanted.value, MOST) ?? []);

async function load(): Promise<void> {
  finder.value ??= (await part(import('./find.js')))?.findCities;
}

const countryName = (code: string) => {
  try {
    return new Intl.DisplayNames(words().dateLocale, { type: 'region' }).of(code) ?? code;
  } catch {
    return code; // some places have no code
  }
};

type Use = (latitudeDeg: number, longitudeDeg: number, timeZone?: string, name?: string) => void;

export function cityField(use: Use) {
  const w = words().place;
  const take = ({ latitudeDeg, longitudeDeg, timeZone, name }: City) => {
    wanted.value = '';
    use(latitudeDeg, longitudeDeg, timeZone, name);
  };
  const type = (text: string) => {
    wanted.value = text;
    const place = readPlace(text);
    if (place === undefined) return;
    wanted.value = '';
    use(place.latitudeDeg, place.longitudeDeg);
  };
  const { value } = wanted;
  const place = readPlace(value);
  return html`<div class="control cities">
    <div class="name"><label for="city">${w.city}</label></div>
    <div class="entry">
      <input
        id="city"
        type="search"
        autocomplete="off"
        placeholder=${w.cityPlaceholder}
        .value=${live(value)}
        @focus=${load}
        @input=${(event: Event) => {
          void load();
          wanted.value = (event.target as HTMLInputElement).value;
        }}
        @change=${(event: Event) => type((event.target as HTMLInputElement).value)}
        @keydown=${(event: KeyboardEvent) => {
          const first = found.peek()[0];
          if (event.key !== 'Enter' || first === undefined) return;
          event.preventDefault();
          take(first);
        }}
      />
    </div>
    <div role="status"><ul class="found">
      ${found.value.map(
        (city) => html`<li>
          <button type="button" @click=${() => take(city)}>
            ${city.name} <small>${city.country === '' ? '' : countryName(city.country)}</small>
          </button>
        </li>`,
      )}
      ${
        place === undefined
          ? nothing
          : html`<li>
              <button type="button" @click=${() => type(value)}>
                ${coordinatesText(place.latitudeDeg, place.longitudeDeg)}
              </button>
            </li>`
      }
      ${
        value.trim().length > 2 && finder.value !== undefined && found.value.length === 0 && !place
          ? html`<li class="help">${w.noCity}</li>`
          : nothing
      }
    </ul></div>
  </div>`;
}
