// Where the lanes of a move stand on the page. What draws them is loaded when the first is shown.

import type { PlanMade } from '@evenfall/core';
import { effect } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { geometry } from '../chart/layout.js';
import { afterPaint } from '../parts/after-paint.js';
import { part } from '../state/part.js';
import { made } from '../state/plan.js';
import { theme } from '../state/theme.js';
import { words } from '../words/words.js';
import type { LaneChart } from './lane-chart.js';

let chart: LaneChart | undefined;
let stop: (() => void) | undefined;

/** What is drawn, by the name of each line. */
export const movesDrawn = () => chart?.drawn() ?? {};

async function start(canvas: HTMLCanvasElement): Promise<void> {
  const loaded = await part(import('./lane-chart.js'));
  if (loaded === undefined || !canvas.isConnected || chart !== undefined) return;
  const live = loaded.laneChart(canvas);
  chart = live;
  stop = effect(() => {
    const [plan, where] = [made.value, geometry.value];
    words();
    theme.value;
    if (plan?.move !== undefined && where !== undefined) live.show(plan, where);
  });
}

function mount(element?: Element): void {
  stop?.();
  chart?.remove();
  chart = stop = undefined;
  if (element instanceof HTMLCanvasElement) afterPaint(() => void start(element));
}

const PX_PER_AXIS = 44;
const PX_OF_REST = 130; // speed and interval

export function lanesView({ move }: PlanMade) {
  if (move === undefined) return nothing;
  const height = move.travels.length * PX_PER_AXIS + PX_OF_REST;
  return html`<div class="move-lanes" .style=${`height:${height}px`}>
    <canvas aria-hidden="true" ${ref(mount)}></canvas>
  </div>`;
}
