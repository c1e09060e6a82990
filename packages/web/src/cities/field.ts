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
/** Whether somebody is typing: until then the field shows what the place was chosen by. */
const searching = signal(false);
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

/** @param name what the place as it stands was chosen by */
export function cityField(use: Use, name: string | undefined) {
  const w = words().place;
  const done = () => {
    wanted.value = '';
    searching.value = false;
  };
  const take = (city: City) => {
    done();
    use(city.latitudeDeg, city.longitudeDeg, city.timeZone, city.name);
  };
  const type = (text: string) => {
    wanted.value = text;
    searching.value = true;
    const place = readPlace(text);
    if (place === undefined) return;
    done();
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
        .value=${live(searching.value ? value : (name ?? ''))}
        @focus=${(event: Event) => {
          void load();
          (event.target as HTMLInputElement).select();
        }}
        @blur=${() => {
          if (wanted.peek() === '') searching.value = false;
        }}
        @input=${(event: Event) => {
          void load();
          const text = (event.target as HTMLInputElement).value;
          // What is pasted is whole: coordinates are taken at once.
          if ((event as InputEvent).inputType === 'insertFromPaste') {
            type(text);
            return;
          }
          wanted.value = text;
          searching.value = true;
        }}
        @change=${(event: Event) => {
          const text = (event.target as HTMLInputElement).value;
          if (text !== name) type(text);
        }}
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
