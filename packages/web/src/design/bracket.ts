// Several exposures in every interval, for merging later.

import type { Camera } from '@evenfall/core';
import { html, nothing } from 'lit-html';
import { type Choice, idOf, numberControl, selectControl } from '../parts/controls.js';
import { faultsAt, put, shown } from '../state/shoot.js';
import { words } from '../words/words.js';

type Bracket = NonNullable<Camera['bracket']>;

const PATH = ['camera', 'bracket'];
/** Two stops apart, as most merge them. */
const FIRST = { frames: 3, stepEv: 2 };
/** Every click as far as this, then whole stops. Our choice. */
const FINE_STOPS = 3;
const MOST_STOPS = 5;

/** "1/3", "1", "1 2/3": as dials are marked. */
function stopsText(clicks: number, stepsPerStop: number): string {
  const [whole, rest] = [Math.floor(clicks / stepsPerStop), clicks % stepsPerStop];
  const part = rest === 0 ? '' : `${rest}/${stepsPerStop}`;
  return [whole === 0 && part !== '' ? '' : String(whole), part].filter((text) => text !== '').join(' ');
}

function steps({ stepEv }: Bracket, stepsPerStop: number): Choice<number>[] {
  const clicks = Array.from({ length: FINE_STOPS * stepsPerStop }, (_, i) => i + 1);
  for (let stops = FINE_STOPS + 1; stops <= MOST_STOPS; stops++) clicks.push(stops * stepsPerStop);
  const inUse = Math.round(stepEv * stepsPerStop);
  const isOnDial = Math.abs(stepEv * stepsPerStop - inUse) < 1e-6;
  if (isOnDial && inUse > 0 && !clicks.includes(inUse)) clicks.push(inUse);
  const choices = clicks
    .toSorted((a, b) => a - b)
    .map(
      (n): Choice<number> => [
        isOnDial && n === inUse ? stepEv : n / stepsPerStop,
        words().bracket.stops(stopsText(n, stepsPerStop)),
      ],
    );
  return isOnDial ? choices : [[stepEv, words().bracket.stops(words().plain(stepEv))], ...choices];
}

export function bracketFields(stepsPerStop: number) {
  const w = words().bracket;
  const bracket = shown(PATH) as Bracket | undefined;
  return html`<div role="group" id=${idOf(PATH)} tabindex="-1" aria-label=${w.title} class="fields-in">
    ${selectControl<number>({
      path: [...PATH, 'frames'],
      label: w.exposures,
      cures: ['fewer-exposures'],
      value: bracket?.frames ?? 1,
      choices: [1, 3, 5, 7, 9].map((n) => [n, w.count(n)] as const),
      help: bracket === undefined ? '' : w.help,
      choose: (frames) => put(PATH, frames === 1 ? undefined : { ...FIRST, ...bracket, frames }),
    })}
    ${
      bracket === undefined
        ? nothing
        : html`<div class="pair">
            ${selectControl<number>({
              path: [...PATH, 'stepEv'],
              label: w.apart,
              cures: ['closer-exposures'],
              choices: steps(bracket, stepsPerStop),
              turns: 1,
            })}
            ${numberControl({
              path: [...PATH, 'betweenS'],
              label: w.pause,
              unit: words().rhythm.secondsUnit,
              step: 0.1,
              placeholder: '0',
            })}
          </div>`
    }
    ${faultsAt(PATH)
      .filter(({ path }) => path.length === PATH.length)
      .map(({ text }) => html`<p class="fault">${text}</p>`)}
  </div>`;
}
