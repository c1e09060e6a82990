// Keeps the cue under the cursor in sight: the list scrolls inside itself, the page never.

import { effect } from '@preact/signals-core';
import { afterPaint } from '../parts/after-paint.js';
import { cursorCue } from '../state/cursor.js';

export function keepCueInSight(): void {
  effect(() => {
    cursorCue.value;
    // After the list has been redrawn.
    afterPaint(() => {
      const list = document.querySelector<HTMLElement>('.cues ol');
      const here = list?.querySelector<HTMLElement>('[aria-current]');
      if (list == null || here == null || list.matches(':hover')) return;
      const top = here.getBoundingClientRect().top - list.getBoundingClientRect().top + list.scrollTop;
      const bottom = top + here.offsetHeight;
      if (top < list.scrollTop) list.scrollTop = top;
      else if (bottom > list.scrollTop + list.clientHeight) list.scrollTop = bottom - list.clientHeight;
    });
  });
}
