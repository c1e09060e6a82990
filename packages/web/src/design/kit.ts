// The camera's limits as its dials are marked, and the filters in the bag.

import type { StepsPerStop } from '@evenfall/core';
import { html } from 'lit-html';
import { loadMoves, moving } from '../moves/load.js';
import { type Cure, selectControl, tickControl } from '../parts/controls.js';
import type { Path } from '../state/path.js';
import { made } from '../state/plan.js';
import { put, shoot, shown } from '../state/shoot.js';
import { words } from '../words/words.js';
import { marks, onDial } from './dial.js';
import { filterList } from './filters.js';
import { kitsView } from './kits.js';

/** Which way the marks of a dial are listed: the shutter's from the longest time, the others upward. */
const LESS_FIRST = { shutter: -1, aperture: 1, iso: 1 } as const;

export function kitPanel() {
  if (made.value !== undefined) loadMoves(); // lens and stars are told by that part, after the first plan
  const w = words().kit;
  const { camera, crew } = shoot.value;
  const steps = camera.stepsPerStop;
  const aperture = shown(['camera', 'aperture']);
  const moves = typeof aperture === 'object';
  const dial = (
    control: 'shutter' | 'aperture',
    path: Path,
    label: string,
    cures: readonly Cure[],
    text: (mark: string) => string,
  ) =>
    selectControl({
      path,
      label,
      cures,
      turns: LESS_FIRST[control],
      choices: marks(control, steps, String(shown(path)), text),
    });
  const iso = (end: 'lowest' | 'highest', label: string, cures: readonly Cure[]) => {
    const path = ['camera', 'iso', end];
    return selectControl({
      path,
      label,
      cures,
      turns: LESS_FIRST.iso,
      value: String(shown(path)),
      choices: marks('iso', steps, String(shown(path)), (mark) => mark),
      choose: (mark) => put(path, Number(mark)),
    });
  };
  const stop = (mark: string) => `f/${mark}`;
  const apertureCures = ['wider-aperture', 'narrower-aperture'] as const;
  return html`
    <div class="pair dials">
      ${iso('lowest', w.isoLowest, [])} ${iso('highest', w.isoHighest, ['higher-iso'])}
    </div>
    <div class="pair dials">
      ${dial('shutter', ['camera', 'shutter', 'shortest'], w.shortest, ['faster-shutter'], w.seconds)}
      ${dial('shutter', ['camera', 'shutter', 'longest'], w.longest, ['longer-shutter', 'shorter-shutter'], w.seconds)}
    </div>
    ${moving.value?.starAdvice()}
    ${
      moves
        ? html`<div class="pair dials">
            ${dial('aperture', ['camera', 'aperture', 'widest'], w.widest, ['wider-aperture'], stop)}
            ${dial('aperture', ['camera', 'aperture', 'narrowest'], w.narrowest, ['narrower-aperture'], stop)}
          </div>`
        : dial('aperture', ['camera', 'aperture'], w.aperture, apertureCures, stop)
    }
    ${tickControl({
      path: ['apertureMoves'],
      label: w.apertureMoves,
      value: moves,
      choose: (on) => {
        const held = shoot.peek().camera.aperture;
        const widest = typeof held === 'string' ? held : held.widest;
        put(['camera', 'aperture'], on ? { widest, narrowest: widest } : widest);
      },
    })}
    ${filterList()} ${moving.value?.opticsFields()}
    ${selectControl<StepsPerStop>({
      path: ['camera', 'stepsPerStop'],
      label: w.dial,
      choices: [
        [3, w.thirds],
        [2, w.halves],
      ],
      choose: (to) => put(['camera'], onDial(shoot.peek().camera, to)),
    })}
    ${crew === 'rig' || camera.bulb ? tickControl({ path: ['camera', 'bulb'], label: w.bulb }) : ''} ${kitsView()}
  `;
}
