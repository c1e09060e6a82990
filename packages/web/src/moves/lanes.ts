// Lanes of the live chart for a camera that moves: where each axis stands, how fast it looks, what an interval holds.

import { COMFORT_CROSSING_S, type PlanFrame, type PlanMade, type Travel } from '@evenfall/core';
import type { Chart, ChartDataset } from 'chart.js';
import type { Point } from '../chart/data.js';
import type { Inks } from './inks.js';
import { type LaneName, type Mark, mark, nameLane } from './lane-names.js';
import { goneText, lengthText, positionOf, secondsText } from './tell.js';
import { moveWords } from './words.js';

export type Line = ChartDataset<'line', Point[]>;

/** All lanes of a move, for the chart that draws them. */
export interface MoveLanes {
  readonly lines: readonly Line[];
  readonly axes: readonly (readonly [id: string, weight: number, min: number, max: number])[]; // from the top down
  draw(chart: Chart): void; // names and marks, over the lines
}

interface Lane {
  readonly id: string;
  readonly name: LaneName;
  readonly stackWeight: number;
  readonly min: number;
  readonly max: number;
  readonly lines: readonly Line[];
  readonly marks: readonly Mark[];
}

/** Undefined where the plan has no moves. */
export function moveLanes(plan: PlanMade, inks: Inks): MoveLanes | undefined {
  const { move } = plan;
  if (move === undefined) return undefined;
  const frames = thinned(plan);
  const lanes = [
    ...move.travels.map((travel) => positionLane(travel, frames, inks)),
    ...(move.fastest === undefined ? [] : [speedLane(frames, move.fastest.widthsPerS, inks)]),
    timeLane(plan, frames, inks),
  ];
  return {
    lines: lanes.flatMap(({ lines }) => lines),
    axes: lanes.map(({ id, stackWeight, min, max }) => [id, stackWeight, min, max]),
    draw(chart: Chart) {
      for (const { id, name, marks } of lanes) {
        nameLane(chart, id, name, inks);
        mark(chart, id, marks, inks);
      }
    },
  };
}

const MOST_POINTS = 240;

/** Fewer frames than a screen has columns, for curves as smooth as these, and those that are worst. */
function thinned({ frames, move }: PlanMade): PlanFrame[] {
  const every = Math.max(1, Math.ceil(frames.length / MOST_POINTS));
  const kept = new Set([frames.length - 1, move?.tightest.frame, move?.fastest?.frame]);
  return frames.filter((_, i) => i % every === 0 || kept.has(i));
}

const pointsOf = (frames: readonly PlanFrame[], y: (frame: PlanFrame) => number): Point[] =>
  frames.map((frame) => ({ x: Date.parse(frame.at), y: y(frame) }));

function positionLane(travel: Travel, frames: readonly PlanFrame[], inks: Inks): Lane {
  const { axis, length } = travel;
  const points = pointsOf(frames, (frame) => positionOf(travel, frame));
  const [low, high] = [Math.min(0, length), Math.max(0, length)];
  const room = 0.3 * (high - low);
  const falls = length < 0;
  return {
    id: axis,
    name: axis,
    stackWeight: 2,
    min: low - (falls ? room : 0.1 * room),
    max: high + (falls ? 0.1 * room : room),
    lines: [line(axis, axis, points, { borderColor: inks.settings })],
    marks: [
      { at: points[0], text: lengthText(0, travel.unit), anchor: 'start', under: falls },
      { at: points.at(-1), text: goneText(length, travel), anchor: 'end', under: falls },
    ],
  };
}

/** Below the dashed line that is the limit of comfort. */
function speedLane(frames: readonly PlanFrame[], fastest: number, inks: Inks): Lane {
  const w = moveWords();
  const limit = 1 / COMFORT_CROSSING_S;
  // No step follows the last frame.
  const points = pointsOf(frames.slice(0, -1), ({ widthsPerS = 0 }) => widthsPerS);
  const most = Math.max(fastest, limit);
  const comfort = [frames[0], frames.at(-1)].flatMap((frame) =>
    frame === undefined ? [] : [{ x: Date.parse(frame.at), y: limit }],
  );
  const peak = points.reduce((a, b) => (b.y > a.y ? b : a), points[0] ?? { x: 0, y: 0 });
  return {
    id: 'speed',
    name: 'speed',
    stackWeight: 2.4,
    min: 0,
    max: most * 1.45,
    lines: [
      line('speed', 'speed', points, { borderColor: inks.settings }),
      line('comfort', 'speed', comfort, { borderColor: inks.text, borderWidth: 1, borderDash: [5, 3] }),
    ],
    marks: [
      { at: comfort[0], text: w.comfort, anchor: 'start' },
      // Under the limit's own words there is no room but below the curve.
      {
        at: fastest < limit ? { x: peak.x, y: peak.y / 2 } : peak,
        text: w.width(secondsText(1 / fastest)),
        anchor: 'middle',
      },
    ],
  };
}

/** What comes one after the other in an interval, from the ground up; blank above is time to spare. */
const PARTS = ['shutterS', 'darkS', 'writeS', 'moveS', 'settleS'] as const;
const SHADES = { shutterS: 0.55, darkS: 0.3, writeS: 0.5, moveS: 0.35, settleS: 0.2 };

function timeLane(plan: PlanMade, frames: readonly PlanFrame[], inks: Inks): Lane {
  const { intervalS } = plan.shoot;
  const { budget } = moveWords();
  const used = PARTS.filter((part) => plan.frames.some((frame) => (frame[part] ?? 0) > 0));
  const upTo = (count: number) => (frame: PlanFrame) =>
    used.slice(0, count).reduce((sum, part) => sum + (frame[part] ?? 0), 0);
  const tops = used.map((_, i) => pointsOf(frames, upTo(i + 1)));
  const slack = pointsOf(frames, () => intervalS);
  const layers = [...tops, slack];
  const names = [...used, 'slackS' as const];
  return {
    id: 'time',
    name: 'time',
    stackWeight: 3.2,
    min: 0,
    max: intervalS,
    lines: used.map((part, i) =>
      line(part, 'time', tops[i] ?? [], {
        borderColor: inks.text,
        borderWidth: 1,
        stepped: 'before',
        backgroundColor: faded(
          part === 'shutterS' || part === 'darkS' ? inks.settings : inks.text,
          SHADES[part],
        ),
        fill: i === 0 ? 'start' : '-1',
      }),
    ),
    marks: names.map((part, i) => ({
      between: [layers[i - 1], layers[i] ?? []],
      text: budget.parts[part],
      anchor: 'middle',
    })),
  };
}

function line(label: string, yAxisID: string, data: Point[], style: Partial<Line>): Line {
  return { label, yAxisID, data, borderWidth: 2, ...style };
}

/** A colour as the browser tells it, "rgb(154, 59, 15)", let through. */
function faded(colour: string, alpha: number): string {
  const [r = 0, g = 0, b = 0] = colour.match(/[\d.]+/g) ?? [];
  return `rgb(${r} ${g} ${b} / ${alpha})`;
}
