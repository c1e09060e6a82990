// From the desk to the field.

import type { PlanMade } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { askFirst } from '../parts/ask.js';
import { clock } from '../parts/clock.js';
import { otherDayNow } from '../parts/day.js';
import { hush, say } from '../parts/message.js';
import { printable, printCard } from '../print.js';
import { gaveUp, impossible, made, pending } from '../state/plan.js';
import { faults, isFirst, reading, shoot } from '../state/shoot.js';
import { standing } from '../state/tab.js';
import { words } from '../words/words.js';
import { bringBack, endRun, inField, type Run, run, startRun } from './run.js';

const goOn = () => {
  hush();
  inField.value = true;
};

/** When to be there, and how far the evening may lie off its forecast; before the first plan without its numbers. */
function beforeGoing(plan: PlanMade | undefined) {
  const w = words();
  const ev = (value: number | undefined) => (value === undefined ? '…' : w.number(value, 1));
  const { setUpAt, reserveDarkEv, reserveBrightEv, eveningsHeldShare } = plan?.summary ?? {};
  const day = plan && otherDayNow(plan);
  return html`${day === undefined ? nothing : html`<p class="day">${day}</p>`}
    <p><b>${w.field.setUp(setUpAt === undefined ? '…' : clock(setUpAt, false))}</b> ${w.field.intro}</p>
    <p class="help">
      <b>${w.field.reserveName}</b>
      ${w.field.reserve({
        darker: ev(reserveDarkEv),
        brighter: ev(reserveBrightEv),
        held: eveningsHeldShare === undefined ? undefined : eveningsHeldShare * 100,
        dawn: (plan?.shoot ?? shoot.value).direction === 'dawn',
      })}
    </p>`;
}

/** What would end the run under way asks first, and can be taken back. */
function instead(under: Run | undefined, yes: string, told: string, act: () => void): void {
  const w = words().field;
  hush();
  if (under === undefined) {
    act();
    return;
  }
  const pressed = under.events.length;
  askFirst({
    text: () => w.underWay(under.mode === 'rehearsal', pressed),
    yes,
    no: w.keepIt,
    act: () => {
      act();
      say(told, { undo: { name: w.bringBack, act: bringBack } });
    },
  });
}

export function toFieldSection() {
  const w = words().field;
  const plan = made.value;
  const under = run.value;
  const wrong = reading.value.kind === 'wrong';
  const possible = impossible.value === undefined && gaveUp.value === undefined && !wrong;
  const mine = standing.value === 'first';
  // Nobody takes along a plan that the next moment replaces.
  const ready = plan !== undefined && possible && !pending.value && mine;
  const begin = (mode: Run['mode']) => () => {
    if (plan !== undefined) instead(under, w.replaceIt, w.replaced, () => startRun(plan, mode));
  };
  const rehearsal = under?.mode === 'rehearsal';
  return html`<section class="to-field">
    ${
      under === undefined
        ? nothing
        : html`<button type="button" class="primary" @click=${goOn}>${rehearsal ? w.resumeRehearsal : w.resume}</button>`
    }
    <button type="button" class=${under === undefined && !isFirst.value ? 'primary' : ''} ?disabled=${!ready} @click=${begin('live')}>
      ${w.start}
    </button>
    <button type="button" ?disabled=${!printable.value} @click=${() => void printCard()}>${words().files.print}</button>
    <button type="button" ?disabled=${!ready} @click=${begin('rehearsal')}>${w.rehearse}</button>
    ${
      under === undefined
        ? nothing
        : html`<button
            type="button"
            class="plain"
            ?disabled=${!mine}
            @click=${() => instead(under, w.endIt, w.endedIt, endRun)}
          >
            ${rehearsal ? w.finishRehearsal : w.finish}
          </button>`
    }
    ${possible ? beforeGoing(plan) : html`<p class="help">${faults.value.length > 0 ? w.faultFirst : wrong ? '\u2007' : w.noPlan}</p>`}
  </section>`;
}
