// Names and marks on the lanes of moves.

import type { Chart } from 'chart.js';
import type { Point } from '../chart/data.js';
import type { Inks } from '../chart/inks.js';
import { moveWords } from './words.js';

export type LaneName = 'pan' | 'tilt' | 'slide' | 'speed' | 'time';

/** A text at a point of a line, or between two of them where there is most room. */
export interface Mark {
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly at?: Point | undefined;
  readonly under?: boolean; // below the point, not above
  readonly between?: readonly [below: readonly Point[] | undefined, above: readonly Point[]];
}

const LINE_HEIGHT = 14;

/** The name beside the lane, and the rule above it. */
export function nameLane(chart: Chart, id: string, name: LaneName, inks: Inks): void {
  const y = chart.scales[id];
  if (y === undefined) return;
  const { ctx, chartArea } = chart;
  ctx.save();
  ctx.strokeStyle = inks.grid;
  ctx.beginPath();
  ctx.moveTo(0, Math.round(y.top) + 0.5);
  ctx.lineTo(chartArea.right, Math.round(y.top) + 0.5);
  ctx.stroke();
  ctx.fillStyle = inks.text;
  ctx.textAlign = 'right';
  ctx.font = '600 12px system-ui, sans-serif';
  ctx.fillText(moveWords().lanes[name], chartArea.left - 6, (y.top + y.bottom) / 2 + 4);
  ctx.restore();
}

/** Marks of a lane; one for which there is no room is left out. */
export function mark(chart: Chart, id: string, marks: readonly Mark[], inks: Inks): void {
  const [x, y] = [chart.scales.x, chart.scales[id]];
  if (x === undefined || y === undefined) return;
  const { ctx, chartArea } = chart;
  ctx.save();
  ctx.fillStyle = inks.text;
  ctx.font = '12px system-ui, sans-serif';
  for (const { text, anchor, at, under = false, between } of marks) {
    const width = ctx.measureText(text).width;
    const spot = between === undefined ? at : roomiest(between, (px) => y.getPixelForValue(px));
    if (spot === undefined) continue;
    const pixel = x.getPixelForValue(spot.x);
    const left = { start: pixel + 3, middle: pixel - width / 2, end: pixel - width - 3 }[anchor];
    const middle = y.getPixelForValue(spot.y);
    const baseline = between === undefined ? middle + (under ? LINE_HEIGHT : -5) : middle + 4;
    ctx.fillText(
      text,
      Math.max(chartArea.left + 3, Math.min(left, chartArea.right - width - 3)),
      Math.max(y.top + 11, Math.min(baseline, y.bottom - 2)),
    );
  }
  ctx.restore();
}

/** The middle between two lines where they lie furthest apart, the middle of the time first; none where no text fits. */
function roomiest(
  [below, above]: readonly [readonly Point[] | undefined, readonly Point[]],
  pixel: (y: number) => number,
): Point | undefined {
  const shares = [0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95];
  for (const share of shares) {
    const i = Math.round(share * (above.length - 1));
    const top = above[i];
    if (top === undefined) continue;
    const foot = below?.[i]?.y ?? 0;
    if (pixel(foot) - pixel(top.y) >= LINE_HEIGHT) return { x: top.x, y: (foot + top.y) / 2 };
  }
  return undefined;
}
