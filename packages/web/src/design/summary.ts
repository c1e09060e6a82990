// The evening in figures: each with a plain warning where it falls short, and what it was before the last change.

import { framesHeld, type PlanMade } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { moving } from '../moves/load.js';
import { clock } from '../parts/clock.js';
import { shortDay } from '../parts/day.js';
import { planBefore } from '../state/before.js';
import { impossible, made, nothingToShow, pending } from '../state/plan.js';
import { faults, shoot } from '../state/shoot.js';
import { words } from '../words/words.js';

interface Figure {
  readonly name: string;
  readonly value: string;
  readonly short?: string; // what is the matter, where it falls short
  readonly more?: string;
  readonly was?: string; // before the last change, where that made a difference
}

// Before the first plan the figures have their places already, about as wide: nothing jumps when it comes.
function blanks(): Figure[] {
  const w = words().summary;
  const { frameMB, batteryFrames } = shoot.value.camera;
  const mark = nothingToShow.value ? '–' : '…';
  const blank = (name: string, digits: number) => ({ name, value: mark.padEnd(digits, '\u2007') });
  return [
    blank(w.cues, 2),
    blank(w.error, 7),
    blank(w.frames, 4),
    blank(w.clip, 6),
    ...(frameMB === undefined ? [] : [blank(w.card, 12)]),
    ...(batteryFrames === undefined ? [] : [blank(w.battery, 12)]),
    blank(w.time, 12),
    blank(w.zone, 12),
  ];
}

const cues = ({ summary }: PlanMade): Figure => {
  const w = words();
  return { name: w.summary.cues, value: w.number(summary.cueCount, 0) };
};

const error = ({ summary }: PlanMade): Figure => {
  const w = words();
  return { name: w.summary.error, value: w.summary.errorValue(w.number(summary.worstErrorEv, 2)) };
};

function cardAndBattery({ summary, shoot: { camera } }: PlanMade): Figure[] {
  const w = words();
  const { cardGB } = camera;
  const { onCharge } = framesHeld(camera);
  const { cardFullAt, batteryOutAt, cardNeededGB: needGB } = summary;
  const list: Figure[] = [];
  if (needGB !== undefined) {
    const need = w.number(needGB, 1);
    list.push({
      name: w.summary.card,
      value: cardGB === undefined ? w.summary.cardNeed(need) : w.summary.cardValue(need, w.plain(cardGB)),
      ...(cardFullAt && { short: w.summary.full(clock(cardFullAt, false)) }),
    });
  }
  if (onCharge !== undefined) {
    list.push({
      name: w.summary.battery,
      value: w.summary.batteryValue(summary.frameCount, onCharge),
      ...(batteryOutAt && { short: w.summary.spent(clock(batteryOutAt, false)) }),
    });
  }
  return list;
}

function figuresOf(plan: PlanMade): Figure[] {
  const { summary } = plan;
  const w = words();
  return [
    cues(plan),
    error(plan),
    {
      name: w.summary.frames,
      value: String(summary.frameCount),
      ...(plan.shoot.camera.bracket && { more: w.bracket.each(plan.shoot.camera.bracket.frames) }),
    },
    { name: w.summary.clip, value: w.summary.clipValue(w.number(summary.clipS, 1)) },
    ...cardAndBattery(plan),
    ...(moving.value?.moveFigures(plan) ?? []),
    {
      name: w.summary.time,
      value: `${shortDay(plan)}${clock(summary.startAt, false)} – ${clock(summary.endAt, false)}`,
    },
    { name: w.summary.zone, value: plan.shoot.place.timeZone ?? w.place.zoneUnknown },
  ];
}

/** Each figure with what it was before the last change. */
function compared(of: (plan: PlanMade) => Figure[]): Figure[] {
  const [plan, before] = [made.value, planBefore.value];
  if (plan === undefined) return [];
  const old = before === undefined ? [] : of(before);
  return of(plan).map((figure) => {
    const was = old.find(({ name }) => name === figure.name)?.value;
    return was === undefined || was === figure.value ? figure : { ...figure, was };
  });
}

/** Why the figures are not those of what stands in the controls, and whose they are. */
function notCurrent() {
  const { problem, summary } = words();
  const why =
    faults.value.length > 0 ? problem.wrong : impossible.value && problem.noneFor[impossible.value.reason];
  if (why === undefined) return nothing;
  return html`<p class="fault">${why}${made.value === undefined ? nothing : `. ${summary.ofLastPlan}`}</p>`;
}

const nameView = ({ name, was }: Figure) =>
  html`${name}${was === undefined ? nothing : html` <s><span class="unseen">${words().summary.before} </span>${was}</s>`}`;

const valueView = ({ value, more, short }: Figure) =>
  html`${value}${more === undefined ? nothing : `, ${more}`}${short ? html` <strong>${short}</strong>` : nothing}`;

export function summaryStrip() {
  const w = words().summary;
  const figures = made.value === undefined ? blanks() : compared(figuresOf);
  return html`<section class="summary" aria-label=${w.label} aria-busy=${pending.value}>
    ${notCurrent()}
    <dl>
      ${figures.map(
        (figure) => html`<div class=${figure.short ? 'figure short' : 'figure'}>
          <dt>${nameView(figure)}</dt>
          <dd>${valueView(figure)}</dd>
        </div>`,
      )}
    </dl>
  </section>`;
}

const miniFigure = (one: Figure) => html`<span class=${one.short ? 'figure short' : 'figure'}>
  <span class="name">${nameView(one)}</span>
  <span class="value">${valueView(one)}</span>
</span>`;

/** What stays in sight: cues and the largest error, */
export const miniFigures = () =>
  html`<span class="mini-figures">${compared((plan) => [cues(plan), error(plan)]).map(miniFigure)}</span>`;

/** and in small type what runs out. */
export function miniRest() {
  const w = words().summary;
  const rest = [w.frames, w.clip, w.card, w.battery];
  return html`<span class="mini-rest">
      ${(made.value ? figuresOf(made.value) : []).filter(({ name }) => rest.includes(name)).map(miniFigure)}
    </span>`;
}
