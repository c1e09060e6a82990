// The clip as it will look, under the picture of the evening and on its time axis; and the frame at the cursor.

import type { PlanMade } from '@evenfall/core';
import { effect } from '@preact/signals-core';
import { html } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import type { Geometry } from '../chart/geometry.js';
import { geometry } from '../chart/layout.js';
import { afterPaint } from '../parts/after-paint.js';
import { cursorFrame } from '../state/cursor.js';
import { made } from '../state/plan.js';
import { words } from '../words/words.js';
import { paintFrame, paintStrip } from './paint.js';
import { play, played, playing, stop } from './play.js';

/** Runs an effect for as long as an element is on the page. */
function follow<E extends Element>(run: (element: E) => void) {
  let end: (() => void) | undefined;
  return (element?: Element) => {
    end?.();
    end = element === undefined ? undefined : effect(() => run(element as E));
  };
}

const strip = follow<HTMLCanvasElement>((canvas) => {
  const plan = made.value;
  if (plan !== undefined) afterPaint(() => paintStrip(canvas, plan));
});

const shownFrame = () => {
  const at = played.value;
  return at === undefined ? cursorFrame.value : made.value?.frames[at];
};

const frame = follow<HTMLCanvasElement>((canvas) => {
  const now = shownFrame();
  if (now !== undefined) afterPaint(() => paintFrame(canvas, now));
});

const mark = follow<HTMLElement>((element) => {
  const [now, g] = [shownFrame(), geometry.value];
  if (now !== undefined && g !== undefined) {
    element.style.transform = `translateX(${g.xOf(Date.parse(now.at)) - g.left}px)`;
  }
});

export function stripView() {
  const [plan, g] = [made.value, geometry.value];
  if (plan === undefined || g === undefined) return html`<div class="clip-row"></div>`;
  const w = words().strip;
  return html`<div class="clip-row">
    <button type="button" class="play" aria-label=${playing.value ? w.stop : w.play} @click=${playing.value ? stop : play}>
      <svg width="18" height="18" aria-hidden="true" viewBox="0 0 18 18">
        <path d=${playing.value ? 'M3 2h4v14H3zM11 2h4v14h-4z' : 'M4 1.5v15l12-7.5z'} />
      </svg>
    </button>
    <div class="clip-strip" .style=${`left:${g.left}px;width:${g.right - g.left}px`} role="img" aria-label=${w.label}>
      <canvas ${ref(strip)}></canvas>
      ${spoiltMarks(plan, g)}
      <div class="clip-mark" ${ref(mark)}></div>
    </div>
  </div>`;
}

/** A cross over the frames that a hand on the lens may spoil. */
function spoiltMarks({ frames }: PlanMade, g: Geometry) {
  return frames
    .filter(({ affected }, i) => affected && frames[i - 1]?.affected !== true)
    .map(
      ({ at }) =>
        html`<span class="spoilt" aria-hidden="true" .style=${`left:${g.xOf(Date.parse(at)) - g.left}px`}>×</span>`,
    );
}

export const frameView = () => html`<canvas class="clip-frame" aria-hidden="true" ${ref(frame)}></canvas>`;
