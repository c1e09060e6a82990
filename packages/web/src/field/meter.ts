// Entering a metered EV: as a number, or as the shutter the camera proposes at what it stands at.

import { dialLabels, dialStep, ev100Of, timeOfStep } from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { ref } from 'lit-html/directives/ref.js';
import { say } from '../parts/message.js';
import { settingText } from '../parts/text.js';
import { numberOr, typed } from '../parts/typed.js';
import { words } from '../words/words.js';
import { held, nowMs } from './clock.js';
import { refusalOf } from './refusal.js';
import { changeRun, run, runPlan } from './run.js';
import { type FieldState, fieldState } from './state.js';

/** What has been typed, from opening to using it; the reading is of the moment it was opened. */
const entry = signal<{ readonly atMs: number; readonly ev: unknown } | undefined>(undefined);

const tenth = (ev: number) => Math.round(ev * 10) / 10;

export function openMeter(state: FieldState): void {
  entry.value = { atMs: nowMs.peek(), ev: tenth(state.frame.sceneEv100) };
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

function use(): void {
  const [now, plan, typedIn] = [run.peek(), runPlan.peek(), entry.peek()];
  if (now === undefined || plan === undefined || typedIn === undefined || !usable(typedIn.ev)) return;
  const { frameNow, held: standing } = fieldState(plan, typedIn.atMs, now.doneThrough);
  const reading = {
    at: plan.frames[frameNow]?.at ?? plan.summary.startAt,
    ev100: typedIn.ev,
    // The frame under way is lost to it, and a hand needs time for the next.
    fromFrame: Math.min(frameNow + 2, plan.frames.length - 1),
    heldFrame: standing.frame,
  };
  const stop = runPlan.subscribe((after) => {
    if (after === undefined || after === plan) return;
    queueMicrotask(() => stop());
    const refusal = refusalOf(after, reading);
    say(
      refusal === undefined
        ? words().meter.used(words().number(reading.ev100, 1))
        : words().library.note(refusal),
    );
  });
  changeRun({ readings: [...now.readings, reading] });
  close();
}

function mount(element?: Element): void {
  if (element instanceof HTMLDialogElement)
    queueMicrotask(() => element.isConnected && !element.open && element.showModal());
}

export function meterDialog(state: FieldState) {
  const now = entry.value;
  const plan = runPlan.value;
  if (now === undefined || plan === undefined) return nothing;
  const w = words().meter;
  const { stepsPerStop } = plan.shoot.camera;
  const { held: standing } = state;
  const labels = dialLabels('shutter', stepsPerStop);
  const evOf = (label: string) => {
    const step = dialStep('shutter', label, stepsPerStop) ?? 0;
    const exposure = {
      timeS: timeOfStep(step, stepsPerStop),
      fNumber: standing.fNumber,
      iso: standing.isoExact,
    };
    return ev100Of(exposure) + standing.filterStops;
  };
  const { ev } = now;
  const nudge = (by: number) => usable(ev) && putEv(tenth(ev + by));
  return html`<dialog class="meter" aria-labelledby="meter-title" ${ref(mount)} @cancel=${close} @close=${close}>
    <form
      @submit=${(event: Event) => {
        event.preventDefault();
        use();
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
      <p>${w.forecast(words().number(state.frame.sceneEv100, 1))}</p>
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
      <p>${w.atSetting(settingText(standing).split(' · ').slice(1).join(' · '))}</p>
      <div class="actions">
        <button type="submit" class="big" ?disabled=${!usable(ev)}>${w.use}</button>
        <button type="button" @click=${close}>${w.cancel}</button>
      </div>
    </form>
  </dialog>`;
}
