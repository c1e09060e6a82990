// The field view: one screen, big, dim and red. Now, next, how long, from what to what; then the two after.

import {
  dialStep,
  exposingS,
  type FollowCue,
  type FollowSetting,
  type PlanChange,
  type PlanMade,
} from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { atOffset } from '../chart/time-ticks.js';
import { askFirst, questionView } from '../parts/ask.js';
import { clock } from '../parts/clock.js';
import { otherDay } from '../parts/day.js';
import { hush, messageView } from '../parts/message.js';
import { partView } from '../parts/part-view.js';
import { tabView } from '../parts/tab-view.js';
import { changeSpoken, changeText, countdown, markText, settingMarks, settingText } from '../parts/text.js';
import { standing, storageWorks } from '../state/tab.js';
import { darkForEyes } from '../state/theme.js';
import { words } from '../words/words.js';
import { alertFor, sound, vibration } from './alerts.js';
import { awake } from './awake.js';
import { nowMs, setClock } from './clock.js';
import { lastStand, standNow } from './evening.js';
import { kitDialog, openKit } from './kit.js';
import { doubtView, meterDialog, openMeter } from './meter.js';
import { changeRun, happened, inField, run, runPlan, undoLast } from './run.js';
import { doneFrame, type FieldState, fieldState, freeFrame, isFar } from './state.js';
import { suppliesLine } from './supplies.js';
import { fieldWords } from './words.js';

// In the order of work: the filter first, then dials.
const ORDER = ['filter', 'aperture', 'shutter', 'iso'] as const;
const inOrder = (cue: FollowCue): PlanChange[] =>
  [...cue.changes].sort((a, b) => ORDER.indexOf(a.control) - ORDER.indexOf(b.control));

let alerted = '';

/** Once for each thing to do and urgency. */
function alertOnce({ order, next, held, urgency }: FieldState): void {
  const key = `${order}-${next?.frame ?? settingText(held)}-${urgency}`;
  if (key === alerted) return;
  alerted = key;
  if (urgency === 'waiting' || (urgency === 'late' && order !== 'set')) return;
  queueMicrotask(() => alertFor(urgency === 'soon' ? 'soon' : 'due'));
}

export function fieldView() {
  const [now, plan, stand, last] = [run.value, runPlan.value, standNow.value, lastStand.value];
  const w = fieldWords();
  if (now === undefined || plan === undefined || stand === undefined || last === undefined) {
    return html`<main class="field">
      <h1 class="unseen">${words().field.title}</h1>
      <p class="planning">${words().summary.planning}</p>
      <button type="button" @click=${leave}>${words().field.leave}</button>
    </main>`;
  }
  const state = fieldState(plan, nowMs.value, stand, last);
  const { intervalS } = plan.shoot;
  const mine = standing.value === 'first';
  const filters = plan.shoot.filters.length > 0;
  if (mine) alertOnce(state);
  const local = atOffset(nowMs.value, state.frame.at);
  return html`<main class="field ${state.urgency} ${state.order}">
    <h1 class="unseen">${words().field.title}</h1>
    <div class="field-head">
      <div class="field-top">
        <p class="field-clock">${clock(local)}</p>
        <p>${now.mode === 'live' ? w.live : w.rehearsal}</p>
        <button type="button" @click=${leave}>${words().field.leave}</button>
      </div>
      ${tabView()} ${partView()} ${storageWorks.value ? nothing : html`<p class="field-kept">${w.notKept}</p>`}
      ${messageView()} ${doubtView()}
    </div>
    ${nowPart(plan, state, filters, now.mode === 'live')}
    <section class="field-next" aria-label=${w.next}>${nextPart(plan, state, filters)}</section>
    ${followingPart(state)}
    <div class="field-actions">
      ${mainButton(state, intervalS, mine)}
      <button
        type="button"
        class="big second"
        ?disabled=${!mine || state.order === 'over'}
        @click=${() => openMeter(state)}
      >
        ${w.enterEv}
      </button>
      ${missedPart(state, mine)}
    </div>
    ${suppliesLine(plan, state)}
    <div class="field-foot">
      ${toggle(w.sound, sound.value, () => {
        sound.value = !sound.value;
      })}
      ${
        'vibrate' in navigator
          ? toggle(w.vibration, vibration.value, () => {
              vibration.value = !vibration.value;
            })
          : nothing
      }
      ${
        now.mode === 'rehearsal'
          ? html`<button type="button" @click=${() => changeRun({ paused: !now.paused })}>
                ${now.paused ? w.go : w.pause}
              </button>
              <button type="button" ?disabled=${state.order === 'set' || state.order === 'over'} @click=${() => jump(plan, state)}>${w.jump}</button>`
          : html`<p>${awake.value ? w.awake : w.notAwake}</p>`
      }
      <button type="button" ?disabled=${!mine || state.order === 'over'} @click=${() => openKit(plan)}>${w.kit.open}</button>
      <button type="button" ?disabled=${!mine || now.events.length === 0} @click=${undo}>${w.undoLast(now.events.at(-1)?.kind)}</button>
    </div>
    <p class="unseen" role="status">${spoken(state, filters)}</p>
    ${meterDialog(state)} ${kitDialog(state)} ${questionView()}
  </main>`;
}

function toggle(name: string, on: boolean, flip: () => void) {
  const w = fieldWords();
  return html`<button type="button" aria-pressed=${on} @click=${flip}>${name}: ${on ? w.on : w.off}</button>`;
}

/** What the camera stands at, unless that is the very thing that is asked for. */
function nowPart(plan: PlanMade, state: FieldState, filters: boolean, moves: boolean) {
  const w = fieldWords();
  const { bracket } = plan.shoot.camera;
  if (state.order === 'set' || state.order === 'over') return nothing;
  const title = state.order !== 'start' ? w.now : state.ready ? w.standsReady : w.setFirst;
  return html`<section class="field-now" aria-label=${w.now}>
    <h2>${title}</h2>
    <p class="field-setting">${settingText(state.held, filters)}</p>
    ${bracket === undefined ? nothing : html`<p class="field-bracket">${w.bracket(bracket.frames, words().plain(Number(bracket.stepEv.toFixed(2))))}</p>`}
    ${intervalBar(plan, state, moves)}
  </section>`;
}

function nextPart(plan: PlanMade, state: FieldState, filters: boolean) {
  const { next, toGoMs, urgency, order, atClock, behind } = state;
  const w = fieldWords();
  const day = otherDay(plan, nowMs.value);
  const dayPart = day === undefined ? nothing : html`<p class="field-day">${day}</p>`;
  if (order === 'over')
    return html`<h2>${w.ended}</h2>${dayPart}<p class="field-told">${whatWasDone(plan)}</p>`;
  if (order === 'set') {
    return html`<h2>${behind > 0 ? w.setBehind(behind) : w.setNow}</h2>
      ${wholeSetting(state.held, filters)}`;
  }
  const heading =
    order === 'start'
      ? w.startAt
      : order === 'none'
        ? w.allDone
        : { waiting: w.next, soon: w.next, due: w.due, late: w.late }[urgency];
  return html`<h2>${heading} ${order === 'none' ? nothing : html`<span>${clock(atClock)}</span>`}</h2>
    ${dayPart}
    <p class="field-count">
      ${countdown(Math.abs(toGoMs), w.days)} <span>${toGoMs < 0 ? w.over : order === 'none' ? w.toTheEnd : w.toGo}</span>
    </p>
    ${
      next === undefined
        ? nothing
        : next.setNow !== undefined
          ? wholeSetting(next.setNow, filters)
          : html`<ul class="field-changes">
            ${inOrder(next).map(
              ({ control, from, to }) => html`<li class=${control}>
                <span class="which">${words().cues.controls[control]}</span>
                <span class="from-to"
                  >${markText(control, from)} <span aria-hidden="true">${words().field.arrow}</span
                  ><span class="unseen">${words().field.to}</span> <b>${markText(control, to)}</b></span
                >
                ${clicks(plan, { control, from, to })}
              </li>`,
            )}
          </ul>`
    }`;
}

/** How many marks the dial goes on: felt in the dark, where nothing can be read off it. */
function clicks({ shoot }: PlanMade, { control, from, to }: PlanChange) {
  if (control === 'filter' || shoot.camera.bulb) return nothing;
  const [before, after] = [from, to].map((mark) => dialStep(control, mark, shoot.camera.stepsPerStop));
  if (before === undefined || after === undefined) return nothing;
  return html`<span class="field-clicks">${fieldWords().clicks(Math.abs(after - before))}</span>`;
}

/** After the last frame: what was pressed on the way. */
function whatWasDone({ frames }: PlanMade): string {
  const count = (kind: string) => (run.value?.events ?? []).filter((event) => event.kind === kind).length;
  return fieldWords().wasDone({
    frames: frames.length,
    cues: count('done'),
    missed: count('missed'),
    readings: count('reading'),
  });
}

function wholeSetting(setting: FollowSetting, filters: boolean) {
  return html`<p class="field-whole">${settingMarks(setting, filters).map((mark) => html`<b>${mark}</b> `)}</p>`;
}

function followingPart({ following }: FieldState) {
  if (following.length === 0) return nothing;
  return html`<section class="field-following">
    <h2>${fieldWords().afterThat}</h2>
    <ol>
      ${following.map(
        (cue) => html`<li>
          <span>${clock(cue.at)}</span> <span>${inOrder(cue).map(changeText).join(', ')}</span>
        </li>`,
      )}
    </ol>
  </section>`;
}

/** Exposing and gap as shares of the interval. At sixty times the speed a moving mark would flicker: it rests. */
function intervalBar({ shoot }: PlanMade, { held, inIntervalS, order }: FieldState, moves: boolean) {
  const w = fieldWords();
  const { intervalS } = shoot;
  // What a dark frame takes is no longer exposing.
  const openS = exposingS(held.shutterS, { ...shoot.camera, darkFrame: false });
  const share = (seconds: number) => `${Math.min(100, (100 * seconds) / intervalS)}%`;
  const running = order !== 'start';
  const exposing = inIntervalS < openS;
  return html`<div class="interval">
    <div class="interval-bar" aria-hidden="true">
      <div class="interval-exposing" .style=${`width:${share(openS)}`}></div>
      ${
        moves && running
          ? html`<div class="interval-mark" .style=${`left:${share(inIntervalS)}`}></div>`
          : nothing
      }
    </div>
    <p>${moves && running ? (exposing ? w.exposing : w.gap) : `${w.exposing}, ${w.gap}`} · ${w.interval(String(intervalS))}</p>
  </div>`;
}

/** Two taps are one: hands are cold and gloves thick. Between two things to do there is more time. */
const DOUBLE_TAP_MS = 800;
let tappedMs = Number.NEGATIVE_INFINITY;

function mainButton(state: FieldState, intervalS: number, mine: boolean) {
  const w = fieldWords();
  const { order, ready } = state;
  const idle = order === 'none' || order === 'over' || (order === 'start' && ready);
  return html`<button type="button" class="big" ?disabled=${idle || !mine} @click=${() => tapped(state, intervalS)}>
    ${order === 'start' ? (ready ? w.isReady : w.ready) : w.done}
  </button>`;
}

function tapped(state: FieldState, intervalS: number): void {
  const lastMs = tappedMs;
  tappedMs = performance.now();
  if (tappedMs - lastMs < DOUBLE_TAP_MS) return;
  if (state.order === 'start') happened({ kind: 'ready', seen: 0, frame: 0 });
  else if (isFar(state, intervalS)) askEarly(state.atClock);
  else done(state, intervalS);
}

function done(state: FieldState, intervalS: number): void {
  happened({ kind: 'done', seen: state.frameNow, frame: doneFrame(state, intervalS) });
}

/** The next cue pressed long before its time: more often a slip than a cue done early. */
function askEarly(at: string): void {
  const w = fieldWords();
  askFirst({
    text: () => w.early(clock(at), countdown(Date.parse(at) - nowMs.value, w.days)),
    yes: w.earlyYes,
    no: w.earlyNo,
    // An unanswered question must not cover the order once it is due.
    stands: () => nowMs.value < Date.parse(at),
    act: () => {
      const [plan, stand, last] = [runPlan.peek(), standNow.peek(), lastStand.peek()];
      if (plan === undefined || stand === undefined || last === undefined) return;
      const state = fieldState(plan, nowMs.peek(), stand, last);
      if (state.atClock === at) done(state, plan.shoot.intervalS);
    },
  });
}

function leave(): void {
  hush();
  darkForEyes.value = true;
  inField.value = false;
}

function undo(): void {
  hush();
  undoLast();
}

/** A cue late: it may be given up. */
function missedPart(state: FieldState, mine: boolean) {
  const { frameNow, order, urgency } = state;
  if (order !== 'cue' || urgency !== 'late') return nothing;
  return html`<button
    type="button"
    class="catch-up"
    ?disabled=${!mine}
    @click=${() => happened({ kind: 'missed', seen: frameNow, frame: freeFrame(state) })}
  >
    ${fieldWords().missed}
  </button>`;
}

/** A rehearsal skips to the start, or to a few intervals before what comes next. */
function jump({ shoot }: PlanMade, { order, atClock }: FieldState): void {
  tappedMs = Number.NEGATIVE_INFINITY;
  const intervals = order === 'start' ? 0 : 3;
  setClock(Math.max(nowMs.peek(), Date.parse(atClock) - intervals * shoot.intervalS * 1000));
}

function spoken({ order, next, held, urgency }: FieldState, filters: boolean): string {
  const w = fieldWords();
  if (order === 'set') return w.announceSet(settingText(held, filters));
  if (urgency === 'waiting' || (next === undefined && order !== 'start')) return '';
  const what =
    next === undefined
      ? w.startCamera
      : next.setNow === undefined
        ? inOrder(next).map(changeSpoken).join(', ')
        : settingText(next.setNow, filters);
  return urgency === 'soon' ? w.announceSoon(what, 30) : w.announceDue(what);
}
