// Entering a metered EV: as a number, or as the shutter the camera proposes at what it stands at.

import { dialLabels, dialStep, ev100Of, followFrame, valueOfStep } from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { ref } from 'lit-html/directives/ref.js';
import { mountDialog } from '../parts/ask.js';
import { say } from '../parts/message.js';
import { settingMarks } from '../parts/text.js';
import { numberOr, typed } from '../parts/typed.js';
import { words } from '../words/words.js';
import { held, nowMs } from './clock.js';
import { lastStand } from './evening.js';
import type { ReadingEvent } from './events.js';
import { refusalOf, type Stand, standAfter } from './follow.js';
import { changeRun, happened, run, runPlan, undoLast } from './run.js';
import { type FieldState, freeFrame } from './state.js';
import { fieldWords } from './words.js';

interface Entry {
  readonly atMs: number;
  readonly ev: unknown;
  readonly expectedEv100: number; // as forecast and corrected so far
}

/** What has been typed, from opening to using it; the reading is of the moment it was opened. */
const entry = signal<Entry | undefined>(undefined);

/** What a meter may be said to tremble by; undefined: it is noticed from the readings. */
const SPREADS_EV = [undefined, 0.15, 0.3, 0.5];

const tenth = (ev: number) => Math.round(ev * 10) / 10;

export function openMeter({ frameNow }: FieldState): void {
  const stand = lastStand.peek();
  if (stand === undefined) return;
  const expectedEv100 = followFrame(stand.state, { frame: frameNow }).sceneEv100;
  entry.value = { atMs: nowMs.peek(), ev: tenth(expectedEv100), expectedEv100 };
  held.value = true;
}

function close(): void {
  entry.value = undefined;
  held.value = false;
}

function putEv(ev: unknown): void {
  const now = entry.peek();
  if (now !== undefined) entry.value = { ...now, ev };
}

const usable = (ev: unknown): ev is number => typeof ev === 'number' && ev >= -15 && ev <= 25;

function use(state: FieldState): void {
  const [typedIn, last] = [entry.peek(), lastStand.peek()];
  if (typedIn === undefined || last === undefined || !usable(typedIn.ev)) return;
  const { atMs, ev } = typedIn;
  close();
  take({ kind: 'reading', seen: state.frameNow, frame: freeFrame(state), atMs, ev100: ev }, last);
}

function take(reading: ReadingEvent, last: Stand): void {
  const after = standAfter(last, reading);
  const w = words();
  // One that is refused stands in the list too: it is what is taken back first.
  happened(reading);
  if (refusalOf(after) !== undefined) return;
  const beyond = after.warnings.filter(({ kind }) => kind === 'out-of-reach');
  say(fieldWords().meter.used(w.number(reading.ev100, 1)), {
    ...(beyond.length === 0 ? {} : { lines: beyond.map(w.library.warning) }),
  });
}

/** A reading that was refused is told until something else happens, with a way to insist. */
export function doubtView() {
  const event = run.value?.events.at(-1);
  const refusal = lastStand.value && refusalOf(lastStand.value);
  const w = words();
  return html`<div class="message doubt" role="status">
    ${
      event?.kind === 'reading' && refusal !== undefined
        ? html`<div class="message-box">
            <p>${w.library.warning(refusal)}</p>
            ${
              event.sure || refusal.kind === 'reading-old'
                ? nothing
                : html`<button type="button" class="small" @click=${() => insistOn(event)}>${fieldWords().meter.insist}</button>`
            }
          </div>`
        : nothing
    }
  </div>`;
}

function insistOn(reading: ReadingEvent): void {
  undoLast();
  const last = lastStand.peek();
  if (last !== undefined) take({ ...reading, sure: true }, last);
}

export function meterDialog(state: FieldState) {
  const now = entry.value;
  const plan = runPlan.value;
  if (now === undefined || plan === undefined) return nothing;
  const w = fieldWords().meter;
  const { stepsPerStop } = plan.shoot.camera;
  const { held: standing } = state;
  const labels = dialLabels('shutter', stepsPerStop);
  const evOf = (label: string) => {
    const step = dialStep('shutter', label, stepsPerStop) ?? 0;
    const exposure = {
      timeS: valueOfStep('shutter', step, stepsPerStop),
      fNumber: standing.fNumber,
      iso: standing.isoExact,
    };
    return ev100Of(exposure) + standing.filterStops;
  };
  const { ev } = now;
  const nudge = (by: number) => usable(ev) && putEv(tenth(ev + by));
  return html`<dialog class="meter" aria-labelledby="meter-title" ${ref(mountDialog)} @cancel=${close} @close=${close}>
    <form
      @submit=${(event: Event) => {
        event.preventDefault();
        use(state);
      }}
    >
      <h2 id="meter-title">${w.title}</h2>
      <div class="ev-entry">
        <button type="button" aria-label=${w.less} @click=${() => nudge(-0.1)}>−</button>
        <label
          ><span>${w.ev}</span
          ><input
            type="text"
            inputmode="decimal"
            autocomplete="off"
            aria-invalid=${usable(ev) ? nothing : 'true'}
            ${typed(ev, numberOr)}
            @input=${(event: Event) => putEv(numberOr((event.target as HTMLInputElement).value))}
        /></label>
        <button type="button" aria-label=${w.more} @click=${() => nudge(0.1)}>+</button>
      </div>
      <p>${w.forecast(words().number(now.expectedEv100, 1))}</p>
      <label class="by-camera"
        ><span>${w.byCamera}</span
        ><select
          @change=${(event: Event) => {
            const label = labels[(event.target as HTMLSelectElement).selectedIndex - 1];
            if (label !== undefined) putEv(tenth(evOf(label)));
          }}
        >
          <option>…</option>
          ${labels.map(
            (label) =>
              html`<option .selected=${live(usable(ev) && tenth(evOf(label)) === ev)}>
                ${words().kit.seconds(label)}
              </option>`,
          )}
        </select></label
      >
      <p>${w.atSetting(
        settingMarks(standing, plan.shoot.filters.length > 0)
          .slice(1)
          .join(' · '),
      )}</p>
      <label class="by-camera"
        ><span>${w.spread}</span
        ><select
          @change=${(event: Event) => {
            changeRun({ meterEv: SPREADS_EV[(event.target as HTMLSelectElement).selectedIndex] });
          }}
        >
          ${SPREADS_EV.map(
            (ev) =>
              html`<option .selected=${live(run.value?.meterEv === ev)}>
                ${ev === undefined ? w.spreadUnsaid : w.spreadOf(words().number(ev, 2))}
              </option>`,
          )}
        </select></label
      >
      <div class="actions">
        <button type="submit" class="big" ?disabled=${!usable(ev)}>${w.use}</button>
        <button type="button" @click=${close}>${w.cancel}</button>
      </div>
    </form>
  </dialog>`;
}
