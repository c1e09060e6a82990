// How far a move goes, in the way that suits what is known, and what comes of it.

import type { MoveAxis, TurnBy } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { type Choice, idOf, numberControl, selectControl } from '../parts/controls.js';
import { impossible, made, pending } from '../state/plan.js';
import { faultsAt, put, reading, shown } from '../state/shoot.js';
import { words } from '../words/words.js';
import { BY_KINDS, type ByKind, type Draft, firstBy, kindOf } from './edit.js';
import { framePoints } from './frame-points.js';
import { some } from './optics.js';
import { goneText } from './tell.js';
import { moveWords } from './words.js';

export function howFar(move: Draft, axis: MoveAxis, index: number) {
  const w = moveWords().by;
  const path = ['moves', index, 'by'];
  const kind = kindOf(move.by) ?? BY_KINDS[axis][0] ?? 'deg';
  const travel = made.value?.move?.travels[index];
  const same = reading.value.kind === 'ok' && !pending.value && impossible.value === undefined;
  const faults = faultsAt(path).filter((fault) => fault.path.length === path.length);
  return html`<div class="control">
      <label for=${idOf(path)}>${w.label}</label>
      <select
        id=${idOf(path)}
        @change=${(event: Event) => {
          const chosen = BY_KINDS[axis][(event.target as HTMLSelectElement).selectedIndex] ?? 'deg';
          put(path, firstBy(chosen, axis, travel?.length ?? 1));
        }}
      >
        ${BY_KINDS[axis].map((one) => html`<option .selected=${one === kind}>${w[one]}</option>`)}
      </select>
    </div>
    ${FIELDS[kind](axis, index)}
    ${faults.map(({ text }) => html`<p class="fault">${kind === 'points' ? moveWords().points.needs : text}</p>`)}
    ${
      travel !== undefined && same && kind !== 'deg' && kind !== 'm'
        ? html`<p class="help">${w.comes(goneText(travel.length, travel))}</p>`
        : nothing
    }`;
}

type Fields = (axis: MoveAxis, index: number) => unknown;

/** The inputs of each way. */
const FIELDS: Readonly<Record<ByKind, Fields>> = {
  deg: (axis, i) => {
    const w = moveWords().by;
    const turn = axis === 'tilt' ? 'tilt' : 'pan';
    return numberControl({
      path: ['moves', i, 'by', 'deg'],
      label: w.turn[turn],
      unit: '°',
      help: w.turnHelp[turn],
      store: some,
    });
  },
  m: (_, i) => {
    const w = moveWords().by;
    const toward = shown(['moves', i, 'toward']) === 'forward' ? 'forward' : 'side';
    return numberControl({
      path: ['moves', i, 'by', 'm'],
      label: w.way,
      unit: 'm',
      help: w.wayHelp[toward],
      store: some,
    });
  },
  bearings: (_, i) => {
    const w = moveWords().by;
    const path = ['moves', i, 'by'];
    type Way = NonNullable<Extract<TurnBy, { fromBearingDeg: number }>['way']>;
    return html`<div class="pair">
        ${numberControl({ path: [...path, 'fromBearingDeg'], label: w.from, unit: '°', store: some })}
        ${numberControl({ path: [...path, 'toBearingDeg'], label: w.to, unit: '°', store: some })}
      </div>
      ${selectControl<Way>({
        path: [...path, 'way'],
        label: w.round,
        value: (shown([...path, 'way']) as Way | undefined) ?? 'shorter',
        choices: (['shorter', 'clockwise', 'counterclockwise'] as const).map(
          (way): Choice<Way> => [way, w.ways[way]],
        ),
      })}`;
  },
  size: (_, i) => {
    const w = moveWords().by;
    const path = ['moves', i, 'by'];
    return html`<div class="pair">
      ${numberControl({ path: [...path, 'sizeM'], label: w.sizeM, unit: 'm', help: w.sizeHelp, store: some })}
      ${numberControl({ path: [...path, 'distanceM'], label: w.distanceM, unit: 'm', store: some })}
    </div>`;
  },
  track: (_, i) => {
    const w = moveWords().by;
    const path = ['moves', i, 'by'];
    const none = words().notSet;
    return html`${numberControl({ path: [...path, 'trackM'], label: w.trackM, unit: 'm', store: some })}
      <div class="pair">
        ${numberControl({ path: [...path, 'carriageM'], label: w.carriageM, unit: 'm', placeholder: none })}
        ${numberControl({ path: [...path, 'marginM'], label: w.marginM, unit: 'm', placeholder: none })}
      </div>`;
  },
  points: (axis, i) => framePoints(axis, i),
};
