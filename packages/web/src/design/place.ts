// Where and when: place, date, dusk or dawn, from where to where.

import { rfc3339, type Span, wallToMs, zoneOf } from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { cityField } from '../cities/field.js';
import type { mapView } from '../map/view.js';
import { offsetOfTwo } from '../parts/clock.js';
import { numberControl, radioControl, remediesFor, selectControl, textControl } from '../parts/controls.js';
import { say } from '../parts/message.js';
import { readPlace } from '../parts/read-number.js';
import { coordinatesText } from '../parts/text.js';
import { SAMPLE_PLACES } from '../places.js';
import { part } from '../state/part.js';
import { placeName, rememberName } from '../state/place-name.js';
import { made } from '../state/plan.js';
import { faultsAt, put, putAll, shoot, shown } from '../state/shoot.js';
import { zoneFollows } from '../state/zone-follows.js';
import { words } from '../words/words.js';
import { border } from '../zone.js';

const LATITUDE = ['place', 'latitudeDeg'] as const;
const LONGITUDE = ['place', 'longitudeDeg'] as const;
const ZONE = ['place', 'timeZone'] as const;

const asking = signal(false);

const numbersOpen = signal(false);

const mapOpen = signal(false);
const map = signal<typeof mapView | undefined>(undefined);

/** A small map, loaded when it is first opened. */
function placeOnMap() {
  return html`<details
    class="more"
    .open=${mapOpen.value}
    @toggle=${async ({ target }: Event) => {
      mapOpen.value = (target as HTMLDetailsElement).open;
      if (mapOpen.value) map.value ??= (await part(import('../map/view.js')))?.mapView;
    }}
  >
    <summary>${words().place.map}</summary>
    ${
      mapOpen.value
        ? (map.value?.((latitudeDeg, longitudeDeg) => {
            usePlace(latitudeDeg, longitudeDeg);
            void zoneFollows();
          }) ?? html`<p class="help">…</p>`)
        : nothing
    }
  </details>`;
}

/** All zones that this browser knows, which checks what is chosen from them. They are hundreds: offered once somebody comes to the field, and never drawn anew. */
function offerZones({ currentTarget }: Event): void {
  const list = (currentTarget as Element).querySelector('datalist');
  if (list?.childElementCount !== 0) return;
  const zones = Intl.supportedValuesOf?.('timeZone') ?? [];
  list.append(...zones.map((value) => Object.assign(document.createElement('option'), { value })));
}

/** Clock times mean something else elsewhere, and a height belongs to its place. */
function movedTo(value: unknown): unknown {
  put(['place', 'elevationM'], undefined);
  put(['place', 'aboveHorizonM'], undefined);
  queueMicrotask(() => void zoneFollows());
  return value;
}

function usePlace(latitudeDeg: number, longitudeDeg: number, timeZone?: string, name?: string): void {
  if (name !== undefined) rememberName(name, latitudeDeg, longitudeDeg);
  put(['place'], { latitudeDeg, longitudeDeg, ...(timeZone === undefined ? {} : { timeZone }) });
}

/** Two coordinates in one field, as they are copied from elsewhere. */
function bothAtOnce(text: string): void {
  const place = readPlace(text);
  if (place === undefined) return;
  usePlace(place.latitudeDeg, place.longitudeDeg);
  void zoneFollows();
}

function askDevice(): void {
  asking.value = true;
  navigator.geolocation.getCurrentPosition(
    ({ coords }) => {
      asking.value = false;
      // Ten metres are enough for the sun.
      const rounded = (deg: number) => Math.round(deg * 1e4) / 1e4;
      usePlace(rounded(coords.latitude), rounded(coords.longitude));
      void zoneFollows();
    },
    () => {
      asking.value = false;
      say(words().place.denied);
    },
    { timeout: 20_000, maximumAge: 600_000 },
  );
}

function turnDirection(direction: 'dusk' | 'dawn'): void {
  const span = shown(['span']) as Span;
  const turned =
    'startAt' in span
      ? undefined
      : { fromSunAltitudeDeg: span.toSunAltitudeDeg, toSunAltitudeDeg: span.fromSunAltitudeDeg };
  putAll([
    [['direction'], direction],
    [['span'], turned],
  ]);
}

type ClockSpan = Extract<Span, { startAt: string }>;

/** From one clock time to another, the morning after where the end would come first; undefined where there is none. */
function clockSpan(date: unknown, from: string, to: string): ClockSpan | undefined {
  try {
    const zone = zoneOf(shoot.peek().place);
    const [startMs] = wallToMs(String(date), from, zone);
    const [sameDayMs] = wallToMs(String(date), to, zone);
    if (startMs === undefined || sameDayMs === undefined) return undefined;
    const endMs = sameDayMs < startMs ? sameDayMs + 86_400_000 : sameDayMs;
    return { startAt: rfc3339(startMs, zone), endAt: rfc3339(endMs, zone) };
  } catch {
    return undefined; // a date that is still being typed
  }
}

const timeOf = (at: string) => at.slice(11, 19);

function spanByClock(byClock: boolean): void {
  const { summary } = made.peek() ?? {};
  const minute = (at: string) => `${at.slice(11, 16)}:00`;
  if (!byClock) put(['span'], undefined);
  else if (summary) put(['span'], clockSpan(shown(['date']), minute(summary.startAt), minute(summary.endAt)));
}

function putClock(key: keyof ClockSpan, time: string): void {
  const now = shown(['span']) as ClockSpan;
  if (time === '') return;
  const times = { startAt: timeOf(now.startAt), endAt: timeOf(now.endAt), [key]: time };
  const span = clockSpan(shown(['date']), times.startAt, times.endAt);
  if (span === undefined) say(words().place.clockWrong);
  else put(['span'], span);
}

const LAMPS_FROM = ['scene', 'lamps', 'on', 'fromAt'] as const;

/** Lamps that come on by the clock go along too, those of the small hours to the day after. */
function lampsOn(date: string): string | undefined {
  const at = shown(LAMPS_FROM);
  if (typeof at !== 'string') return undefined;
  const dayMs = (day: unknown) => Date.parse(`${day}T00:00Z`);
  const ms = dayMs(date) + dayMs(at.slice(0, 10)) - dayMs(shown(['date']));
  if (Number.isNaN(ms)) return undefined; // a date that is still being typed
  const day = new Date(ms).toISOString().slice(0, 10);
  return clockSpan(day, timeOf(at), timeOf(at))?.startAt;
}

/** A span by the clock goes along to another day. */
function putDate(date: string): void {
  const now = shown(['span']) as Span;
  const along = 'startAt' in now ? clockSpan(date, timeOf(now.startAt), timeOf(now.endAt)) : undefined;
  const lamps = lampsOn(date);
  putAll([
    [['date'], date],
    ...(along === undefined ? [] : [[['span'], along] as const]),
    ...(lamps === undefined ? [] : [[LAMPS_FROM, lamps] as const]),
  ]);
}

/** The place in numbers, told in a line; its own controls are folded, unless something is wrong there. */
function exactly() {
  const w = words().place;
  const { latitudeDeg, longitudeDeg, timeZone } = shoot.value.place;
  const sample = SAMPLE_PLACES.find(
    (p) => p.latitudeDeg === latitudeDeg && p.longitudeDeg === longitudeDeg,
  )?.name;
  const wrong = faultsAt(['place']).length > 0;
  return html`<details
    class="more"
    .open=${numbersOpen.value || wrong}
    @toggle=${({ target }: Event) => {
      const { open } = target as HTMLDetailsElement;
      if (!wrong) numbersOpen.value = open;
    }}
  >
    <summary><span>${w.numbers}
      <small class="help">${coordinatesText(latitudeDeg, longitudeDeg)} · ${timeZone ?? w.zoneUnknown}</small></span></summary>
    <div class="fields" @focusin=${() => {
      numbersOpen.value = true; // what is put right does not fold away under the fingers
    }}>
      <div class="pair stack">
        ${numberControl({ path: LATITUDE, label: w.latitude, unit: w.north, step: 0.01, signed: true, store: movedTo, left: bothAtOnce })}
        ${numberControl({ path: LONGITUDE, label: w.longitude, unit: w.east, step: 0.01, signed: true, store: movedTo, left: bothAtOnce })}
      </div>
      <div class="zone" @focusin=${offerZones}>${textControl({ path: ZONE, label: w.zone, placeholder: w.zoneUnknown, list: 'zones' })}
        <datalist id="zones"></datalist></div>
      ${numberControl({
        path: ['place', 'aboveHorizonM'],
        label: w.aboveHorizon,
        unit: 'm',
        step: 10,
        help: w.aboveHorizonHelp,
        placeholder: words().notSet,
      })}
      ${selectControl({
        path: ['sample'],
        label: w.sample,
        value: sample,
        choices: [
          [undefined, w.ownPlace],
          ...SAMPLE_PLACES.map(({ name }) => [name, w.sampleNames[name] ?? name] as const),
        ],
        choose: (name) => {
          const place = SAMPLE_PLACES.find((p) => p.name === name);
          if (place) usePlace(place.latitudeDeg, place.longitudeDeg, place.timeZone);
        },
      })}
    </div>
  </details>`;
}

export function placePanel() {
  const w = words().place;
  const { latitudeDeg, longitudeDeg } = shoot.value.place;
  const name = placeName(latitudeDeg, longitudeDeg);
  const span = shown(['span']) as Span;
  const byClock = typeof span === 'object' && span !== null && 'startAt' in span;
  return html`
    ${cityField((latitudeDeg, longitudeDeg, timeZone, name) => {
      usePlace(latitudeDeg, longitudeDeg, timeZone, name);
      if (timeZone === undefined) void zoneFollows();
    }, name)}
    ${
      'geolocation' in navigator
        ? html`<button type="button" class="wide" ?disabled=${asking.value} @click=${askDevice}>
            ${asking.value ? w.asking : w.here}
          </button>`
        : nothing
    }
    ${placeOnMap()} ${exactly()}
    ${border.value?.() ?? nothing}
    <div class="pair">
      ${textControl({ path: ['date'], label: w.date, type: 'date', choose: putDate })}
      ${radioControl({
        path: ['direction'],
        label: w.direction,
        choices: [
          ['dusk', w.dusk],
          ['dawn', w.dawn],
        ],
        choose: turnDirection,
      })}
    </div>
    ${radioControl({
      path: ['span'],
      label: w.spanBy,
      value: byClock,
      choices: [
        [false, w.bySun],
        [true, w.byClock],
      ],
      choose: spanByClock,
    })}
    <div class="pair stack">
      ${
        byClock
          ? (['startAt', 'endAt'] as const).map(
              (key) => html`<div class="control">
                <label for=${key}>${w[key]} ${offsetOfTwo(String(shown(['span', key])))}</label>
                <div class="entry">
                  <input
                    id=${key}
                    type="time"
                    .value=${live(String(shown(['span', key])).slice(11, 16))}
                    @change=${(event: Event) => putClock(key, (event.target as HTMLInputElement).value)}
                  />
                </div>
                ${faultsAt(['span', key]).map(({ text }) => html`<p class="fault">${text}</p>`)}
              </div>`,
            )
          : [
              numberControl({
                path: ['span', 'fromSunAltitudeDeg'],
                label: w.spanFrom,
                unit: '°',
                signed: true,
              }),
              numberControl({ path: ['span', 'toSunAltitudeDeg'], label: w.spanTo, unit: '°', signed: true }),
            ]
      }
    </div>
    ${remediesFor(['shorter-span', 'longer-recording'])}
    ${textControl({ path: ['title'], label: w.name, placeholder: name ?? w.namePlaceholder })}
  `;
}
