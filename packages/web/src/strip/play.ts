// Plays the clip at its own rate. While it runs only the picture of the frame and the mark on the strip are redrawn;
// where it stops, the cursor goes.

import { signal } from '@preact/signals-core';
import { cursor, moveCursor } from '../state/cursor.js';
import { made } from '../state/plan.js';

export const playing = signal(false);

/** Called with each frame that is shown. */
export const played = signal<number | undefined>(undefined);

const calm = matchMedia('(prefers-reduced-motion: reduce)');
/** Who wants less motion gets stills of the same clip. Our choice. */
const STILL_MS = 1000;

export function stop(): void {
  if (!playing.peek()) return;
  playing.value = false;
  moveCursor(played.peek() ?? cursor.peek());
  played.value = undefined;
}

export function play(): void {
  const plan = made.peek();
  if (plan === undefined) return;
  const last = plan.frames.length - 1;
  const from = cursor.peek() >= last ? 0 : cursor.peek();
  const startMs = performance.now();
  let shownMs = Number.NEGATIVE_INFINITY;
  playing.value = true;
  const go = (nowMs: number) => {
    if (!playing.peek()) return;
    // Another plan, another clip.
    if (made.peek() !== plan) {
      stop();
      return;
    }
    const frame = from + Math.floor((Math.max(0, nowMs - startMs) / 1000) * plan.shoot.clipFps);
    if (!calm.matches || nowMs - shownMs >= STILL_MS) {
      played.value = Math.min(frame, last);
      shownMs = nowMs;
    }
    if (frame >= last) {
      played.value = last;
      stop();
    } else requestAnimationFrame(go);
  };
  requestAnimationFrame(go);
}
