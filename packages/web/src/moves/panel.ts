// The panel of moves: lens and sensor, each move, what the interval holds, how fast it looks.

import type { Move } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { say } from '../parts/message.js';
import { moveCursor } from '../state/cursor.js';
import { impossible, made, pending } from '../state/plan.js';
import { put, replaceShoot, shoot, shown } from '../state/shoot.js';
import { AXES, type Draft, firstMove } from './edit.js';
import { PARTS } from './lanes.js';
import { safety } from './notes.js';
import { moveFields } from './one-move.js';
import { secondsText } from './tell.js';
import { moveWords } from './words.js';

const drafts = (): readonly Draft[] => {
  const moves = shown(['moves']);
  return Array.isArray(moves) ? moves : [];
};

function remove(index: number, axis: Move['axis']): void {
  replaceShoot({ ...shoot.peek(), moves: shoot.peek().moves.filter((_, i) => i !== index) });
  say(moveWords().removed[axis], { undo: true });
}

export function movePanel() {
  const w = moveWords();
  const moves = drafts();
  const free = AXES.filter((axis) => !moves.some((move) => move.axis === axis));
  return html`
    <p class="help">${moves.length === 0 ? `${w.still} ` : nothing}${w.intro}</p>
    ${moves.map((move, i) => {
      const axis = move.axis ?? 'pan';
      return html`<fieldset class="control group" id="c-moves-${i}" tabindex="-1">
        <legend><span>${w.axes[axis]}</span></legend>
        ${moveFields(move, axis, i)}
        <button type="button" class="plain small" @click=${() => remove(i, axis)}>${w.remove[axis]}</button>
      </fieldset>`;
    })}
    <div class="buttons">
      ${free.map(
        (axis) =>
          html`<button type="button" @click=${() => put(['moves'], [...moves, firstMove(axis)])}>
            ${w.add[axis]}
          </button>`,
      )}
    </div>
    ${moves.length === 0 ? nothing : safety(shoot.value.moves)}
    ${moves.length === 0 ? nothing : html`${budget()} ${speed()}`}
  `;
}

/** The tightest interval as a bar and in numbers. */
function budget() {
  const plan = impossible.value === undefined ? made.value : undefined;
  if (plan?.move === undefined) return nothing;
  const w = moveWords().budget;
  const { frame } = plan.move.tightest;
  const { intervalS } = plan.shoot;
  const parts = [...PARTS, 'slackS' as const].map((part) => [part, plan.frames[frame]?.[part] ?? 0] as const);
  const held = parts.filter(([part, timeS]) => part === 'slackS' || timeS > 0);
  return html`<section class="group ${pending.value ? 'stale' : ''}">
    <h3>${w.title}</h3>
    <p>${w.tightest(frame + 1, secondsText(intervalS))}</p>
    <div class="budget-bar" aria-hidden="true">
      ${held.map(
        ([part, timeS]) =>
          html`<div class=${part} .style=${`flex-grow:${Math.max(0, timeS) / intervalS}`}></div>`,
      )}
    </div>
    <dl class="budget">
      ${held.map(
        ([part, timeS]) => html`<div>
          <dt class=${part}>${w.parts[part]}</dt>
          <dd>${timeS < 5e-4 ? w.none : `${secondsText(timeS)} s`}</dd>
        </div>`,
      )}
    </dl>
    <p class="help">${w.where}</p>
    ${onChart(frame)}
  </section>`;
}

function speed() {
  const plan = impossible.value === undefined ? made.value : undefined;
  if (plan?.move === undefined) return nothing;
  const w = moveWords().speed;
  const { fastest } = plan.move;
  const unknown = plan.shoot.moves.every(({ axis }) => axis === 'slide') ? w.unknownSlide : w.unknown;
  return html`<section class="group ${pending.value ? 'stale' : ''}">
    <h3>${w.title}</h3>
    ${
      fastest === undefined
        ? html`<p class="help">${unknown}</p>`
        : html`<p>${w.crossing(secondsText(fastest.crossingS), fastest.frame + 1)}</p>
            ${onChart(fastest.frame)}`
    }
  </section>`;
}

/** On a small screen the chart is far above: it comes into view. */
function showOnChart(frame: number): void {
  moveCursor(frame);
  document.querySelector('.chart')?.scrollIntoView({ block: 'nearest' });
}

function onChart(frame: number) {
  return html`<button type="button" class="small" @click=${() => showOnChart(frame)}>
    ${moveWords().budget.show(frame + 1)}
  </button>`;
}
