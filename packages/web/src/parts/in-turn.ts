// The page is drawn in turns, each once the one before it is on the screen: what is looked at first stands first. Where
// the plan is there sooner, what is left comes with it.

import { computed, signal } from '@preact/signals-core';
import { nothing } from 'lit-html';
import { plan } from '../state/plan.js';
import { afterPaint } from './after-paint.js';

const turn = signal(0);

/** Called when the first drawing is made. */
export function takeTurns(): void {
  afterPaint(() => {
    turn.value = 1;
    afterPaint(() => {
      turn.value = 2;
    });
  });
}

/** @returns the view, empty until its turn has come */
export function inTurn(which: 1 | 2, view: () => unknown): () => unknown {
  const come = computed(() => turn.value >= which || plan.value !== undefined);
  return () => (come.value ? view() : nothing);
}
