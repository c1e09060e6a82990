// Readings as marks on the chart: each is dragged up and down, or moved by the arrow keys.

import { html } from 'lit-html';
import { clock } from '../parts/clock.js';
import { type Listed, readingsList, setReading } from '../state/readings.js';
import { words } from '../words/words.js';
import type { Geometry } from './geometry.js';

const STEP_EV = 0.1;
const BIG_STEP_EV = 1;
const HALF = 22; // of a touch target

function drag(event: PointerEvent, index: number, g: Geometry): void {
  const handle = event.currentTarget as HTMLElement;
  if (!handle.hasPointerCapture(event.pointerId)) return;
  const box = (handle.parentElement as HTMLElement).getBoundingClientRect();
  setReading(index, { ev100: Math.round(g.evAt(event.clientY - box.top) * 10) / 10 });
}

function key(event: KeyboardEvent, { index, ev100 }: Listed): void {
  const way = { ArrowUp: STEP_EV, ArrowRight: STEP_EV, ArrowDown: -STEP_EV, ArrowLeft: -STEP_EV }[event.key];
  const far = { PageUp: BIG_STEP_EV, PageDown: -BIG_STEP_EV }[event.key];
  const by = way ?? far;
  if (by === undefined) return;
  event.preventDefault();
  setReading(index, { ev100: Math.round((ev100 + by) * 10) / 10 });
}

export function readingHandles(g: Geometry) {
  const w = words().readings;
  return readingsList.value
    .filter(({ atMs }) => g.xOf(atMs) >= g.left - 1 && g.xOf(atMs) <= g.right + 1)
    .map((reading) => {
      const y = Math.max(g.top, Math.min(g.yOf(reading.ev100), g.evBottom));
      return html`<div
        class="reading-handle"
        role="slider"
        tabindex="0"
        aria-orientation="vertical"
        aria-label=${w.handle(clock(reading.at, false))}
        aria-valuemin="-15"
        aria-valuemax="25"
        aria-valuenow=${reading.ev100}
        aria-valuetext=${w.value(words().number(reading.ev100, 1))}
        .style=${`transform:translate(${g.xOf(reading.atMs) - HALF}px,${y - HALF}px)`}
        @pointerdown=${(event: PointerEvent) => {
          (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
        }}
        @pointermove=${(event: PointerEvent) => drag(event, reading.index, g)}
        @keydown=${(event: KeyboardEvent) => key(event, reading)}
      ></div>`;
    });
}
