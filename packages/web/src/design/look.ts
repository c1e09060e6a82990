// How dark the night may look, who turns the dials, and what they are spared.

import type { Crew, Look } from '@evenfall/core';
import { html } from 'lit-html';
import { numberControl, radioControl, remediesFor } from '../parts/controls.js';
import { put, putAll, shown } from '../state/shoot.js';
import { words } from '../words/words.js';

/** Other hands, other defaults: what was set for a person would bind a rig. */
function handTo(crew: Crew): void {
  putAll([
    [['crew'], crew],
    [['limits'], undefined],
    [['weights'], undefined],
    ...(crew === 'hand' ? [[['camera', 'bulb'], false] as const] : []),
  ]);
}

export function lookPanel() {
  const w = words().look;
  const look = shown(['look']) as Look;
  return html`
    ${
      Array.isArray(look)
        ? html`<p class="help">${w.table(look.length)}</p>
            <button type="button" class="wide" @click=${() => put(['look'], { nightEv: -1.5 })}>
              ${w.tableDrop}
            </button>`
        : numberControl({
            path: ['look', 'nightEv'],
            label: w.nightEv,
            unit: w.stops,
            step: 0.5,
            signed: true,
            help: w.nightHelp,
            cures: ['darker-look'],
          })
    }
    ${radioControl<Crew>({
      path: ['crew'],
      label: w.crew,
      choices: [
        ['hand', w.hand],
        ['rig', w.rig],
      ],
      choose: handTo,
    })}
    <div class="pair">
      ${numberControl({ path: ['limits', 'toleranceEv'], label: w.tolerance, unit: w.stops, step: 0.05 })}
      ${numberControl({ path: ['limits', 'largestStepEv'], label: w.largestStep, unit: w.stops, step: 0.25 })}
    </div>
    ${remediesFor(['looser-tolerance', 'larger-steps'])}
    <div class="pair">
      ${numberControl({
        path: ['limits', 'secondsBetweenCues'],
        label: w.spacing,
        unit: words().rhythm.secondsUnit,
        step: 10,
        cures: ['closer-cues'],
      })}
      ${numberControl({
        path: ['limits', 'maxFilterChanges'],
        label: w.maxFilterChanges,
        placeholder: w.noLimit,
      })}
    </div>
    ${numberControl({
      path: ['limits', 'framesLostPerFilterChange'],
      label: w.framesLost,
      unit: words().rhythm.frames,
    })}
  `;
}
