// The chart of the light alone: how bright the scene is, how sure that is, and how fast it changes.

import type { LightTable, Shoot } from '@evenfall/core';
import { scaleLinear } from 'd3-scale';
import { area } from 'd3-shape';
import { LINE, lookFor, TYPE } from '../svg/ink.js';
import { coordinate, element, escapeXml, rectOf, svgRoot, textAt } from '../svg/svg.js';
import { chartEvents } from '../text/chart-events.js';
import { describeLight, steepestRow } from '../text/describe.js';
import { checkGiven, givenWords } from '../text/given.js';
import { clockText, dateText, instantMs, wordsOver } from '../text/local-time.js';
import { placeTexts } from '../text/place.js';
import { english } from '../text/words.js';
import { callout } from './callout.js';
import { evPanel } from './ev-panel.js';
import { altitudeRow, clockRow, heading, MARGIN } from './frame.js';
import { type ChartOptions, chartSize, outerSize } from './plan.js';
import { thinned } from './series.js';
import { timeAxis } from './time-axis.js';

/**
 * The light table as a picture: how bright the scene is, how sure that is, and below it the speed of the
 * change.
 *
 * @param table from `lightTable`, one row or more
 * @param options as a plan's chart, with a title and a place for the heading
 * @returns SVG text
 * @throws RangeError without rows, and on a width or height that {@link ChartOptions} does not allow
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { lightTable } from '@evenfall/core';
 * import { lightChart } from '@evenfall/chart';
 *
 * const table = lightTable(shoot);
 * if (table.kind === 'infeasible') throw new Error(table.infeasible.text);
 * lightChart(table, { title: 'An evening' }).slice(0, 4); // → '<svg'
 * ```
 */
export function lightChart(
  table: LightTable,
  options: ChartOptions & {
    readonly title?: string | undefined;
    readonly place?: Shoot['place'] | undefined;
  } = {},
): string {
  checkGiven('table', table, 'rows', 'what lightTable gives');
  const { width, height } = chartSize(options);
  const { variant = 'print' } = options;
  const words = wordsOver(table, givenWords(options.words ?? english));
  const look = lookFor(variant, width);
  const { unit: u, ink } = look;
  if (table.rows.length === 0) throw new RangeError('a light table needs at least one row, got none');
  const rows = thinned(table.rows);
  const steepest = steepestRow(table);
  const axis = timeAxis(table.rows, MARGIN.left * u, width - MARGIN.right * u);
  const top = MARGIN.top * u;
  const bottom = height - MARGIN.bottom * u;
  const panelBottom = bottom - 0.26 * (bottom - top);
  const row = { moments: table.rows, axis, look, words, width };
  const panel = evPanel({
    ...row,
    box: { left: axis.left, right: axis.right, top, bottom: panelBottom },
    series: [
      {
        points: rows.map((r) => ({ ms: instantMs(r.at), ev: r.sceneEv100 })),
        stepped: false,
        weight: LINE.heavy,
        stroke: ink.scene,
      },
    ],
    band: rows.map(({ at, lowEv100, highEv100 }) => ({ ms: instantMs(at), lowEv100, highEv100 })),
    events: chartEvents(table.events, table.rows),
  });
  const [cx, cy] = [axis.xAt(steepest.at), panel.y(steepest.sceneEv100)];
  const slope = words.number(steepest.slopeEvPerMin, 2);
  const common = { others: [], room: panel.room, unit: u };
  const style = { size: TYPE.label * u, bold: true };
  const marks = [
    callout({
      ...common,
      text: words.chart.steepest,
      curve: [{ x: cx, y: cy }],
      side: 'above',
      style: { ...style, fill: ink.text },
    }),
    callout({
      ...common,
      text: words.chart.scene,
      curve: panel.curves[0]!,
      side: 'below',
      style: { ...style, fill: ink.scene },
    }),
    callout({
      ...common,
      text: words.chart.band,
      curve: panel.bandEdge,
      others: [panel.curves[0]!],
      side: 'below',
      style: { size: TYPE.body * u, fill: ink.text },
    }),
  ];
  const title = options.title ?? words.untitledLight;
  const under = [
    words.date(dateText(table.rows[0]!.at)),
    ...(options.place === undefined ? [] : placeTexts(options.place, words)),
    words.chart.evNote,
  ];
  return svgRoot(
    {
      ...outerSize(variant, width, height),
      viewBox: `0 0 ${coordinate(width)} ${coordinate(height)}`,
      role: 'img',
    },
    [
      element('title', {}, [escapeXml(title)]),
      element('desc', {}, [escapeXml(describeLight(table, words))]),
      element('rect', { width, height, fill: ink.paper }),
      heading(title, under.join(' · '), width, look),
      panel.svg,
      ...marks,
      speedPanel(),
      altitudeRow({ ...row, y: top }),
      clockRow({ ...row, y: bottom }),
    ],
  );

  function speedPanel(): string {
    const box = { left: axis.left, right: axis.right, top: panelBottom + 8 * u, bottom };
    const size = TYPE.body * u;
    const peak = words.chart.speedWithPeak(slope, clockText(steepest.at, false, words));
    const slopes = rows.map((r) => r.slopeEvPerMin);
    const domain = [Math.min(0, ...slopes), Math.max(0, ...slopes)];
    const y = scaleLinear(domain[0] === domain[1] ? [-0.1, 0.1] : domain, [
      box.bottom - 8 * u,
      box.top + (size + 10 * u),
    ]);
    const shape = area<(typeof rows)[number]>()
      .x((r) => axis.xAt(r.at))
      .y0(y(0))
      .y1((r) => y(r.slopeEvPerMin))
      .digits(2);
    const ticks = y.ticks(3);
    // A slow evening has ticks half a tenth apart.
    const digits = ticks.every((value) => Math.abs(value * 10 - Math.round(value * 10)) < 1e-6) ? 1 : 2;
    return [
      element('path', {
        d: shape(rows) ?? '',
        fill: ink.twilight.night,
        stroke: ink.frame,
        'stroke-width': LINE.fine * u,
      }),
      ...ticks.map((value) =>
        [
          element('line', {
            x1: axis.left - 4 * u,
            x2: axis.left,
            y1: y(value),
            y2: y(value),
            stroke: ink.frame,
            'stroke-width': LINE.fine * u,
          }),
          textAt(axis.left - 6 * u, y(value) + 0.36 * size, words.number(value, digits), {
            size,
            anchor: 'end',
            fill: ink.text,
          }),
        ].join(''),
      ),
      element('line', {
        x1: cx,
        x2: cx,
        y1: y(0),
        y2: y(steepest.slopeEvPerMin),
        stroke: ink.frame,
        'stroke-width': LINE.line * u,
      }),
      textAt(axis.left + 6 * u, box.top + size + 2 * u, peak, { size, fill: ink.text }),
      element('rect', { ...rectOf(box), fill: 'none', stroke: ink.frame, 'stroke-width': LINE.fine * u }),
    ].join('');
  }
}
