// The field view: one screen, big, dim and red. Now, next, how long, from what to what; then the two after.

import type { FollowCue, PlanChange } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { offsetMs } from '../chart/time-ticks.js';
import { hush, messageView } from '../parts/message.js';
import { changeSpoken, changeText, clock, countdown, markText, settingText } from '../parts/text.js';
import { words } from '../words/words.js';
import { alertFor, sound, vibration } from './alerts.js';
import { awake } from './awake.js';
import { nowMs, setClock } from './clock.js';
import { caughtUpNow, lastStand, standNow } from './evening.js';
import { doubtView, meterDialog, openMeter } from './meter.js';
import { changeRun, happened, inField, run, runPlan, undoLast } from './run.js';
import { doneFrame, type FieldState, fieldState, freeFrame } from './state.js';
import { suppliesLine } from './supplies.js';

// In the order of work: the filter first, then dials.
const ORDER = ['filter', 'aperture', 'shutter', 'iso'] as const;
const inOrder = (cue: FollowCue): PlanChange[] =>
  [...cue.changes].sort((a, b) => ORDER.indexOf(a.control) - ORDER.indexOf(b.control));

let alerted = '';

/** Once a cue and urgency. */
function alertOnce({ next, urgency }: FieldState): void {
  const key = `${next?.frame}-${urgency}`;
  if (next === undefined || key === alerted) return;
  alerted = key;
  if (urgency === 'soon' || urgency === 'due') queueMicrotask(() => alertFor(urgency));
}

export function fieldView() {
  const [now, plan, stand, last] = [run.value, runPlan.value, standNow.value, lastStand.value];
  const w = words().field;
  if (now === undefined || plan === undefined || stand === undefined || last === undefined) {
    return html`<main class="field"><p class="planning">${words().summary.planning}</p></main>`;
  }
  const state = fieldState(plan, nowMs.value, stand, last);
  const { intervalS } = plan.shoot;
  alertOnce(state);
  const local = new Date(nowMs.value + offsetMs(state.frame.at)).toISOString();
  return html`<main class="field ${state.urgency}">
    <h1 class="unseen">${w.title}</h1>
    <div class="field-head">
      <div class="field-top">
        <p class="field-clock">${clock(local)}</p>
        <p>${now.mode === 'live' ? w.live : w.rehearsal}</p>
        <button type="button" @click=${leave}>${w.leave}</button>
      </div>
      ${messageView()} ${doubtView()}
    </div>
    <section class="field-now" aria-label=${w.now}>
      <h2>${state.phase === 'before' ? w.setFirst : w.now}</h2>
      <p class="field-setting">${settingText(state.held, plan.shoot.filters.length > 0)}</p>
      ${intervalBar(state, intervalS, now.mode === 'live')}
    </section>
    <section class="field-next" aria-label=${w.next}>${nextPart(state)}</section>
    ${followingPart(state)}
    <div class="field-actions">
      <button type="button" class="big" ?disabled=${state.next === undefined} @click=${() => done(state, intervalS)}>${w.done}</button>
      <button type="button" class="big second" @click=${() => openMeter(state)}>${w.enterEv}</button>
      ${behindPart(state, plan.shoot.filters.length > 0)}
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
              <button type="button" ?disabled=${state.next === undefined} @click=${() => jump(state, intervalS)}>${w.jump}</button>`
          : html`<p>${awake.value ? w.awake : w.notAwake}</p>`
      }
      <button type="button" ?disabled=${now.events.length === 0} @click=${undo}>${w.undoLast(now.events.at(-1)?.kind)}</button>
    </div>
    <p class="unseen" role="status">${spoken(state)}</p>
    ${meterDialog(state)}
  </main>`;
}

function toggle(name: string, on: boolean, flip: () => void) {
  const w = words().field;
  return html`<button type="button" aria-pressed=${on} @click=${flip}>${name}: ${on ? w.on : w.off}</button>`;
}

function nextPart({ next, toGoMs, urgency, phase }: FieldState) {
  const w = words().field;
  if (phase === 'over') return html`<h2>${w.ended}</h2>`;
  if (next === undefined) {
    return html`<h2>${w.allDone}</h2>
      <p class="field-count">${countdown(toGoMs)}</p>
      <p>${w.endsIn}</p>`;
  }
  const heading = { waiting: w.next, soon: w.next, due: w.due, late: w.late }[urgency];
  return html`<h2>${heading} <span>${clock(next.at)}</span></h2>
    <p class="field-count">
      ${countdown(Math.abs(toGoMs))} <span>${toGoMs < 0 ? w.over : w.toGo}</span>
    </p>
    <ul class="field-changes">
      ${inOrder(next).map(
        ({ control, from, to }) => html`<li class=${control}>
          <span class="which">${words().cues.controls[control]}</span>
          <span class="from-to"
            >${markText(control, from)} <span aria-hidden="true">${w.arrow}</span
            ><span class="unseen">${w.to}</span> <b>${markText(control, to)}</b></span
          >
        </li>`,
      )}
    </ul>`;
}

function followingPart({ following }: FieldState) {
  if (following.length === 0) return nothing;
  return html`<section class="field-following">
    <h2>${words().field.afterThat}</h2>
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
function intervalBar({ held, inIntervalS, phase }: FieldState, intervalS: number, moves: boolean) {
  const w = words().field;
  const share = (seconds: number) => `${Math.min(100, (100 * seconds) / intervalS)}%`;
  const exposing = phase === 'running' && inIntervalS < held.shutterS;
  return html`<div class="interval">
    <div class="interval-bar" aria-hidden="true">
      <div class="interval-exposing" .style=${`width:${share(held.shutterS)}`}></div>
      ${
        moves && phase === 'running'
          ? html`<div class="interval-mark" .style=${`left:${share(inIntervalS)}`}></div>`
          : nothing
      }
    </div>
    <p>${moves && phase === 'running' ? (exposing ? w.exposing : w.gap) : `${w.exposing}, ${w.gap}`} · ${w.interval(String(intervalS))}</p>
  </div>`;
}

function done(state: FieldState, intervalS: number): void {
  happened({ kind: 'done', seen: state.frameNow, frame: doneFrame(state, intervalS) });
}

function leave(): void {
  hush();
  inField.value = false;
}

function undo(): void {
  hush();
  undoLast();
}

/** A cue late: it may be given up. More than one behind: they may have been done without a press. */
function behindPart(state: FieldState, filters: boolean) {
  const w = words().field;
  const { behind, frameNow, urgency } = state;
  if (behind > 1 && caughtUpNow.value !== undefined) {
    const setting = settingText(caughtUpNow.value.held, filters);
    return html`<button
      type="button"
      class="catch-up"
      @click=${() => happened({ kind: 'caught-up', seen: frameNow, frame: frameNow })}
    >
      <b>${w.behind(behind)}.</b> ${w.catchUp} ${setting}
    </button>`;
  }
  if (urgency !== 'late') return nothing;
  return html`<button
    type="button"
    class="catch-up"
    @click=${() => happened({ kind: 'missed', seen: frameNow, frame: freeFrame(state) })}
  >
    ${w.missed}
  </button>`;
}

/** A rehearsal skips to a few intervals before the next cue. */
function jump({ next }: FieldState, intervalS: number): void {
  if (next !== undefined) setClock(Math.max(nowMs.peek(), Date.parse(next.at) - 3 * intervalS * 1000));
}

function spoken({ next, urgency }: FieldState): string {
  if (next === undefined || urgency === 'waiting') return '';
  const what = inOrder(next).map(changeSpoken).join(', ');
  const w = words().field;
  return urgency === 'soon' ? w.announceSoon(what, 30) : w.announceDue(what);
}
