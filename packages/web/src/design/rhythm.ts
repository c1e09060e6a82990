// How often, how long, and what the card and the battery hold.

import { html } from 'lit-html';
import { numberControl, tickControl } from '../parts/controls.js';
import { words } from '../words/words.js';

export function rhythmPanel() {
  const w = words().rhythm;
  return html`
    <div class="pair">
      ${numberControl({ path: ['intervalS'], label: w.interval, unit: w.secondsUnit, cures: [] })}
      ${numberControl({ path: ['camera', 'gapS'], label: w.gap, unit: w.secondsUnit })}
    </div>
    ${numberControl({ path: ['clipFps'], label: w.fps, unit: w.fpsUnit })}
    ${tickControl({ path: ['camera', 'darkFrame'], label: w.darkFrame })}
    <div class="pair">
      ${numberControl({ path: ['camera', 'frameMB'], label: w.frameMB, unit: 'MB', placeholder: words().notSet })}
      ${numberControl({ path: ['camera', 'cardGB'], label: w.cardGB, unit: 'GB', placeholder: words().notSet })}
    </div>
    ${numberControl({
      path: ['camera', 'batteryFrames'],
      label: w.battery,
      unit: w.frames,
      placeholder: words().notSet,
    })}
  `;
}
