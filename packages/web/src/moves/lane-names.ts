// Names and marks on the lanes of moves.

import type { Chart } from 'chart.js';
import type { Point } from '../chart/data.js';
import type { Inks } from './inks.js';
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
  // Drawn narrower where a language's word is longer than the axis is wide.
  ctx.fillText(moveWords().lanes[name], chartArea.left - 6, (y.top + y.bottom) / 2 + 4, chartArea.left - 8);
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

/** The middle between two lines where they lie furthest apart, the first of near equals; none where no text fits. */
function roomiest(
  [below, above]: readonly [readonly Point[] | undefined, readonly Point[]],
  pixel: (y: number) => number,
): Point | undefined {
  let most = LINE_HEIGHT;
  let best: Point | undefined;
  for (const share of SHARES) {
    const i = Math.round(share * (above.length - 1));
    const top = above[i];
    if (top === undefined) continue;
    const foot = below?.[i]?.y ?? 0;
    const height = pixel(foot) - pixel(top.y);
    // Hardly more is no better place.
    if (height >= (best === undefined ? most : 1.2 * most))
      [most, best] = [height, { x: top.x, y: (foot + top.y) / 2 }];
  }
  return best;
}

/** Where a text may stand along a lane, the middle first. */
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];
