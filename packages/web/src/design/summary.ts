// Frames, clip, card, battery: always in view, with a plain warning before they fall short.

import { framesOnCharge } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { moving } from '../moves/load.js';
import { clock } from '../parts/clock.js';
import { shortDay } from '../parts/day.js';
import { impossible, made, nothingToShow, pending } from '../state/plan.js';
import { reading, shoot } from '../state/shoot.js';
import { words } from '../words/words.js';

interface Figure {
  readonly name: string;
  readonly value: string;
  readonly short?: string; // what is the matter, where it falls short
}

interface Figures {
  readonly always: readonly Figure[]; // never out of view
  readonly rest: readonly Figure[]; // on a small screen they scroll away
}

// Before the first plan the figures have their places already, about as wide: nothing jumps when it comes.
function blanks(): Figures {
  const w = words().summary;
  const { frameMB, batteryFrames } = shoot.value.camera;
  const mark = nothingToShow.value ? '–' : '…';
  const blank = (name: string, digits: number) => ({ name, value: mark.padEnd(digits, '\u2007') });
  return {
    always: [
      blank(w.frames, 4),
      blank(w.clip, 6),
      ...(frameMB === undefined ? [] : [blank(w.card, 12)]),
      ...(batteryFrames === undefined ? [] : [blank(w.battery, 12)]),
    ],
    rest: [blank(w.time, 12), blank(w.zone, 12), blank(w.cues, 2), blank(w.error, 7)],
  };
}

function figures(): Figures {
  const plan = made.value;
  if (plan === undefined) return blanks();
  const { summary } = plan;
  const w = words();
  const { cardGB, batteryFrames, coldFactor } = plan.shoot.camera;
  const { cardFullAt, batteryOutAt } = summary;
  const needGB = summary.cardNeededGB;
  const always = [
    { name: w.summary.frames, value: String(summary.frameCount) },
    { name: w.summary.clip, value: w.summary.clipValue(w.number(summary.clipS, 1)) },
    ...(needGB === undefined
      ? []
      : [
          {
            name: w.summary.card,
            value:
              cardGB === undefined
                ? w.summary.cardNeed(w.number(needGB, 1))
                : w.summary.cardValue(w.number(needGB, 1), String(cardGB)),
            ...(cardFullAt && { short: w.summary.full(clock(cardFullAt, false)) }),
          },
        ]),
    ...(moving.value?.moveFigures(plan) ?? []),
    ...(batteryFrames === undefined
      ? []
      : [
          {
            name: w.summary.battery,
            value: w.summary.batteryValue(summary.frameCount, framesOnCharge(batteryFrames, coldFactor)),
            ...(batteryOutAt && { short: w.summary.spent(clock(batteryOutAt, false)) }),
          },
        ]),
  ];
  const rest = [
    {
      name: w.summary.time,
      value: `${shortDay(plan)}${clock(summary.startAt, false)} – ${clock(summary.endAt, false)}`,
    },
    { name: w.summary.zone, value: plan.shoot.place.timeZone ?? w.place.zoneUnknown },
    { name: w.summary.cues, value: String(summary.cueCount) },
    { name: w.summary.error, value: w.summary.errorValue(w.number(summary.worstErrorEv, 2)) },
  ];
  return { always, rest };
}

/** Why the figures are not those of what stands in the controls, and whose they are. */
function notCurrent() {
  const { problem, summary } = words();
  const why =
    reading.value.kind === 'wrong'
      ? problem.wrong
      : impossible.value && problem.noneFor[impossible.value.reason];
  if (why === undefined) return nothing;
  return html`<p class="fault">${why}${made.value === undefined ? nothing : `. ${summary.ofLastPlan}`}</p>`;
}

const figureView = ({ name, value, short }: Figure) => html`<div class=${short ? 'short' : ''}>
  <dt>${name}</dt>
  <dd>${value}${short ? html` <strong>${short}</strong>` : nothing}</dd>
</div>`;

export function summaryStrip() {
  const w = words().summary;
  const { always, rest } = figures();
  return html`<section class="summary" aria-label=${w.label} aria-busy=${pending.value}>
    <div class="always">
      ${notCurrent()}
      <dl>${always.map(figureView)}</dl>
    </div>
    <dl>${rest.map(figureView)}</dl>
  </section>`;
}
