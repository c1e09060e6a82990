// The panel of exposure value against time: twilights behind, events, the likely range, and the curves.

import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area } from 'd3-shape';
import { LINE, type Look, TYPE } from '../svg/ink.js';
import { dense, type LabelRoom, labelRoom, type Point, stepCorners } from '../svg/label-room.js';
import { polyline } from '../svg/polyline.js';
import { type Box, coordinate, element, rectOf, textAt } from '../svg/svg.js';
import { eventLabels, eventsInside, rowsFor, twilightShades } from '../text/ev-names.js';
import type { BandPoint, EvPanelSpec, EvSeries } from './ev-spec.js';
import { clockSpacing } from './frame.js';
import { clockTicks, type TimeAxis } from './time-axis.js';

export interface EvPanel {
  readonly svg: string;
  readonly room: LabelRoom;
  readonly y: ScaleLinear<number, number>;
  readonly curves: readonly (readonly Point[])[]; // one a series, dense
  readonly bandEdge: readonly Point[]; // lower edge of the likely range, dense; may be empty
}

/** Draws the panel; labels of the curves are the caller's, who knows their names. */
export function evPanel(spec: EvPanelSpec): EvPanel {
  const { axis, box, look, series, band } = spec;
  const { unit: u, ink } = look;
  const rowHeight = (TYPE.body + 4) * u;
  const events = eventsInside(spec);
  const eventRows = rowsFor(events, spec);
  const plot = {
    ...box,
    top: box.top + rowHeight + 2 * u,
    bottom: box.bottom - eventRows * rowHeight - 3 * u,
  };
  const y = scaleLinear(evDomain(series, band), [plot.bottom - 6 * u, plot.top + 5 * u]);
  const curves = series.map((s) => corners(s, axis, y));
  const edges = (['lowEv100', 'highEv100'] as const).map((end) =>
    band.map((b) => ({ x: axis.x(b.ms), y: y(b[end]) })),
  );
  const posts = events.map((event) => [
    { x: axis.xAt(event.at), y: box.top + rowHeight },
    { x: axis.xAt(event.at), y: box.bottom },
  ]);
  const drawn = [...curves, ...edges, ...posts].map((points) => dense(points, 2 * u));
  const room = labelRoom(box, drawn);
  const svg = [
    twilightShades(spec, room, rowHeight),
    grid(spec, plot, y),
    bandShape(band, axis, y, look),
    ...posts.map(([from, to]) =>
      element('line', {
        x1: from!.x,
        y1: from!.y,
        x2: to!.x,
        y2: to!.y,
        stroke: ink.frame,
        'stroke-width': LINE.fine * u,
        'stroke-dasharray': dashes('2 3', u),
      }),
    ),
    ...series.map((s, i) => curvePath(curves[i]!, s, u)),
    eventLabels(spec, events, room, eventRows),
    element('rect', { ...rectOf(box), fill: 'none', stroke: ink.frame, 'stroke-width': LINE.fine * u }),
  ].join('');
  // The strips of names are full to whoever comes later.
  room.claim({ ...box, bottom: plot.top });
  room.claim({ ...box, top: plot.bottom });
  return { svg, room, y, curves: drawn.slice(0, curves.length), bandEdge: drawn[curves.length]! };
}

function evDomain(series: readonly EvSeries[], band: readonly BandPoint[]): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const s of series)
    for (const { ev } of s.points) [low, high] = [Math.min(low, ev), Math.max(high, ev)];
  for (const b of band) [low, high] = [Math.min(low, b.lowEv100), Math.max(high, b.highEv100)];
  // Constant light still needs a height to stand in.
  const slack = Math.max(0, 2 - (high - low)) / 2;
  return [low - slack, high + slack];
}

function corners(s: EvSeries, axis: TimeAxis, y: (ev: number) => number): Point[] {
  const points = s.points.map(({ ms, ev }) => ({ x: axis.x(ms), y: y(ev) }));
  return s.stepped ? stepCorners(points) : points;
}

// A hollow line lets a thinner one be seen inside it.
function curvePath(points: readonly Point[], s: EvSeries, u: number): string {
  const whole = path(points, s, u);
  if (s.core === undefined) return whole;
  return whole + path(points, { ...s, weight: s.weight - 2 * LINE.fine, stroke: s.core }, u);
}

function path(points: readonly Point[], { stroke, weight, dash }: EvSeries, u: number): string {
  return polyline(points, {
    stroke,
    width: weight * u,
    join: 'round',
    dash: dash === undefined ? undefined : dashes(dash, u),
  });
}

/** A dash pattern scaled with the picture. */
export function dashes(pattern: string, u: number): string {
  return pattern
    .split(' ')
    .map((length) => coordinate(Number(length) * u))
    .join(' ');
}

function bandShape(
  band: readonly BandPoint[],
  axis: TimeAxis,
  y: (ev: number) => number,
  { unit, ink }: Look,
): string {
  if (band.length < 2) return '';
  const fill = area<BandPoint>()
    .x((b) => axis.x(b.ms))
    .y0((b) => y(b.lowEv100))
    .y1((b) => y(b.highEv100))
    .digits(2);
  const edge = (end: 'lowEv100' | 'highEv100') =>
    path(
      band.map((b) => ({ x: axis.x(b.ms), y: y(b[end]) })),
      { points: [], stepped: false, weight: LINE.fine, stroke: ink.edge, dash: '1.5 3' },
      unit,
    );
  return (
    element('path', { d: fill(band) ?? '', fill: ink.paper, 'fill-opacity': '0.6' }) +
    edge('lowEv100') +
    edge('highEv100')
  );
}

function grid(
  { axis, look, moments, words }: EvPanelSpec,
  plot: Box,
  y: ScaleLinear<number, number>,
): string {
  const { unit: u, ink } = look;
  const stroke = { stroke: ink.grid, 'stroke-width': LINE.fine * u };
  const stepEv = [1, 2, 5, 10, 20].find((step) => Math.abs(y(step) - y(0)) >= 14.5 * u) ?? 50;
  const [low = 0, high = 0] = y.domain();
  const ticks = y.ticks((high - low) / stepEv);
  const rows = ticks.map((ev, i) => {
    const label = words.number(ev, 0);
    return (
      element('line', { x1: axis.left, x2: axis.right, y1: y(ev), y2: y(ev), ...stroke }) +
      textAt(
        axis.left - 6 * u,
        y(ev) + 0.36 * TYPE.body * u,
        i === ticks.length - 1 ? `${words.chart.ev} ${label}` : label,
        {
          size: TYPE.body * u,
          anchor: 'end',
          fill: ink.text,
        },
      )
    );
  });
  const columns = clockTicks(moments, axis, { spacing: clockSpacing(look, words, moments), words }).map(
    ({ x }) => element('line', { x1: x, x2: x, y1: plot.top, y2: plot.bottom, ...stroke }),
  );
  return [...columns, ...rows].join('');
}
