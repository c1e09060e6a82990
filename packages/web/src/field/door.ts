// From the desk to the field.

import type { PlanMade } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { hush } from '../parts/message.js';
import { clock } from '../parts/text.js';
import { impossible, made, pending } from '../state/plan.js';
import { reading } from '../state/shoot.js';
import { words } from '../words/words.js';
import { endRun, inField, run, startRun } from './run.js';

const goOn = () => {
  hush();
  inField.value = true;
};

/** When to be there, and how far the evening may lie off its forecast. */
function beforeGoing({ summary, shoot }: PlanMade) {
  const w = words();
  const ev = (value: number) => w.number(value, 1);
  return html`<p><b>${w.field.setUp(clock(summary.setUpAt, false))}</b> ${w.field.intro}</p>
    <p class="help">
      ${w.field.reserve({
        darker: ev(summary.reserveDarkEv),
        brighter: ev(summary.reserveBrightEv),
        held: summary.eveningsHeldShare * 100,
        dawn: shoot.direction === 'dawn',
      })}
    </p>`;
}

export function fieldDoor() {
  const w = words().field;
  const plan = made.value;
  const wrong = reading.value.kind === 'wrong';
  const possible = plan !== undefined && impossible.value === undefined && !wrong;
  // Nobody takes along a plan that the next moment replaces.
  const ready = possible && !pending.value;
  const begin = (mode: 'live' | 'rehearsal') => () => {
    hush();
    if (plan !== undefined) startRun(plan, mode);
  };
  return html`<section class="door">
    <button type="button" class="primary" ?disabled=${!ready} @click=${begin('live')}>${w.start}</button>
    <button type="button" ?disabled=${!ready} @click=${begin('rehearsal')}>${w.rehearse}</button>
    ${
      run.value === undefined
        ? nothing
        : html`<button type="button" @click=${goOn}>${w.resume}</button>
            <button type="button" class="plain" @click=${endRun}>${w.finish}</button>`
    }
    ${possible ? beforeGoing(plan) : html`<p class="help">${wrong ? w.faultFirst : w.noPlan}</p>`}
  </section>`;
}
