// The chart in numbers, for whoever cannot see it or wants to copy it.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { moving } from '../moves/load.js';
import { clock } from '../parts/clock.js';
import { changeSpoken, settingText } from '../parts/text.js';
import { cursor, moveCursor } from '../state/cursor.js';
import { made } from '../state/plan.js';
import { words } from '../words/words.js';

const open = signal(false);
const ROWS_BETWEEN_CUES = 24;

/** Frames at even spaces, those of the cues, and the last. */
function rowsOf(plan: PlanMade): PlanFrame[] {
  const every = Math.max(1, Math.ceil(plan.frames.length / ROWS_BETWEEN_CUES));
  const cueFrames = new Set(plan.cues.map(({ frame }) => frame));
  return plan.frames.filter((_, i) => i % every === 0 || cueFrames.has(i) || i === plan.frames.length - 1);
}

export function tableView() {
  const plan = made.value;
  const w = words();
  return html`<details class="table" .open=${open.value} @toggle=${(event: Event) => {
    open.value = (event.target as HTMLDetailsElement).open;
  }}>
    <summary>${w.table.title}</summary>
    ${open.value && plan !== undefined ? table(plan) : nothing}
  </details>`;
}

function table(plan: PlanMade) {
  const w = words();
  const ev = (value: number) => w.number(value, 1);
  const cues = new Map(plan.cues.map((cue) => [cue.frame, cue]));
  const rows = rowsOf(plan);
  const more = moving.value?.moveColumns(plan) ?? [];
  const here = rows.findLastIndex(({ frame }) => frame <= cursor.value);
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${w.table.title}>
    <table>
      <caption>
        ${w.table.caption}
      </caption>
      <thead>
        <tr>
          ${[
            w.chart.time,
            w.chart.frame,
            w.chart.sun,
            w.chart.sceneEv,
            w.chart.range,
            w.chart.targetEv,
            w.chart.errorEv,
            w.chart.setting,
            w.table.changes,
            ...more.map(([name]) => name),
          ].map((name) => html`<th scope="col">${name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (
            f,
            i,
          ) => html`<tr aria-current=${i === here ? 'true' : nothing} @click=${() => moveCursor(f.frame)}>
            <th scope="row">${clock(f.at)}</th>
            <td>${f.frame + 1}</td>
            <td>${ev(f.sunAltitudeDeg)}°</td>
            <td>${ev(f.sceneEv100)}</td>
            <td>${ev(f.lowEv100)} … ${ev(f.highEv100)}</td>
            <td>${ev(f.targetEv100)}</td>
            <td>${w.signed(f.errorEv, 2)}</td>
            <td>${settingText(f)}</td>
            <td>${cues.get(f.frame)?.changes.map(changeSpoken).join(', ') ?? ''}</td>
            ${more.map(([, cell]) => html`<td>${cell(f)}</td>`)}
          </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}
