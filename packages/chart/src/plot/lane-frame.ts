// What every lane has beside its own drawing: a line below it, and its name to the left.

import { LINE, type Look, TYPE } from '../svg/ink.js';
import { type Box, element, textAt } from '../svg/svg.js';
import type { TimeAxis } from './time-axis.js';

export function laneGround({ left, right, bottom }: Box, { unit, ink }: Look): string {
  return element('line', {
    x1: left,
    x2: right,
    y1: bottom,
    y2: bottom,
    stroke: ink.grid,
    'stroke-width': LINE.fine * unit,
  });
}

/** @param middle y that the name stands at */
export function laneName(name: string, middle: number, axis: TimeAxis, { unit: u, ink }: Look): string {
  const size = TYPE.body * u;
  return textAt(axis.left - 6 * u, middle + 0.36 * size, name, {
    size,
    bold: true,
    anchor: 'end',
    fill: ink.text,
  });
}
