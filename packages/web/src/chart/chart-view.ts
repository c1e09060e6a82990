// The picture on the page: sky, curves and lanes, the cursor and the readings laid over them, and what stands under
// the cursor told in words.

import { changesByClock } from '@evenfall/core';
import { computed, effect, signal } from '@preact/signals-core';
import { html, nothing, svg, type TemplateResult } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { moving } from '../moves/load.js';
import { afterPaint } from '../parts/after-paint.js';
import { clock } from '../parts/clock.js';
import { region } from '../parts/region.js';
import { settingText } from '../parts/text.js';
import { planBefore } from '../state/before.js';
import { cursor, cursorCue, cursorFrame, moveCursor } from '../state/cursor.js';
import { made } from '../state/plan.js';
import { addReading } from '../state/readings.js';
import { shoot } from '../state/shoot.js';
import { frameView } from '../strip/view.js';
import { words } from '../words/words.js';
import { settingPoints } from './data.js';
import { geometry, layout, measureIn, reservedPx } from './layout.js';
import { limitHandles } from './limit-handles.js';
import { picture, settingsPath } from './picture.js';
import { readingHandles } from './reading-handles.js';
import { paintSky } from './sky-canvas.js';
import { frameAtMs } from './time-ticks.js';

/** What is drawn, for looking at from outside. */
export const drawnNow = () => ({ ...layout.peek()?.data, ...lanesByName(), ...moving.peek()?.movesDrawn() });

const lanesByName = () =>
  Object.fromEntries((layout.peek()?.data.lanes ?? []).map(({ control, runs }) => [control, runs]));

let stopSky: (() => void) | undefined;

function mountSky(element?: Element): void {
  stopSky?.();
  stopSky = undefined;
  if (!(element instanceof HTMLCanvasElement)) return;
  stopSky = effect(() => {
    const plan = made.value;
    // Figures, cues and curves are painted first.
    if (plan !== undefined) afterPaint(() => paintSky(element, plan));
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

/** A reading where the picture is pressed twice. */
function toReading(event: MouseEvent): void {
  const [plan, g] = [made.peek(), geometry.peek()];
  if (plan === undefined || g === undefined) return;
  const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
  const y = event.clientY - box.top;
  const frame = plan.frames[frameAtMs(plan.frames, g.msAt(event.clientX - box.left), plan.shoot.intervalS)];
  if (frame !== undefined && y >= g.top && y <= g.evBottom) addReading(frame.at, g.evAt(y));
}

/** The settings as they were before the last change, on the axes of now. */
function settingsBefore() {
  const [now, was] = [layout.value, planBefore.value];
  // Those of another place or day have nothing to do with this sky.
  if (now === undefined || was?.summary.startAt !== now.plan.summary.startAt) return undefined;
  return settingsPath(settingPoints(was.frames), now.geometry);
}

/** Drawn once for a plan and a width, not at every move of the cursor. */
const drawing = computed(() => layout.value && picture(layout.value, settingsBefore()));

export function chartView() {
  const height = `min-height:${reservedPx(shoot.value)}px`;
  // Measured before there is a plan: it is drawn in its place at once.
  return html`<div class=${made.value?.move && moving.value ? 'chart with-moves' : 'chart'} .style=${height} ${ref(measureIn)}>
    ${
      layout.value === undefined
        ? html`<p class="planning">${words().summary.planning}</p>`
        : html`${region(evening)} ${region(moveLanes)} ${region(sweep)} ${region(handles)}`
    }
  </div>`;
}

const moveLanes = () => made.value && moving.value?.lanesView(made.value);

const handles = () =>
  layout.value && html`${limitHandles(layout.value)} ${readingHandles(layout.value.geometry)}`;

function evening() {
  if (layout.value === undefined) return nothing;
  const { plan, geometry: g } = layout.value;
  const { summary } = plan;
  const w = words();
  const ev = (value: number) => w.number(value, 1);
  const label = w.chart.label({
    from: clock(summary.startAt, false),
    to: clock(summary.endAt, false),
    fromEv: ev(summary.sceneFromEv100),
    toEv: ev(summary.sceneToEv100),
    cues: summary.cueCount,
  });
  return html`<div role="img" aria-label=${label}>
      <canvas
        class="sky"
        .style=${`left:${g.left}px;top:${g.top}px;width:${g.right - g.left}px;height:${g.evBottom - g.top}px`}
        ${ref(mountSky)}
      ></canvas>
      ${drawing.value}
    </div>`;
}

function sweep() {
  const w = words();
  const [plan, frame, g] = [made.value, cursorFrame.value, geometry.value];
  if (plan === undefined) return nothing;
  const spoken =
    frame &&
    w.chart.spoken({
      time: clock(frame.at),
      frame: frame.frame + 1,
      sun: w.number(frame.sunAltitudeDeg, 1),
      ev: w.number(frame.sceneEv100, 1),
      setting: settingText(frame),
    }) + (moving.value?.moveSpoken(plan, frame) ?? '');
  return html`<div
      class="sweep"
      role="slider"
      tabindex="0"
      aria-label=${w.chart.cursor}
      aria-describedby="cursor-help"
      aria-valuemin="1"
      aria-valuemax=${plan.frames.length}
      aria-valuenow=${cursor.value + 1}
      aria-valuetext=${spoken ?? nothing}
      @pointermove=${toPointer}
      @pointerdown=${toPointer}
      @dblclick=${toReading}
      @keydown=${toKey}
    >
      ${
        frame === undefined || g === undefined
          ? nothing
          : html`<div class="cursor" .style=${`transform:translateX(${g.xOf(Date.parse(frame.at))}px);top:${g.top}px`}></div>`
      }
    </div>
    <p class="unseen" id="cursor-help">${w.chart.cursorHelp}</p>`;
}

const isExplained = signal(false);

/** The words of the picture and of the figures, a sentence each, beside what is drawn for them. */
export function meanings() {
  const w = words().chart;
  const line = 'M0 7H34';
  const drawn = (what: TemplateResult) =>
    html`<svg class="key" width="34" height="14" aria-hidden="true"><rect width="34" height="14" />${what}</svg>`;
  const item = (name: string, text: string, key: unknown = nothing) =>
    html`<li>${key} <b>${name}</b>: ${text}</li>`;
  return html`<details
    class="more meanings"
    .open=${isExplained.value}
    @toggle=${({ target }: Event) => {
      isExplained.value = (target as HTMLDetailsElement).open;
    }}
  >
    <summary>${w.meanings}</summary>
    <ul class="legend">
      ${item(w.scene, w.sceneMeans, drawn(svg`<path class="edge scene" d=${line} /><path class="scene" d=${line} />`))}
      ${item(w.band, w.bandMeans, drawn(svg`<rect class="band" y="2" width="34" height="10" /><path class="bound" d="M0 2H34M0 12H34" />`))}
      ${item(w.target, w.targetMeans, drawn(svg`<path class="settings" d=${line} /><path class="target" d=${line} />`))}
      ${item(w.settings, w.settingsMeans, drawn(svg`<path class="edge settings" d=${line} /><path class="settings" d=${line} />`))}
      ${item(w.cue, w.cueMeans)} ${item(w.errorName, w.errorMeans)} ${item(w.reserve, w.reserveMeans)}
    </ul>
  </details>`;
}

export function underCursor() {
  const plan = made.value;
  const frame = cursorFrame.value;
  const w = words();
  const ev = (value: number) => w.number(value, 1);
  const hasFilters = shoot.value.filters.length > 0;
  const facts: readonly (readonly [string, string | undefined])[] = [
    [w.chart.time, frame && clock(frame.at)],
    [w.chart.frame, frame && plan && w.chart.frameOf(frame.frame + 1, plan.frames.length)],
    [w.chart.sun, frame && `${w.number(frame.sunAltitudeDeg, 1)}°`],
    [w.chart.sceneEv, frame && ev(frame.sceneEv100)],
    [w.chart.range, frame && `${ev(frame.lowEv100)} … ${ev(frame.highEv100)}`],
    [w.chart.targetEv, frame && ev(frame.targetEv100)],
    [w.chart.errorEv, frame && w.signed(frame.errorEv, 2)],
    [w.chart.setting, frame && settingText(frame, hasFilters)],
    ...(plan && frame ? (moving.value?.moveFacts(plan, frame) ?? []) : []),
  ];
  // Before the first plan its places are kept free: nothing jumps when it comes.
  return html`<div class="under-cursor">
    ${frameView()}
    <dl>
      ${facts.map(([name, value]) => html`<div class=${name === w.chart.setting ? (hasFilters ? 'setting with-filter' : 'setting') : ''}><dt>${name}</dt><dd>${value ?? '…'}</dd></div>`)}
    </dl>
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
  </div>`;
}
