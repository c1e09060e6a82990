// The chart on the page: canvas, cursor and readings laid over it, what stands under the cursor told in words.

import { changesByClock } from '@evenfall/core';
import { computed, effect, signal, untracked } from '@preact/signals-core';
import { html, nothing } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { moving } from '../moves/load.js';
import { afterPaint } from '../parts/after-paint.js';
import { clock } from '../parts/clock.js';
import { settingText } from '../parts/text.js';
import { cursor, cursorCue, cursorFrame, moveCursor } from '../state/cursor.js';
import { made } from '../state/plan.js';
import { theme } from '../state/theme.js';
import { words } from '../words/words.js';
import { inksAt } from './inks.js';
import { type Geometry, type LiveChart, liveChart } from './live-chart.js';
import { readingHandles } from './reading-handles.js';
import { frameAtMs } from './time-ticks.js';

/** Where the curves lie, after the last drawing. */
export const geometry = signal<Geometry | undefined>(undefined);

let chart: LiveChart | undefined;
let stop: (() => void) | undefined;

/** What is drawn, read back from the chart itself. */
export const drawnNow = () => chart?.drawn() ?? {};

function mount(element?: Element): void {
  stop?.();
  chart?.remove();
  chart = stop = undefined;
  // Not while the page is being drawn, which asks for it.
  queueMicrotask(() => {
    if (chart === undefined) geometry.value = undefined;
  });
  if (!(element instanceof HTMLCanvasElement)) return;
  // Figures and cues are painted first: the first drawing is the page's longest piece of work.
  afterPaint(() => start(element));
}

function start(element: HTMLCanvasElement): void {
  if (!element.isConnected || chart !== undefined) return;
  const tell = () => {
    if (chart === live) geometry.value = live.geometry();
  };
  // What is laid over the chart comes a moment after its first drawing, which is long enough; from then on with it.
  const live = liveChart(element, () => void (geometry.peek() === undefined ? setTimeout(tell) : tell()));
  chart = live;
  const inks = computed(() => {
    theme.value;
    return untracked(() => inksAt(element.parentElement ?? document.body));
  });
  stop = effect(() => {
    const plan = made.value;
    words();
    const now = inks.value;
    const more = plan && moving.value?.moveLanes(plan, now);
    if (plan === undefined) return;
    untracked(() => {
      live.show(plan, now, more);
      if (geometry.peek() !== undefined) tell();
    });
  });
}

function toPointer(event: PointerEvent): void {
  const [plan, g] = [made.peek(), geometry.peek()];
  if (plan === undefined || g === undefined) return;
  const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
  moveCursor(frameAtMs(plan.frames, g.msAt(event.clientX - box.left), plan.shoot.intervalS));
}

export function toCue(step: -1 | 1): void {
  const plan = made.peek();
  if (plan === undefined) return;
  const at = cursor.peek();
  const changes = changesByClock(plan);
  const target =
    step > 0 ? changes.find(({ frame }) => frame > at) : changes.findLast(({ frame }) => frame < at);
  moveCursor(target?.frame ?? (step > 0 ? plan.frames.length - 1 : 0));
}

const KEYS: Readonly<Record<string, () => void>> = {
  ArrowRight: () => moveCursor(cursor.peek() + 1),
  ArrowUp: () => moveCursor(cursor.peek() + 1),
  ArrowLeft: () => moveCursor(cursor.peek() - 1),
  ArrowDown: () => moveCursor(cursor.peek() - 1),
  PageUp: () => toCue(1),
  PageDown: () => toCue(-1),
  Home: () => moveCursor(0),
  End: () => moveCursor(Number.MAX_SAFE_INTEGER),
};

function toKey(event: KeyboardEvent): void {
  const move = KEYS[event.key];
  if (move === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
  event.preventDefault();
  move();
}

export function chartView() {
  const plan = made.value;
  const w = words();
  if (plan === undefined) {
    return html`<div class="chart"><p class="planning">${w.summary.planning}</p></div>
      ${legend()} ${underCursor()}`;
  }
  const { summary } = plan;
  const ev = (value: number) => w.number(value, 1);
  const frame = cursorFrame.value;
  const g = geometry.value;
  const x = frame === undefined || g === undefined ? undefined : g.xOf(Date.parse(frame.at));
  return html`<div class=${plan.move && moving.value ? 'chart with-moves' : 'chart'}>
      <canvas
        role="img"
        aria-label=${w.chart.label({
          from: clock(summary.startAt, false),
          to: clock(summary.endAt, false),
          fromEv: ev(summary.sceneFromEv100),
          toEv: ev(summary.sceneToEv100),
          cues: summary.cueCount,
        })}
        ${ref(mount)}
      ></canvas>
      <div
        class="sweep"
        role="slider"
        tabindex="0"
        aria-label=${w.chart.cursor}
        aria-describedby="cursor-help"
        aria-valuemin="1"
        aria-valuemax=${plan.frames.length}
        aria-valuenow=${cursor.value + 1}
        aria-valuetext=${
          frame === undefined
            ? nothing
            : w.chart.spoken({
                time: clock(frame.at),
                frame: frame.frame + 1,
                sun: w.number(frame.sunAltitudeDeg, 1),
                ev: ev(frame.sceneEv100),
                setting: settingText(frame),
              }) + (moving.value?.moveSpoken(plan, frame) ?? '')
        }
        @pointermove=${toPointer}
        @pointerdown=${toPointer}
        @keydown=${toKey}
      >
        ${
          x === undefined || g === undefined
            ? nothing
            : html`<div class="cursor" .style=${`transform:translateX(${x}px);top:${g.top}px;height:${g.bottom - g.top}px`}></div>`
        }
      </div>
      ${readingHandles(g)}
    </div>
    <p class="unseen" id="cursor-help">${w.chart.cursorHelp}</p>
    ${legend()} ${underCursor()}`;
}

function legend() {
  const w = words().chart;
  return html`<ul class="legend" aria-hidden="true">
    <li class="key-settings">${w.settings}</li>
    <li class="key-target">${w.target}</li>
    <li class="key-scene">${w.scene}</li>
    <li class="key-band">${w.band}</li>
  </ul>`;
}

function underCursor() {
  const plan = made.value;
  const frame = cursorFrame.value;
  const w = words();
  const ev = (value: number) => w.number(value, 1);
  const facts: readonly (readonly [string, string | undefined])[] = [
    [w.chart.time, frame && clock(frame.at)],
    [w.chart.frame, frame && plan && w.chart.frameOf(frame.frame + 1, plan.frames.length)],
    [w.chart.sun, frame && `${w.number(frame.sunAltitudeDeg, 1)}°`],
    [w.chart.sceneEv, frame && ev(frame.sceneEv100)],
    [w.chart.range, frame && `${ev(frame.lowEv100)} … ${ev(frame.highEv100)}`],
    [w.chart.targetEv, frame && ev(frame.targetEv100)],
    [w.chart.errorEv, frame && w.signed(frame.errorEv, 2)],
    [w.chart.setting, frame && settingText(frame, plan !== undefined && plan.shoot.filters.length > 0)],
    ...(plan && frame ? (moving.value?.moveFacts(plan, frame) ?? []) : []),
  ];
  // Before the first plan its places are kept free: nothing jumps when it comes.
  return html`<div class="under-cursor">
    <div class="cursor-steps">
      <button type="button" class="small" ?disabled=${cursor.value === 0} @click=${() => toCue(-1)}>
        <span aria-hidden="true">←</span> ${w.chart.previousCue}
      </button>
      <button
        type="button"
        class="small"
        ?disabled=${plan === undefined || cursorCue.value >= changesByClock(plan).length - 1}
        @click=${() => toCue(1)}
      >
        ${w.chart.nextCue} <span aria-hidden="true">→</span>
      </button>
    </div>
    <dl>
      ${facts.map(([name, value]) => html`<div class=${name === w.chart.setting ? 'setting' : ''}><dt>${name}</dt><dd>${value ?? '…'}</dd></div>`)}
    </dl>
  </div>`;
}
