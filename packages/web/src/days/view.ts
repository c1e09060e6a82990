// The days to come as a strip to choose from: each evening planned, its moon drawn, the one in focus told in full.

import { civilDay, type Evening, rfc3339, type Shoot, shootOnDate, zoneOf } from '@evenfall/core';
import { computed, effect, signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { adoptStyles } from '../parts/adopt-styles.js';
import { dayText } from '../parts/day-text.js';
import { say } from '../parts/message.js';
import { today } from '../state/first-shoot.js';
import { reading, replaceShoot, shoot } from '../state/shoot.js';
import { words } from '../words/words.js';
import { askDays, giveUp } from './ask.js';
import css from './days.css?inline';
import { moonView } from './moon.js';
import { opened } from './open.js';
import { dayWords } from './words.js';

adoptStyles(css);

const DAYS = 30;
const DAY_MS = 86_400_000;

const daysAfter = (date: string, days: number) =>
  new Date(Date.parse(date) + days * DAY_MS).toISOString().slice(0, 10);

/** The first day of a strip that holds a date: today where that is not far, else the date itself. */
function firstFor(date: string): string {
  const now = today();
  return date >= now && date < daysAfter(now, DAYS) ? now : date;
}

const first = signal(firstFor(shoot.peek().date));

/** As the place's own calendar counts them: a day that it skips is none. */
const dates = computed(() => {
  const zone = zoneOf(shoot.value.place);
  const list = [first.value];
  while (list.length < DAYS) {
    const { endMs } = civilDay(list[list.length - 1] ?? '', zone);
    list.push(rfc3339(endMs, zone).slice(0, 10));
  }
  return list;
});

/** What has come so far of the evenings asked for. */
const found = signal<ReadonlyMap<string, Evening>>(new Map());
const failed = signal(false);
const complete = computed(() => dates.value.every((date) => found.value.has(date)));

/** Which evening is told in full: the one last in focus, else the shoot's own. */
const lookedAt = signal<string | undefined>(undefined);
const told = computed(() => {
  const { date } = shoot.value;
  const wanted = lookedAt.value ?? date;
  return dates.value.includes(wanted) ? wanted : first.value;
});

/** A date typed elsewhere comes into view. */
let seen = shoot.peek().date;
effect(() => {
  const { date } = shoot.value;
  if (date === seen) return;
  seen = date;
  lookedAt.value = undefined;
  if (!dates.peek().includes(date)) first.value = firstFor(date);
});

/** What an evening's plan depends on: everything but the date it is on, and the title. */
const keyOf = (now: Shoot, from: string) =>
  JSON.stringify({ ...shootOnDate(now, from), title: '', readings: now.readings });

// Typing goes first.
const SETTLED_MS = 400;
let timer: ReturnType<typeof setTimeout> | undefined;
let started = '';

function start(now: Shoot): void {
  document
    .querySelector('.strip [aria-selected=true]')
    ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  found.value = new Map();
  failed.value = false;
  askDays(now, dates.peek(), (evening) => {
    if (evening !== undefined) found.value = new Map(found.peek()).set(evening.date, evening);
    else {
      failed.value = true;
      started = '';
    }
  });
}

effect(() => {
  const [now, from] = [shoot.value, first.value];
  const key = opened.value ? keyOf(now, from) : '';
  if (key === started) return;
  clearTimeout(timer);
  giveUp();
  const wait = started === '' ? 0 : SETTLED_MS;
  started = key === '' && complete.peek() ? started : key;
  if (key !== '') timer = setTimeout(() => start(now), wait);
});

function take(date: string): void {
  lookedAt.value = date;
  if (date === shoot.peek().date || reading.peek().kind === 'wrong') return;
  replaceShoot(shootOnDate(shoot.peek(), date));
  say(dayWords().taken(dayName(date)), { undo: true });
}

const dayName = (date: string) => dayText(date, { weekday: 'long', day: 'numeric', month: 'long' });

const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowLeft: -1,
  ArrowDown: 7,
  ArrowUp: -7,
  PageDown: 7,
  PageUp: -7,
  Home: -DAYS,
  End: DAYS,
};

/** One stop for the tabulator, the arrows go from day to day. */
function keyed(event: KeyboardEvent): void {
  const step = STEPS[event.key];
  if (step === undefined) return;
  event.preventDefault();
  const at = Math.min(DAYS - 1, Math.max(0, dates.peek().indexOf(told.peek()) + step));
  const list = event.currentTarget as HTMLElement;
  list.querySelectorAll<HTMLElement>('[role=option]')[at]?.focus();
}

function turn(days: number): void {
  first.value = daysAfter(first.peek(), days);
  lookedAt.value = undefined;
}

export function daysView() {
  const w = dayWords();
  const { direction } = shoot.value;
  const can = [...found.value.values()].filter(({ kind }) => kind === 'ok').length;
  const status = failed.value ? w.failed : complete.value ? w.count(can, DAYS) : w.working;
  const evening = found.value.get(told.value);
  return html`<div class="days-in" aria-busy=${!complete.value && !failed.value}>
    <p class="help">${w.help[direction]}</p>
    <div
      class="strip"
      role="listbox"
      aria-orientation="horizontal"
      aria-label=${w.list[direction]}
      @keydown=${keyed}
    >
      ${dates.value.map((date) => dayView(date, found.value.get(date)))}
    </div>
    <p role="status">${status}</p>
    <p class="told" aria-hidden="true">${evening === undefined ? '…' : sentence(evening)}</p>
    <div class="buttons">
      <button type="button" class="small" @click=${() => turn(-DAYS)}>${w.earlier(DAYS)}</button>
      <button type="button" class="small" @click=${() => turn(DAYS)}>${w.later(DAYS)}</button>
    </div>
  </div>`;
}

function dayView(date: string, evening: Evening | undefined) {
  const w = dayWords();
  const { kind, light } = evening ?? {};
  const share = evening?.kind === 'ok' ? shareText(evening.plan.eveningsHeldShare) : undefined;
  const weekend = new Date(date).getUTCDay() % 6 === 0;
  return html`<button
    type="button"
    role="option"
    class="${weekend ? 'weekend' : ''} ${kind === 'infeasible' ? 'cannot' : ''}"
    aria-selected=${date === shoot.value.date}
    aria-disabled=${reading.value.kind === 'wrong' ? 'true' : nothing}
    tabindex=${date === told.value ? 0 : -1}
    @focus=${() => {
      lookedAt.value = date;
    }}
    @click=${() => take(date)}
  >
    <span aria-hidden="true">${dayText(date, { weekday: 'short' })}</span>
    <b aria-hidden="true">${dayText(date, { day: 'numeric', month: 'short' })}</b>
    ${light === undefined ? html`<span class="moon"></span>` : moonView(light, shoot.value.place.latitudeDeg < 0)}
    <span class="foot" aria-hidden="true">${evening === undefined ? '…' : (share ?? w.no)}</span>
    <span class="unseen">${evening === undefined ? `${dayName(date)}: …` : sentence(evening)}</span>
  </button>`;
}

/** No forecast is sure enough to say all of them. */
const shareText = (share: number) => (share > 0.99 ? '> 99' : String(Math.round(100 * share)));

/** Everything that sets one evening apart from another. */
function sentence(evening: Evening): string {
  const { date, horizonAt, light } = evening;
  const plan = evening.kind === 'ok' ? evening.plan : undefined;
  const w = dayWords();
  const { number, library } = words();
  const { direction } = shoot.value;
  const hours = (at: string) => at.slice(11, 16);
  const parts = [
    horizonAt === undefined ? w.noHorizon[direction] : w.horizon[direction](hours(horizonAt)),
    light?.steepest && w.steepest(hours(light.steepest.at), number(Math.abs(light.steepest.evPerMin), 2)),
    light &&
      w.moon(Math.round(100 * light.moonLitFraction), light.moonWaxing, Math.round(light.moonAltitudeDeg)),
    light && w.stops(number(light.rampStops, 1)),
    plan && w.cues(plan.cueCount),
    plan && w.error(number(plan.worstErrorEv, 2)),
    plan &&
      w.reserve(
        number(plan.reserveDarkEv, 1),
        number(plan.reserveBrightEv, 1),
        shareText(plan.eveningsHeldShare),
        direction,
      ),
  ];
  const all = parts.filter((each) => each !== undefined).join(w.between);
  return `${dayName(date)}: ${all}.${evening.kind === 'infeasible' ? ` ${library.why(evening.infeasible)}` : ''}`;
}
