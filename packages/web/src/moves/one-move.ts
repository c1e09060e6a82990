// One move: how far, how it starts and ends, whether it stops for the shutter, and what its motor can do.

import type { Ease, Move, MoveAxis } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { type Choice, numberControl, radioControl, remediesFor, selectControl } from '../parts/controls.js';
import { asPercent, asShare } from '../parts/percent.js';
import { faultsAt, put, shown } from '../state/shoot.js';
import { words } from '../words/words.js';
import type { Draft } from './edit.js';
import { howFar } from './how-far.js';
import { some } from './optics.js';
import { moveWords } from './words.js';

export function moveFields(move: Draft, axis: MoveAxis, index: number) {
  const at = ['moves', index];
  const w = moveWords();
  return html`
    ${howFar(move, axis, index)}
    ${remediesFor(['shorter-move', 'longer-move'])}
    ${axis === 'slide' ? alongSlide(index) : nothing}
    ${easeFields(index)}
    ${radioControl<Move['mode']>({
      path: [...at, 'mode'],
      label: w.mode,
      value: (shown([...at, 'mode']) as Move['mode']) ?? 'stopped',
      choices: [
        ['stopped', w.modes.stopped],
        ['continuous', w.modes.continuous],
      ],
    })}
    ${remediesFor(['stop'])} ${gearFields(axis, index)}
  `;
}

function alongSlide(index: number) {
  const w = moveWords();
  const path = ['moves', index, 'toward'];
  return html`<div class="pair">
    ${selectControl<'side' | 'forward'>({
      path,
      label: w.toward,
      value: (shown(path) as 'side' | 'forward') ?? 'side',
      choices: [
        ['side', w.towards.side],
        ['forward', w.towards.forward],
      ],
    })}
    ${numberControl({
      path: ['moves', index, 'nearestM'],
      label: w.nearest,
      unit: 'm',
      placeholder: words().notSet,
      help: w.nearestHelp,
    })}
  </div>`;
}

type EaseName = 'linear' | 'smoothstep' | 'quintic' | 'trapezoid';

function easeFields(index: number) {
  const w = moveWords();
  const path = ['moves', index, 'ease'];
  const ease = (shown(path) as Ease | undefined) ?? 'smoothstep';
  const names: readonly EaseName[] = ['linear', 'smoothstep', 'quintic', 'trapezoid'];
  return html`${selectControl<EaseName>({
    path,
    label: w.ease,
    value: typeof ease === 'string' ? ease : 'trapezoid',
    choices: names.map((name): Choice<EaseName> => [name, w.eases[name]]),
    choose: (name) => put(path, name === 'trapezoid' ? { trapezoid: 0.25 } : name),
  })}
    ${
      typeof ease === 'string'
        ? nothing
        : numberControl({
            path: [...path, 'trapezoid'],
            label: w.slope,
            unit: w.slopeUnit,
            show: asPercent,
            store: (value) => asShare(some(value)),
          })
    }`;
}

function gearFields(axis: MoveAxis, index: number) {
  const w = moveWords().gear;
  const gear = ['moves', index, 'gear'];
  const unit = axis === 'slide' ? 'm' : 'deg';
  const key = axis === 'slide' ? 'M' : 'Deg';
  const notSet = words().notSet;
  const faults = faultsAt(gear).filter(({ path }) => path.length === gear.length);
  const optional = (name: string, label: string, unitText: string, help = '') =>
    numberControl({ path: [...gear, name], label, unit: unitText, placeholder: notSet, help });
  return html`<div class="group" id="c-moves-${index}-gear" tabindex="-1" role="group" aria-label=${w.title}>
    <div class="pair">
      ${optional(`topSpeed${key}PerS`, w.topSpeed, w.perS[unit])}
      ${numberControl({ path: [...gear, 'settleS'], label: w.settle, unit: w.seconds, cures: ['shorter-settle'] })}
    </div>
    ${faults.length > 0 ? html`<p class="fault">${w.needed}</p>` : nothing}
    <details class="more">
      <summary>${w.more}</summary>
      <div class="fields">
        ${optional('moveS', w.step, w.seconds)}
        <div class="pair">
          ${optional(`acceleration${key}PerS2`, w.acceleration, w.perS2[unit])}
          ${optional(`smallestStep${key}`, w.smallest, w.unit[unit])}
        </div>
      </div>
    </details>
  </div>`;
}
