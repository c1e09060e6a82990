// Everything about moves is a part of its own: it is loaded when its panel is opened, or when the shoot has moves or
// a lens. Until then, and where it cannot be loaded, the page goes on without.

import { effect, signal } from '@preact/signals-core';
import { afterPaint } from '../parts/after-paint.js';
import { advisor } from '../state/advice.js';
import { part } from '../state/part.js';
import { plan } from '../state/plan.js';
import { shoot } from '../state/shoot.js';
import type { movePart } from './all.js';

/** The part, once it is there. */
export const moving = signal<typeof movePart | undefined>(undefined);

let asked = false;

export function loadMoves(): void {
  if (asked) return;
  asked = true;
  void part(import('./all.js')).then((all) => {
    asked = all !== undefined; // opening the panel again asks again
    advisor.value = all?.advice;
    moving.value = all?.movePart;
  });
}

effect(() => {
  const { moves, camera } = shoot.value;
  if (moves.length > 0) loadMoves();
  // What it says of a lens can wait for the first plan, which does not.
  else if (camera.lens !== undefined && plan.value !== undefined) afterPaint(loadMoves);
});
