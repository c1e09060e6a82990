// The layout of the plan on the page, for the room that the picture has.

import type { Shoot } from '@evenfall/core';
import { computed, signal } from '@preact/signals-core';
import { made } from '../state/plan.js';
import { controlsOf } from './data.js';
import { CLOCK_PX, LANE_PX, layoutOf, ROW_PX } from './geometry.js';

/** How high the sky may be: on a small screen less, and never so high that the lanes leave it. Our choice, by eye. */
const skyPx = () => (innerWidth < 600 ? 150 : Math.max(120, Math.min(0.29 * innerHeight, 300)));

const room = signal<{ readonly width: number; readonly skyPx: number } | undefined>(undefined);

/** About how high the picture will be, before it is drawn: nothing jumps when it comes. */
export function reservedPx(shoot: Shoot): number {
  const rows = innerWidth < 600 ? 2 : 1; // of the names of moments, as they most often fall
  return rows * ROW_PX + skyPx() + controlsOf(shoot).length * LANE_PX + CLOCK_PX + 3;
}

/** Undefined before the picture has been measured. */
export const layout = computed(() =>
  made.value === undefined || room.value === undefined
    ? undefined
    : layoutOf(made.value, room.value.width, room.value.skyPx),
);

/** Where the curves lie. */
export const geometry = computed(() => layout.value?.geometry);

let observer: ResizeObserver | undefined;

/** Follows the size of the element that holds the picture. */
export function measureIn(element?: Element): void {
  observer?.disconnect();
  observer = undefined;
  if (element === undefined) return;
  observer = new ResizeObserver(([entry]) => {
    const width = Math.round(entry?.contentRect.width ?? 0);
    const was = room.peek();
    if (width > 0 && (was?.width !== width || was.skyPx !== skyPx())) room.value = { width, skyPx: skyPx() };
  });
  observer.observe(element);
}
