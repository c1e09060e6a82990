// A small frame on which two presses say where a move starts and ends; the numbers beside it say the same for the
// keyboard, and exactly. A test picture may be laid under it: it is read here and goes nowhere.

import type { MoveAxis, PicturePoint } from '@evenfall/core';
import { signal } from '@preact/signals-core';
import { html, nothing, svg } from 'lit-html';
import { numberControl } from '../parts/controls.js';
import { asPercent, asShare } from '../parts/percent.js';
import { put, shown } from '../state/shoot.js';
import { words } from '../words/words.js';
import { some } from './optics.js';
import { moveWords } from './words.js';

type End = 'fromPoint' | 'toPoint';
const ENDS: readonly End[] = ['fromPoint', 'toPoint'];

/** Which end of which move the next press sets; each move begins with its start. */
const next = signal<{ readonly index: number; readonly end: End }>({ index: 0, end: 'fromPoint' });
const nextEnd = (index: number): End => (next.value.index === index ? next.value.end : 'fromPoint');

/** The picture under the frame, as a data address: the page's policy lets in no other. */
const picture = signal<string | undefined>(undefined);

/** The mark under a finger, and where the finger came down. It drags the mark only once it has moved on from there. */
let held: { readonly end: End; readonly x: number; readonly y: number; dragged: boolean } | undefined;
const DRAG_PX = 6;

const share = (value: unknown) => (typeof value === 'number' ? Math.max(0, Math.min(1, value)) : 0.5);

function setPoint(index: number, end: End, event: MouseEvent, frame: HTMLElement): void {
  const box = frame.getBoundingClientRect();
  // A tenth of a percent is finer than a finger.
  const rounded = (value: number) => Math.round(Math.max(0, Math.min(1, value)) * 1000) / 1000;
  const point: PicturePoint = {
    fromLeft: rounded((event.clientX - box.left) / box.width),
    fromBottom: rounded((box.bottom - event.clientY) / box.height),
  };
  put(['moves', index, 'by', end], point);
}

function press(event: MouseEvent, index: number): void {
  const dragged = held?.dragged === true;
  held = undefined;
  if (dragged) return;
  const end = nextEnd(index);
  setPoint(index, end, event, event.currentTarget as HTMLElement);
  next.value = { index, end: end === 'fromPoint' ? 'toPoint' : 'fromPoint' };
}

function grab(event: PointerEvent, end: End): void {
  held = { end, x: event.clientX, y: event.clientY, dragged: false };
  (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
}

function drag(event: PointerEvent, index: number): void {
  const point = event.currentTarget as HTMLElement;
  if (held === undefined || !point.hasPointerCapture(event.pointerId)) return;
  held.dragged ||= Math.hypot(event.clientX - held.x, event.clientY - held.y) > DRAG_PX;
  if (held.dragged) setPoint(index, held.end, event, point.parentElement as HTMLElement);
}

function layUnder(event: Event): void {
  const file = (event.target as HTMLInputElement).files?.[0];
  if (file === undefined) return;
  const reader = new FileReader();
  reader.onload = () => {
    picture.value = String(reader.result);
  };
  reader.readAsDataURL(file);
}

/** The way from start to end with a head in its middle, where no mark lies over it. */
function arrow(from: { x: number; y: number }, to: { x: number; y: number }) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return nothing;
  const [alongX, alongY] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const corner = (along: number, across: number) =>
    `${(from.x + to.x) / 2 + along * alongX - across * alongY},${(from.y + to.y) / 2 + along * alongY + across * alongX}`;
  return svg`<line class="way" x1=${from.x} y1=${from.y} x2=${to.x} y2=${to.y} />
    <polygon class="way-head" points="${corner(4, 0)} ${corner(-3, 3.5)} ${corner(-3, -3.5)}" />`;
}

export function framePoints(axis: MoveAxis, index: number) {
  const w = moveWords().points;
  const by = ['moves', index, 'by'];
  const side = (key: 'widthMm' | 'heightMm', other: number) => {
    const value = shown(['camera', 'sensor', key]);
    return typeof value === 'number' && value > 0 ? value : other;
  };
  const [width, height] = [side('widthMm', 36), side('heightMm', 24)];
  const at = (end: End) => ({
    x: 100 * share(shown([...by, end, 'fromLeft'])),
    y: 100 - 100 * share(shown([...by, end, 'fromBottom'])),
  });
  // Drawn in the picture's own proportions, 100 units high: an arrow's head keeps its shape.
  const wide = (100 * width) / height;
  const drawn = (end: End) => ({ x: (at(end).x * wide) / 100, y: at(end).y });
  const image = picture.value;
  const percent = (end: End, key: 'fromLeft' | 'fromBottom') =>
    numberControl({
      path: [...by, end, key],
      label: w[key][end],
      unit: '%',
      show: asPercent,
      store: (value) => asShare(some(value)),
    });
  // What counts for the turn comes first.
  const keys =
    axis === 'tilt' ? (['fromBottom', 'fromLeft'] as const) : (['fromLeft', 'fromBottom'] as const);
  return html`<div class="points">
    <p class="help" aria-hidden="true">${w.press[nextEnd(index)]}</p>
    <div
      class="points-frame"
      aria-hidden="true"
      .style=${`aspect-ratio:${width}/${height}${
        image === undefined ? '' : `;background-image:url("${image}")`
      }`}
      @click=${(event: MouseEvent) => press(event, index)}
    >
      <svg viewBox=${`0 0 ${wide} 100`} preserveAspectRatio="none">
        <path class="thirds" d=${`M${wide / 3} 0V100M${(2 * wide) / 3} 0V100M0 33.3H${wide}M0 66.7H${wide}`} />
        ${arrow(drawn('fromPoint'), drawn('toPoint'))}
      </svg>
      ${ENDS.map((end, i) => {
        const { x, y } = at(end);
        return html`<span
          class="point"
          .style=${`left:${x}%;top:${y}%`}
          @pointerdown=${(event: PointerEvent) => grab(event, end)}
          @pointermove=${(event: PointerEvent) => drag(event, index)}
          ><b>${i === 0 ? w.start : w.end}</b></span
        >`;
      })}
    </div>
    <div class="buttons">
      <label class="button small"
        >${w.picture}<input type="file" class="unseen" accept="image/*" @change=${layUnder}
      /></label>
      ${
        image === undefined
          ? nothing
          : html`<button
              type="button"
              class="small plain"
              @click=${() => {
                picture.value = undefined;
              }}
            >
              ${w.noPicture}
            </button>`
      }
    </div>
    <p class="help">${w.pictureHelp}</p>
    <div class="pair">${ENDS.map((end) => percent(end, keys[0]))}</div>
    <details class="more">
      <summary>${moveWords().more}</summary>
      <div class="fields">
        <div class="pair">${ENDS.map((end) => percent(end, keys[1]))}</div>
        <div class="pair">
          ${numberControl({ path: [...by, 'focalMm'], label: w.focal, unit: 'mm', placeholder: w.sameLens })}
          ${numberControl({ path: [...by, 'cameraTiltDeg'], label: w.tilt, unit: '°', placeholder: words().notSet })}
        </div>
      </div>
    </details>
  </div>`;
}
