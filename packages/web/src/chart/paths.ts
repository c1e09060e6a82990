// Points as the path of a line.

import type { Point } from './data.js';

type Pixel = (value: number) => number;

export const at = (px: number) => px.toFixed(1);

export const curve = (points: readonly Point[], x: Pixel, y: Pixel) =>
  `M${points.map((p) => `${at(x(p.x))} ${at(y(p.y))}`).join('L')}`;

/** Holds each value until the next point. */
export const steps = (points: readonly Point[], x: Pixel, y: Pixel) =>
  points.map((p, i) => (i === 0 ? `M${at(x(p.x))} ${at(y(p.y))}` : `H${at(x(p.x))}V${at(y(p.y))}`)).join('');
