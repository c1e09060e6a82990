// Paints the sky of a plan: one column for each stretch of time, the horizon at the foot.

import type { PlanMade } from '@evenfall/core';
import { encoded, onScreen, skyColumn } from './sky.js';

const COLUMNS = 72;
const ROWS = 14;

/** Small, for the browser to stretch: a sky has no edges. */
export function paintSky(canvas: HTMLCanvasElement, { frames }: PlanMade): void {
  const columns = Math.min(COLUMNS, frames.length);
  canvas.width = columns;
  canvas.height = ROWS;
  const context = canvas.getContext('2d');
  if (context === null) return;
  const image = context.createImageData(columns, ROWS);
  for (let x = 0; x < columns; x++) {
    const frame = frames[Math.round((x / Math.max(1, columns - 1)) * (frames.length - 1))];
    for (const [up, colour] of skyColumn(frame?.sunAltitudeDeg ?? 0, ROWS).entries()) {
      const pixel = ((ROWS - 1 - up) * columns + x) * 4;
      image.data.set([...onScreen(colour).map(encoded), 255], pixel);
    }
  }
  context.putImageData(image, 0, 0);
}
