// What stands around the panels of a chart: title, the scales' ticks and their names.

import { LINE, type Look, TYPE } from '../svg/ink.js';
import { element, textAt, textWithin } from '../svg/svg.js';
import { textWidth } from '../svg/text-width.js';
import type { Words } from '../text/words.js';
import { altitudeTicks, clockTicks, type Moment, type Tick, type TimeAxis } from './time-axis.js';

/** Distances of a chart's panels from its edges, in units of its look. */
export const MARGIN = { left: 76, right: 16, top: 76, bottom: 30 };

/** Title and the line under it, shortened to the width. */
export function heading(title: string, under: string, width: number, { unit: u, ink }: Look): string {
  const left = 10 * u;
  const room = width - 2 * left;
  return (
    textWithin(left, 24 * u, title, room, { size: TYPE.title * u, bold: true, fill: ink.text }) +
    textWithin(left, 42 * u, under, room, { size: TYPE.body * u, fill: ink.text })
  );
}

interface RowSpec {
  readonly moments: readonly Moment[];
  readonly axis: TimeAxis;
  readonly y: number; // edge of the panel the ticks stand on
  readonly look: Look;
  readonly words: Words;
  readonly width: number; // of the whole picture
  readonly named?: boolean; // default true: the scale's name stands at its left
}

/** The sun's altitude along the top edge of the upper panel. */
export function altitudeRow({ moments, axis, y, look, words, width }: RowSpec): string {
  const u = look.unit;
  const ticks = altitudeTicks(moments, axis, { spacing: 40 * u, words });
  return row(ticks, axis, { mark: [y - 5 * u, y], text: y - 9 * u, name: words.chart.sun, width, look });
}

/** Room from one clock label to the next: labels of twelve hours, and those of hours that come twice, are wider. */
export function clockSpacing({ unit: u }: Look, words: Words, moments: readonly Moment[]): number {
  const longest = moments.reduce((most, { at }) => {
    const text = words.clock(at);
    return text.length > most.length ? text : most;
  }, '');
  return Math.max(64 * u, textWidth(longest, TYPE.body * u) + 14 * u);
}

/** Local clock time along the bottom edge of the lowest panel. */
export function clockRow({ moments, axis, y, look, words, width, named = true }: RowSpec): string {
  const u = look.unit;
  const ticks = clockTicks(moments, axis, { spacing: clockSpacing(look, words, moments), words });
  const text = y + (7 + TYPE.body) * u;
  return row(ticks, axis, {
    mark: [y, y + 5 * u],
    text,
    name: named ? words.chart.localTime : '',
    width,
    look,
  });
}

interface RowPlaces {
  readonly mark: readonly [number, number];
  readonly text: number; // baseline
  readonly name: string;
  readonly width: number;
  readonly look: Look;
}

function row(ticks: readonly Tick[], axis: TimeAxis, { mark, text, name, width, look }: RowPlaces): string {
  const { unit: u, ink } = look;
  const size = TYPE.body * u;
  const nameEnd = axis.left - 6 * u;
  const drawn = ticks.map(({ x, label }) => {
    const half = textWidth(label, size) / 2;
    const line = element('line', {
      x1: x,
      x2: x,
      y1: mark[0],
      y2: mark[1],
      stroke: ink.frame,
      'stroke-width': LINE.fine * u,
    });
    // A tick at either end keeps its mark; its number must neither leave the page nor meet the scale's name.
    if (x + half > width - 2 * u || (x - half < nameEnd + 4 * u && name !== '')) return line;
    return line + textAt(x, text, label, { size, anchor: 'middle', fill: ink.text });
  });
  if (name === '') return drawn.join('');
  return drawn.join('') + textAt(nameEnd, text, name, { size, anchor: 'end', fill: ink.text });
}
