// How often, how long, and what the card and the battery hold.

import { html } from 'lit-html';
import { loadMoves, moving } from '../moves/load.js';
import { afterPaint } from '../parts/after-paint.js';
import { numberControl, remediesFor, tickControl } from '../parts/controls.js';
import { inPercent } from '../parts/percent.js';
import { shoot } from '../state/shoot.js';
import { words } from '../words/words.js';
import { bracketFields } from './bracket.js';
import { putInterval } from './interval.js';

export function rhythmPanel() {
  const w = words().rhythm;
  return html`
    <div class="pair">
      ${numberControl({ path: ['intervalS'], label: w.interval, unit: w.secondsUnit, step: 0.5, choose: putInterval })}
      ${numberControl({ path: ['clipFps'], label: w.fps, unit: w.fpsUnit })}
    </div>
    ${remediesFor(['longer-interval', 'more-frames', 'fewer-frames', 'shorter-write'])}
    <details class="more" @toggle=${({ target }: Event) => {
      loadMoves();
      if ((target as HTMLDetailsElement).open)
        afterPaint(() => document.querySelector<HTMLInputElement>('#clip-wanted')?.select());
    }}>
      <summary>${w.fromClip}</summary>
      ${moving.value?.clipFields()}
    </details>
    ${numberControl({ path: ['camera', 'gapS'], label: w.gap, unit: w.secondsUnit, step: 0.1 })}
    ${tickControl({ path: ['camera', 'darkFrame'], label: w.darkFrame })} ${remediesFor(['no-dark-frame'])}
    ${bracketFields(shoot.value.camera.stepsPerStop)}
    <div class="pair">
      ${numberControl({ path: ['camera', 'frameMB'], label: w.frameMB, unit: 'MB', placeholder: words().notSet })}
      ${numberControl({ path: ['camera', 'cardGB'], label: w.cardGB, unit: 'GB', step: 16, placeholder: words().notSet })}
    </div>
    <div class="pair">
      ${numberControl({
        path: ['camera', 'batteryFrames'],
        label: w.battery,
        unit: w.frames,
        step: 50,
        placeholder: words().notSet,
      })}
      ${numberControl({
        path: ['camera', 'coldFactor'],
        label: w.cold,
        unit: '%',
        step: 5,
        placeholder: '100',
        ...inPercent,
        help: w.coldHelp,
      })}
    </div>
  `;
}
