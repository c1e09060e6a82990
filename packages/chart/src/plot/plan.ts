// The chart of a plan: light and settings above, the schedule of each control below.

import type { Control, PlanFrame, PlanMade } from '@evenfall/core';
import { LINE, type Look, lookFor, TYPE, type Variant } from '../svg/ink.js';
import { coordinate, element, escapeXml, svgRoot } from '../svg/svg.js';
import { chartEvents } from '../text/chart-events.js';
import { describePlan } from '../text/describe.js';
import { checkOptions, checkPlan, givenWords } from '../text/given.js';
import { instantMs, wordsOver } from '../text/local-time.js';
import { english, type Words } from '../text/words.js';
import { bracketLanes } from './bracket-lane.js';
import { callout } from './callout.js';
import { dashes, type EvPanel, evPanel } from './ev-panel.js';
import type { EvSeries } from './ev-spec.js';
import { altitudeRow, clockRow, heading, MARGIN } from './frame.js';
import { lane, laneWeight, type Run, runsOf } from './lanes.js';
import { moveLanes } from './move-lanes.js';
import { bandOf, scenePoints, settingPoints, targetPoints } from './series.js';
import { type TimeAxis, timeAxis } from './time-axis.js';

/** Size, ink and language of a chart. */
export interface ChartOptions {
  /** Default print, black and grey on white. */
  readonly variant?: Variant | undefined;
  /** Points, 300 to 10000; default 720. */
  readonly width?: number | undefined;
  /** Points, 200 to 10000; default 0.72 of the width. */
  readonly height?: number | undefined;
  /** Language and clock; default English and 24 hours. */
  readonly words?: Words | undefined;
}

/** Of every chart; a title and a place are those of a light chart. */
const CHART_KEYS = ['variant', 'width', 'height', 'words', 'title', 'place'];

/** A chart's outer size; throws RangeError where there is no room for a chart. */
export function chartSize(options: ChartOptions) {
  checkOptions(options, CHART_KEYS);
  const { width = 720, height = width * 0.72 } = options;
  inside('width', width, 300);
  inside('height', height, 200);
  return { width, height };
}

function inside(name: string, value: number, least: number): void {
  if (Number.isFinite(value) && value >= least && value <= 10_000) return;
  throw new RangeError(
    `${name} must be ${least} to 10000, got ${typeof value === 'string' ? JSON.stringify(value) : value}`,
  );
}

/** Paper counts in points, screens in pixels. */
export function outerSize(variant: Variant, width: number, height: number) {
  const unit = variant === 'print' ? 'pt' : '';
  return { width: `${coordinate(width)}${unit}`, height: `${coordinate(height)}${unit}` };
}

/**
 * The plan as a picture: light and settings above, the schedule of each control below. Print is black and
 * grey; screen adds colour and nothing else. Type and lines are sized for A4 across at 720 pt and stay
 * legible when that is brought down to A6.
 *
 * @param plan from `planShoot` or `readPlan`
 * @param options size, ink and language
 * @returns SVG text, with a title and a description for those who cannot see it
 * @throws RangeError on a width or height that {@link ChartOptions} does not allow, or a plan whose times are
 *   none
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { planChart } from '@evenfall/chart';
 *
 * const svg = planChart(plan, { variant: 'dark' });
 * svg.slice(0, 4); // → '<svg'
 * svg.includes('<desc'); // → true
 * planChart(plan, { width: 200 }); // throws RangeError: width must be 300 to 10000, got 200
 * ```
 */
export function planChart(plan: PlanMade, options: ChartOptions = {}): string {
  checkPlan(plan);
  const { width, height } = chartSize(options);
  const { variant = 'print' } = options;
  const words = wordsOver(plan, givenWords(options.words ?? english));
  const look = lookFor(variant, width);
  const u = look.unit;
  const { frames } = plan;
  const axis = timeAxis(frames, MARGIN.left * u, width - MARGIN.right * u);
  const top = MARGIN.top * u;
  const bottom = height - MARGIN.bottom * u;
  const lanes = laneList(frames, words);
  const moving = [...bracketLanes(plan, words), ...moveLanes(plan, words)];
  const unitsOf = (list: readonly { readonly weight: number }[]) =>
    list.reduce((sum, { weight }) => sum + weight, 0);
  const laneUnits = unitsOf(lanes) + unitsOf(moving);
  const lanesShare = moving.length === 0 ? 0.47 : 0.62;
  const laneHeight = Math.min(27 * u, (lanesShare * (bottom - top)) / laneUnits);
  const panelBottom = bottom - laneHeight * laneUnits - 6 * u;
  const row = { moments: frames, axis, look, words, width };
  const panel = evPanel({
    ...row,
    box: { left: axis.left, right: axis.right, top, bottom: panelBottom },
    series: seriesOf(frames, look),
    band: bandOf(frames),
    events: chartEvents(plan.events, frames),
  });
  const posts = filterChanges(frames).map((frame) => axis.xAt(frame.at));
  let laneTop = panelBottom + 6 * u;
  const laneSvg = lanes.map(({ control, name, runs, weight }) => {
    const box = { left: axis.left, right: axis.right, top: laneTop, bottom: laneTop + weight * laneHeight };
    laneTop = box.bottom;
    // The filter's own steps stand where the posts end.
    return lane({ name, runs, box, axis, look, posts: control === 'filter' ? [] : posts });
  });
  const filterTop = laneTop - lanes.at(-1)!.weight * laneHeight;
  const moveSvg = moving.map(({ weight, draw }) => {
    const box = { left: axis.left, right: axis.right, top: laneTop, bottom: laneTop + weight * laneHeight };
    laneTop = box.bottom;
    return draw(box, axis, look);
  });
  const title = plan.shoot.title === '' ? words.untitled : plan.shoot.title;
  return svgRoot(
    {
      ...outerSize(variant, width, height),
      viewBox: `0 0 ${coordinate(width)} ${coordinate(height)}`,
      role: 'img',
    },
    [
      element('title', {}, [escapeXml(title)]),
      element('desc', {}, [escapeXml(describePlan(plan, words))]),
      element('rect', { width, height, fill: look.ink.paper }),
      heading(title, underTitle(plan, lanes, words), width, look),
      panel.svg,
      ...posts.map((x) => filterPost(x, panelBottom, filterTop, look)),
      affectedMarks(frames, panel, axis, look, words),
      names(panel, look, words, frames),
      ...laneSvg,
      ...moveSvg,
      altitudeRow({ ...row, y: top }),
      clockRow({ ...row, y: bottom }),
    ],
  );
}

interface Lane {
  readonly control: Control;
  readonly name: string;
  readonly runs: readonly Run[];
  readonly weight: number;
}

// Aperture has a lane only where it moves; otherwise the line under the title says it.
function laneList(frames: readonly PlanFrame[], words: Words): Lane[] {
  return (['shutter', 'iso', 'aperture', 'filter'] as const)
    .map((control) => ({ control, name: words.lanes[control], runs: runsOf(control, frames, words) }))
    .filter(({ control, runs }) => control !== 'aperture' || runs.length > 1)
    .map((l) => ({ ...l, weight: laneWeight(l.runs) }));
}

function underTitle(plan: PlanMade, lanes: readonly Lane[], words: Words): string {
  const { shoot, frames } = plan;
  return [
    words.date(shoot.date),
    `${words.chart.interval(words.seconds(shoot.intervalS))}`,
    words.card.frames(frames.length),
    ...(lanes.some((l) => l.control === 'aperture') ? [] : [`f/${frames[0]!.aperture}`]),
    words.chart.evNote,
  ].join(' · ');
}

function seriesOf(frames: readonly PlanFrame[], { ink }: Look): EvSeries[] {
  return [
    {
      points: settingPoints(frames),
      stepped: true,
      weight: LINE.hollow,
      stroke: ink.settings,
      core: ink.paper,
    },
    { points: targetPoints(frames), stepped: false, weight: LINE.line, stroke: ink.target, dash: '7 4' },
    { points: scenePoints(frames), stepped: false, weight: LINE.line, stroke: ink.scene },
  ];
}

// A filter change is felt in every lane: a post through all of them.
function filterPost(x: number, y1: number, y2: number, { unit, ink }: Look): string {
  return element('line', {
    x1: x,
    x2: x,
    y1,
    y2,
    stroke: ink.frame,
    'stroke-width': LINE.fine * unit,
    'stroke-dasharray': dashes('5 3', unit),
  });
}

function filterChanges(frames: readonly PlanFrame[]): PlanFrame[] {
  return frames.filter((f, i) => i > 0 && f.filters.join('+') !== frames[i - 1]!.filters.join('+'));
}

// A ring on the settings' line where a hand on the lens may spoil frames; the first one says so.
function affectedMarks(
  frames: readonly PlanFrame[],
  panel: EvPanel,
  axis: TimeAxis,
  { unit: u, ink }: Look,
  words: Words,
): string {
  const r = 5.5 * u;
  const rings = frames
    .filter((f, i) => f.affected && frames[i - 1]?.affected !== true)
    .map((f) => ({ x: axis.x(instantMs(f.at)), y: panel.y(f.settingEv100) }));
  for (const { x, y } of rings) panel.room.claim({ left: x - r, right: x + r, top: y - r, bottom: y + r });
  const drawn = rings.map(({ x, y }) =>
    element('circle', { cx: x, cy: y, r, fill: ink.paper, stroke: ink.frame, 'stroke-width': LINE.line * u }),
  );
  const name = callout({
    text: words.chart.affected,
    curve: rings.slice(0, 1),
    others: [],
    side: 'above',
    room: panel.room,
    unit: u,
    style: { size: TYPE.body * u, fill: ink.text },
  });
  return [...drawn, name].join('');
}

function names(panel: EvPanel, { unit: u, ink }: Look, words: Words, frames: readonly PlanFrame[]): string {
  const [settings = [], target = [], scene = []] = panel.curves;
  const style = { size: TYPE.label * u, bold: true };
  const common = { room: panel.room, unit: u };
  const apart = frames.some((f) => Math.abs(f.targetEv100 - f.sceneEv100) > 0.1);
  // Where it is dark, scene and target lie furthest apart.
  const atNight = [0.85, 0.8, 0.75, 0.9, 0.7, 0.65, 0.6, 0.55, 0.5, 0.45, 0.4, 0.3, 0.2];
  const dusk = frames[0]!.sceneEv100 >= frames.at(-1)!.sceneEv100;
  const shares = dusk ? atNight : atNight.map((share) => 1 - share);
  const sceneName = callout({
    ...common,
    text: apart ? words.chart.scene : words.chart.sceneAndTarget,
    curve: scene,
    others: [settings, target],
    side: 'below',
    style: { ...style, fill: ink.scene },
    shares,
  });
  const targetName = apart
    ? callout({
        ...common,
        text: words.chart.target,
        curve: target,
        others: [settings, scene],
        side: 'above',
        style: { ...style, fill: ink.target },
        shares,
      })
    : '';
  const settingsName = callout({
    ...common,
    text: words.chart.settings,
    curve: settings,
    others: [target, scene],
    side: 'above',
    style: { ...style, fill: ink.settings },
  });
  const bandName = callout({
    ...common,
    text: words.chart.band,
    curve: panel.bandEdge,
    others: [target, scene, settings],
    side: 'below',
    style: { size: TYPE.body * u, fill: ink.text },
  });
  return sceneName + targetName + settingsName + bandName;
}
