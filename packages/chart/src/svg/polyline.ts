// A line through points, as a path.

import { line } from 'd3-shape';
import type { Point } from './label-room.js';
import { element } from './svg.js';

export interface Stroke {
  readonly stroke: string;
  readonly width: number; // points
  readonly join?: 'round';
  readonly dash?: string | undefined; // as SVG writes it
}

const through = line<Point>(
  (p) => p.x,
  (p) => p.y,
).digits(2);

export function polyline(points: readonly Point[], { stroke, width, join, dash }: Stroke): string {
  return element('path', {
    d: through(points) ?? '',
    fill: 'none',
    stroke,
    'stroke-width': width,
    'stroke-linejoin': join,
    'stroke-dasharray': dash,
  });
}
