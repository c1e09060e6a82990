// The schedule below the curve: one lane a control, a step line with what the dial says on its steps.

import type { Control, PlanFrame } from '@evenfall/core';
import { scaleLinear } from 'd3-scale';
import { LINE, type Look, TYPE } from '../svg/ink.js';
import { dense, labelRoom, type Place, type Point, stepCorners } from '../svg/label-room.js';
import { polyline } from '../svg/polyline.js';
import { type Box, textAt, textBox } from '../svg/svg.js';
import { instantMs } from '../text/local-time.js';
import { controlText } from '../text/setting.js';
import type { Words } from '../text/words.js';
import { laneGround, laneName } from './lane-frame.js';
import type { TimeAxis } from './time-axis.js';

/** Frames in a row over which one control stays. */
export interface Run {
  readonly label: string;
  readonly level: number; // stops of light this control lets through, from any zero
  readonly fromMs: number;
  readonly toMs: number;
}

/** Stops of light the control lets through at a frame; only differences mean anything. */
function levelOf(control: Control, frame: PlanFrame): number {
  if (control === 'shutter') return Math.log2(frame.shutterS);
  if (control === 'iso') return Math.log2(frame.isoExact);
  return control === 'aperture' ? -2 * Math.log2(frame.fNumber) : -frame.filterStops;
}

/** The runs of one control over the frames; the last ends with the last frame. */
export function runsOf(control: Control, frames: readonly PlanFrame[], words: Words): Run[] {
  const starts = frames.filter((frame, i) => {
    const before = frames[i - 1];
    return before === undefined || controlText(control, before, words) !== controlText(control, frame, words);
  });
  const endMs = instantMs(frames.at(-1)!.at);
  return starts.map((frame, i) => ({
    label: controlText(control, frame, words),
    level: levelOf(control, frame),
    fromMs: instantMs(frame.at),
    toMs: starts[i + 1] === undefined ? endMs : instantMs(starts[i + 1]!.at),
  }));
}

/** Share of the height a lane takes: a control that stays needs one line, one that climbs needs more. */
export function laneWeight(runs: readonly Run[]): number {
  const levels = new Set(runs.map((run) => run.level)).size;
  if (levels === 1) return 1;
  return runs.length <= FEW_RUNS ? 2.4 : Math.min(3.2, 1.35 + 0.18 * levels);
}

// With few runs their labels are likely long, so the lane keeps a row below the line too.
const FEW_RUNS = 6;
// A shutter that is timed freely says something else every few frames: a few of its times, well apart, tell of the rest.
const MANY_RUNS = 40;
const APART = 9;

export interface LaneSpec {
  readonly name: string;
  readonly runs: readonly Run[];
  readonly box: Box;
  readonly axis: TimeAxis;
  readonly look: Look;
  readonly posts: readonly number[]; // x of the upright lines that cross every lane
}

/** One lane; labels that would cover another, or the line, are left out, the longest runs first in line. */
export function lane({ name, runs, box, axis, look, posts }: LaneSpec): string {
  const { unit: u, ink } = look;
  const size = TYPE.body * u;
  const levels = runs.map((run) => run.level);
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  const few = low !== high && runs.length <= FEW_RUNS;
  const inner = { top: box.top + size + 5.5 * u, bottom: box.bottom - (few ? size + 5.5 * u : 5 * u) };
  const middle = (inner.top + inner.bottom) / 2;
  const y = low === high ? () => middle : scaleLinear([low, high], [inner.bottom, inner.top]);
  const points = [
    ...runs.map((run) => ({ x: axis.x(run.fromMs), y: y(run.level) })),
    { x: axis.right, y: y(levels.at(-1)!) },
  ];
  const corners = stepCorners(points);
  const upright = posts.map((x) => [
    { x, y: box.top },
    { x, y: box.bottom },
  ]);
  const room = labelRoom(
    box,
    [corners, ...upright].map((points) => dense(points, 1.5 * u)),
  );
  const labels: string[] = [];
  const said = new Set<string>();
  for (const i of byImportance(runs)) {
    if (runs.length > MANY_RUNS && said.has(runs[i]!.label)) continue;
    const place = room.place(placesFor(runs[i]!, points[i]!, points[i + 1]!, size, u, ink.text), 1.2 * u);
    if (place === undefined) continue;
    labels.push(textAt(place.x, place.y, place.text, place.style));
    said.add(place.text);
    if (runs.length > MANY_RUNS) {
      const { left, right } = textBox(place.x, place.y, place.text, place.style);
      room.claim({ left: left - APART * u, right: right + APART * u, top: box.top, bottom: box.bottom });
    }
  }
  return [
    laneGround(box, look),
    polyline(corners, { stroke: ink.settings, width: LINE.line * u }),
    ...labels,
    laneName(name, middle, axis, look),
  ].join('');
}

// The ends of the schedule first, then the longest runs, then in order of time.
function byImportance(runs: readonly Run[]): number[] {
  const rank = (i: number) =>
    i === 0 || i === runs.length - 1 ? Number.POSITIVE_INFINITY : runs[i]!.toMs - runs[i]!.fromMs;
  return runs.map((_, i) => i).sort((a, b) => (rank(b) === rank(a) ? a - b : rank(b) > rank(a) ? 1 : -1));
}

// Above the step's own line: over its start, its end or its middle; below it where above is taken.
function placesFor(run: Run, from: Point, to: Point, size: number, u: number, fill: string): Place[] {
  const text = run.label;
  const place = (x: number, y: number, anchor: 'start' | 'middle' | 'end') => ({
    x,
    y,
    text,
    style: { size, anchor, fill },
  });
  const width = textBox(0, 0, text, { size }).right;
  const above = from.y - 5.2 * u;
  const below = from.y + 4 * u + 0.76 * size;
  const roomy = to.x - from.x >= width + 4 * u;
  const starts = [place(from.x + (roomy ? 3 * u : 0), above, 'start'), place(to.x - 2 * u, above, 'end')];
  return [
    ...(roomy ? starts : starts.reverse()),
    place((from.x + to.x) / 2, above, 'middle'),
    place(from.x + 3 * u, below, 'start'),
    place(to.x - 2 * u, below, 'end'),
  ];
}
