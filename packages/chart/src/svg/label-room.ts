// Finds each label a place where it covers neither another label nor a line.

import { type Box, overlaps, type TextStyle, textBox } from './svg.js';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A text with one place it might stand. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly style: TextStyle;
}

export interface LabelRoom {
  /** Claims a box whatever lies there. */
  readonly claim: (box: Box) => void;
  /** Whether a box lies inside the room and touches no label and no line; names in a row keep more than `margin`. */
  readonly isFree: (box: Box, margin?: number) => boolean;
  /** Claims and returns the first place that is free, or undefined where none is. */
  readonly place: (places: readonly Place[], margin?: number) => Place | undefined;
}

/** A room with lines drawn in it, each a dense list of points (see `dense`). */
export function labelRoom(bounds: Box, lines: readonly (readonly Point[])[]): LabelRoom {
  const taken: Box[] = [];
  const points = lines.flat().sort((a, b) => a.x - b.x);
  const isFree = (box: Box, margin = 1.5) =>
    box.left >= bounds.left &&
    box.right <= bounds.right &&
    box.top >= bounds.top &&
    box.bottom <= bounds.bottom &&
    !taken.some((other) => overlaps(grown(box, 2.5 * margin, margin), other)) &&
    !anyInside(points, grown(box, margin));
  return {
    claim: (box) => void taken.push(box),
    isFree,
    place(places, margin) {
      const found = places.find((p) => isFree(textBox(p.x, p.y, p.text, p.style), margin));
      if (found !== undefined) taken.push(textBox(found.x, found.y, found.text, found.style));
      return found;
    },
  };
}

function grown({ left, top, right, bottom }: Box, by: number, byY = by): Box {
  return { left: left - by, top: top - byY, right: right + by, bottom: bottom + byY };
}

// Points are sorted by x, so that only those under the box are looked at.
function anyInside(points: readonly Point[], box: Box): boolean {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (points[middle]!.x < box.left) low = middle + 1;
    else high = middle;
  }
  for (let i = low; i < points.length && points[i]!.x <= box.right; i++) {
    if (points[i]!.y >= box.top && points[i]!.y <= box.bottom) return true;
  }
  return false;
}

/** The line through these corners as points at most `step` apart. */
export function dense(corners: readonly Point[], step: number): Point[] {
  const points: Point[] = corners.slice(0, 1);
  for (let i = 1; i < corners.length; i++) {
    const a = corners[i - 1]!;
    const b = corners[i]!;
    const pieces = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / step));
    for (let k = 1; k <= pieces; k++) {
      points.push({ x: a.x + ((b.x - a.x) * k) / pieces, y: a.y + ((b.y - a.y) * k) / pieces });
    }
  }
  return points;
}

/** Corners of a line that stays level and then jumps at each point. */
export function stepCorners(points: readonly Point[]): Point[] {
  return points.flatMap((p, i) => (i === 0 ? [p] : [{ x: p.x, y: points[i - 1]!.y }, p]));
}
