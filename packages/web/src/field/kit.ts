// The kit as it is now: a filter that fell into the water, or was found again, and how far the ISO may go.

import { dialLabels, dialStep, type PlanMade } from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { ref } from 'lit-html/directives/ref.js';
import { mountDialog } from '../parts/ask.js';
import { say } from '../parts/message.js';
import { words } from '../words/words.js';
import { held } from './clock.js';
import { lastStand } from './evening.js';
import type { KitEvent } from './events.js';
import { standAfter } from './follow.js';
import { happened, run, runPlan } from './run.js';
import { type FieldState, freeFrame } from './state.js';
import { fieldWords } from './words.js';

type KitNow = Pick<KitEvent, 'filters' | 'highestIso'>;

/** What has been chosen, from opening to using it. */
const entry = signal<KitNow | undefined>(undefined);

/** As it was last said, or as the shoot has it. */
function kitNow({ shoot }: PlanMade): KitNow {
  const said = run.peek()?.events.findLast((event) => event.kind === 'kit');
  return said ?? { filters: shoot.filters.map(({ name }) => name), highestIso: shoot.camera.iso.highest };
}

export function openKit(plan: PlanMade): void {
  entry.value = kitNow(plan);
  held.value = true;
}

function close(): void {
  entry.value = undefined;
  held.value = false;
}

function use(state: FieldState): void {
  const [chosen, plan, last] = [entry.peek(), runPlan.peek(), lastStand.peek()];
  close();
  if (chosen === undefined || plan === undefined || last === undefined) return;
  const was = kitNow(plan);
  if (String(was.filters) === String(chosen.filters) && was.highestIso === chosen.highestIso) return;
  const event: KitEvent = { kind: 'kit', seen: state.frameNow, frame: freeFrame(state), ...chosen };
  const { warnings } = standAfter(last, event);
  happened(event);
  say(fieldWords().kit.used, { lines: warnings.map(words().library.warning) });
}

export function kitDialog(state: FieldState) {
  const now = entry.value;
  const plan = runPlan.value;
  if (now === undefined || plan === undefined) return nothing;
  const { camera, filters } = plan.shoot;
  const w = fieldWords().kit;
  const lowest = dialStep('iso', String(camera.iso.lowest), camera.stepsPerStop) ?? 0;
  const isos = dialLabels('iso', camera.stepsPerStop).filter(
    (label) => (dialStep('iso', label, camera.stepsPerStop) ?? 0) >= lowest,
  );
  const have = (name: string, at: boolean) => {
    // In the order of the shoot, whatever is pressed first.
    const names = filters.map((filter) => filter.name);
    const kept = names.filter((each) => (each === name ? at : now.filters.includes(each)));
    entry.value = { ...now, filters: kept };
  };
  return html`<dialog class="meter" aria-labelledby="kit-title" ${ref(mountDialog)} @cancel=${close} @close=${close}>
    <form
      @submit=${(event: Event) => {
        event.preventDefault();
        use(state);
      }}
    >
      <h2 id="kit-title">${w.title}</h2>
      ${
        filters.length === 0
          ? nothing
          : html`<p>${w.filters}</p>
            ${filters.map(
              ({ name }) => html`<label class="have"
                ><input
                  type="checkbox"
                  .checked=${live(now.filters.includes(name))}
                  @change=${(event: Event) => have(name, (event.target as HTMLInputElement).checked)}
                /><span>${name}</span></label
              >`,
            )}`
      }
      <label class="by-camera"
        ><span>${w.highestIso}</span
        ><select
          @change=${(event: Event) => {
            const label = isos[(event.target as HTMLSelectElement).selectedIndex];
            if (label !== undefined) entry.value = { ...now, highestIso: Number(label) };
          }}
        >
          ${isos.map((label) => html`<option .selected=${live(Number(label) === now.highestIso)}>${label}</option>`)}
        </select></label
      >
      <div class="actions">
        <button type="submit" class="big">${w.use}</button>
        <button type="button" @click=${close}>${fieldWords().meter.cancel}</button>
      </div>
    </form>
  </dialog>`;
}
