// The chart of a review: settings as planned and as taken above, what they were off the target below.

import type { PlanMade, Review, ReviewFrame } from '@evenfall/core';
import { scaleLinear } from 'd3-scale';
import { LINE, lookFor, TYPE } from '../svg/ink.js';
import { stepCorners } from '../svg/label-room.js';
import { polyline } from '../svg/polyline.js';
import { coordinate, element, escapeXml, rectOf, svgRoot, textAt } from '../svg/svg.js';
import { chartEvents } from '../text/chart-events.js';
import { checkGiven, checkPlan, givenWords } from '../text/given.js';
import { instantMs, wordsOver } from '../text/local-time.js';
import { reviewChartWords } from '../text/review.js';
import { english } from '../text/words.js';
import { callout } from './callout.js';
import { evPanel } from './ev-panel.js';
import { altitudeRow, clockRow, heading, MARGIN } from './frame.js';
import { type ChartOptions, chartSize, outerSize } from './plan.js';
import { settingPoints, targetPoints, thinned } from './series.js';
import { timeAxis } from './time-axis.js';

/** Share of the height for what the settings were off. */
const OFF_SHARE = 0.3;

/**
 * A review as a picture: the settings as planned and as taken against the target, and below them by how many stops each frame
 * was off. A ring stands where a cue was not on time, a cross where the largest correction is not enough.
 *
 * @param plan that was shot
 * @param review of it, from `reviewFrames`
 * @param options size, ink and language
 * @returns SVG text, with a title and a description for those who cannot see it
 * @throws RangeError on a width or height that {@link ChartOptions} does not allow
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { reviewFrames } from '@evenfall/core';
 * import { reviewChart } from '@evenfall/chart';
 *
 * const taken = plan.frames.map(({ frame, at, shutterS, iso }) => ({ file: `${frame}.jpg`, at, shutterS, iso }));
 * const svg = reviewChart(plan, reviewFrames(plan, taken));
 * svg.slice(0, 4); // → '<svg'
 * svg.includes('0 missing'); // → true
 * ```
 */
export function reviewChart(plan: PlanMade, review: Review, options: ChartOptions = {}): string {
  checkPlan(plan);
  checkGiven('review', review, 'summary', 'what reviewFrames gives');
  const { width, height } = chartSize(options);
  const { variant = 'print' } = options;
  const words = wordsOver(plan, givenWords(options.words ?? english));
  const own = reviewChartWords(words);
  const look = lookFor(variant, width);
  const { unit: u, ink } = look;
  const { frames } = plan;
  const axis = timeAxis(frames, MARGIN.left * u, width - MARGIN.right * u);
  const top = MARGIN.top * u;
  const bottom = height - MARGIN.bottom * u;
  const panelBottom = bottom - OFF_SHARE * (bottom - top);
  const row = { moments: frames, axis, look, words, width };
  const shown = review.frames.filter(({ frame, doubled }) => frame !== null && doubled !== true);
  const taken = takenPoints(shown);
  // As the light was, where it was read.
  const read = thinned(shown).map((f) => ({ ms: instantMs(f.at), ev: f.targetEv100 }));
  const target = read.length < 2 ? targetPoints(frames) : read;
  const panel = evPanel({
    ...row,
    box: { left: axis.left, right: axis.right, top, bottom: panelBottom },
    series: [
      {
        points: settingPoints(frames),
        stepped: true,
        weight: LINE.hollow,
        stroke: ink.edge,
        core: ink.paper,
      },
      { points: target, stepped: false, weight: LINE.line, stroke: ink.target, dash: '7 4' },
      ...(taken.length === 0
        ? []
        : [{ points: taken, stepped: true, weight: LINE.line, stroke: ink.settings }]),
    ],
    band: [],
    events: chartEvents(plan.events, frames),
  });
  const [planned = [], aim = [], line = []] = panel.curves;
  const rings = review.cues
    .filter(({ lateS, seen }) => seen && lateS !== 0)
    .map(({ frame }) => ({ x: axis.xAt(frames[frame]!.at), y: panel.y(frames[frame]!.settingEv100) }));
  const r = 5 * u;
  for (const { x, y } of rings) panel.room.claim({ left: x - r, right: x + r, top: y - r, bottom: y + r });
  const style = { size: TYPE.label * u, bold: true };
  const common = { room: panel.room, unit: u };
  const title = plan.shoot.title === '' ? words.untitled : plan.shoot.title;
  const under = [
    words.date(plan.shoot.date),
    words.card.frames(review.summary.takenFrames),
    words.chart.evNote,
  ].join(' · ');
  return svgRoot(
    {
      ...outerSize(variant, width, height),
      viewBox: `0 0 ${coordinate(width)} ${coordinate(height)}`,
      role: 'img',
    },
    [
      element('title', {}, [escapeXml(title)]),
      element('desc', {}, [
        escapeXml(
          own.described({
            taken: review.summary.takenFrames,
            planned: review.summary.plannedFrames,
            missing: review.missingFrames.length,
            offTime: rings.length,
            worst: words.number(worstOf(shown), 2),
          }),
        ),
      ]),
      element('rect', { width, height, fill: ink.paper }),
      heading(title, under, width, look),
      panel.svg,
      ...rings.map(({ x, y }) =>
        element('circle', {
          cx: x,
          cy: y,
          r,
          fill: 'none',
          stroke: ink.frame,
          'stroke-width': LINE.line * u,
        }),
      ),
      callout({
        ...common,
        text: own.taken,
        curve: line,
        others: [planned, aim],
        side: 'above',
        style: { ...style, fill: ink.settings },
      }),
      callout({
        ...common,
        text: own.planned,
        curve: planned,
        others: [line, aim],
        side: 'below',
        style: { ...style, fill: ink.edge },
      }),
      callout({
        ...common,
        text: words.chart.target,
        curve: aim,
        others: [line, planned],
        side: 'below',
        style: { ...style, fill: ink.target },
      }),
      offPanel(),
      altitudeRow({ ...row, y: top }),
      clockRow({ ...row, y: bottom }),
    ],
  );

  /** What every frame was off; darker than wanted is up, as the offset is. */
  function offPanel(): string {
    const box = { left: axis.left, right: axis.right, top: panelBottom + 8 * u, bottom };
    const size = TYPE.body * u;
    const offs = shown.map(offOf);
    const low = offs.reduce((least, ev) => Math.min(least, ev), -0.5);
    const high = offs.reduce((most, ev) => Math.max(most, ev), 0.5);
    const y = scaleLinear([low, high], [box.bottom - 6 * u, box.top + size + 10 * u]);
    const points = shown.map((frame) => ({ x: axis.xAt(frame.at), y: y(offOf(frame)) }));
    const beyond = shown.filter(({ beyondEv }) => beyondEv !== undefined);
    const ticks = y.ticks(4);
    const digits = ticks.every(Number.isInteger) ? 0 : 1;
    const arm = 3.5 * u;
    const fine = { stroke: ink.frame, 'stroke-width': LINE.fine * u };
    return [
      ...ticks.map(
        (value) =>
          element('line', {
            x1: axis.left,
            x2: axis.right,
            y1: y(value),
            y2: y(value),
            stroke: value === 0 ? ink.frame : ink.grid,
            'stroke-width': LINE.fine * u,
          }) +
          textAt(axis.left - 6 * u, y(value) + 0.36 * size, words.number(value, digits), {
            size,
            anchor: 'end',
            fill: ink.text,
          }),
      ),
      polyline(stepCorners(points), { stroke: ink.settings, width: LINE.line * u }),
      ...beyond.map((frame) => {
        const [x, at] = [axis.xAt(frame.at), y(offOf(frame))];
        return (
          element('line', { x1: x - arm, x2: x + arm, y1: at - arm, y2: at + arm, ...fine }) +
          element('line', { x1: x - arm, x2: x + arm, y1: at + arm, y2: at - arm, ...fine })
        );
      }),
      textAt(
        axis.left + 6 * u,
        box.top + size + 2 * u,
        beyond.length === 0 ? own.off : `${own.off}; × ${own.beyond}`,
        { size, fill: ink.text },
      ),
      element('rect', { ...rectOf(box), fill: 'none', ...fine }),
    ].join('');
  }
}

const offOf = ({ settingEv100, targetEv100 }: ReviewFrame) => settingEv100 - targetEv100;

function worstOf(frames: readonly ReviewFrame[]): number {
  return frames.reduce((most, frame) => Math.max(most, Math.abs(offOf(frame))), 0);
}

/** Where the settings' EV changes, and the last frame. */
function takenPoints(frames: readonly ReviewFrame[]) {
  return frames
    .filter((f, i) => i === frames.length - 1 || f.settingEv100 !== frames[i - 1]?.settingEv100)
    .map((f) => ({ ms: instantMs(f.at), ev: f.settingEv100 }));
}
