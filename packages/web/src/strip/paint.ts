// Paints the clip: all of it as a strip, a column for each moment, and one frame of it as a picture.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import { frameColumn } from './brightness.js';

const ROWS = 9;
const MOST_COLUMNS = 450; // as many as a small screen has across; on a wide one two pixels each

/** The foot of each picture is land, of which one sees the outline. */
const LAND_ROWS = 2;
const LAND_SHARE = 0.3; // of the sky above it

function column(image: ImageData, x: number, frame: PlanFrame): void {
  const { width, height } = image;
  const sky = frameColumn(frame, height - LAND_ROWS);
  for (let y = 0; y < height; y++) {
    const up = height - 1 - y - LAND_ROWS;
    const [r, g, b] = up >= 0 ? (sky[up] ?? [0, 0, 0]) : (sky[0] ?? [0, 0, 0]).map((c) => c * LAND_SHARE);
    image.data.set([r ?? 0, g ?? 0, b ?? 0, 255], (y * width + x) * 4);
  }
}

function paint(canvas: HTMLCanvasElement, columns: number, frameOf: (x: number) => PlanFrame | undefined) {
  canvas.width = columns;
  canvas.height = ROWS;
  const context = canvas.getContext('2d');
  if (context === null) return;
  const image = context.createImageData(columns, ROWS);
  for (let x = 0; x < columns; x++) {
    const frame = frameOf(x);
    if (frame !== undefined) column(image, x, frame);
  }
  context.putImageData(image, 0, 0);
}

/** One column for each frame, or for as many as a screen shows: where the settings step, so does the brightness. */
export function paintStrip(canvas: HTMLCanvasElement, { frames }: PlanMade): void {
  const columns = Math.min(frames.length, MOST_COLUMNS);
  paint(canvas, columns, (x) => frames[Math.round((x / Math.max(1, columns - 1)) * (frames.length - 1))]);
}

export function paintFrame(canvas: HTMLCanvasElement, frame: PlanFrame): void {
  paint(canvas, 1, () => frame);
}
