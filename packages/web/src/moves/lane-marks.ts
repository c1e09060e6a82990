// Where the marks on the lanes of moves stand.

import type { Point } from '../chart/data.js';
import { textPx } from '../chart/text-px.js';

/** A text at a point of a line, or between two of them where there is most room. */
export interface Mark {
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly at?: Point | undefined;
  readonly under?: boolean; // below the point, not above
  readonly between?: readonly [below: readonly Point[] | undefined, above: readonly Point[]];
}

/** A lane in pixels. */
export interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  xOf(ms: number): number;
  yOf(value: number): number;
}

const LINE_HEIGHT = 14;

/** The left foot of a mark's text; undefined where there is no room for it. */
export function markSpot({ text, anchor, at, under = false, between }: Mark, room: Room): Point | undefined {
  const spot = between === undefined ? at : roomiest(between, room.yOf);
  if (spot === undefined) return undefined;
  const width = textPx(text);
  const x = room.xOf(spot.x);
  const left = { start: x + 3, middle: x - width / 2, end: x - width - 3 }[anchor];
  const y = room.yOf(spot.y);
  const baseline = between === undefined ? y + (under ? LINE_HEIGHT : -5) : y + 4;
  return {
    x: Math.max(room.left + 3, Math.min(left, room.right - width - 3)),
    y: Math.max(room.top + 11, Math.min(baseline, room.bottom - 2)),
  };
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
