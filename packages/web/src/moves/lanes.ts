// Lanes of the picture for a camera that moves: where each axis stands, how fast it looks, what an interval holds.

import { COMFORT_CROSSING_S, type PlanFrame, type PlanMade, type Travel } from '@evenfall/core';
import type { Point } from '../chart/data.js';
import type { Mark } from './lane-marks.js';
import { goneText, lengthText, positionOf, secondsText } from './tell.js';
import { moveWords } from './words.js';

export interface Line {
  readonly label: string;
  readonly points: readonly Point[];
}

/** Its lines are curves; those of an interval are steps, each with its part of the interval under it. */
export interface MoveLane {
  readonly name: 'pan' | 'tilt' | 'slide' | 'speed' | 'time';
  readonly heightPx: number;
  readonly min: number;
  readonly max: number;
  readonly lines: readonly Line[];
  readonly marks: readonly Mark[];
}

/** From the top down; none where the plan has no moves. */
export function moveLanes(plan: PlanMade): readonly MoveLane[] {
  const { move } = plan;
  if (move === undefined) return [];
  const frames = thinned(plan);
  return [
    ...move.travels.map((travel) => positionLane(travel, frames)),
    ...(move.fastest === undefined ? [] : [speedLane(frames, move.fastest.widthsPerS)]),
    timeLane(plan, frames),
  ];
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

function positionLane(travel: Travel, frames: readonly PlanFrame[]): MoveLane {
  const { axis, length } = travel;
  const points = pointsOf(frames, (frame) => positionOf(travel, frame));
  const [low, high] = [Math.min(0, length), Math.max(0, length)];
  const room = 0.5 * (high - low); // for the marks
  const falls = length < 0;
  return {
    name: axis,
    heightPx: 44,
    min: low - (falls ? 1 : 0.06) * room,
    max: high + (falls ? 0.06 : 1) * room,
    lines: [{ label: axis, points }],
    marks: [
      { at: points[0], text: lengthText(0, travel.unit), anchor: 'start', under: falls },
      { at: points.at(-1), text: goneText(length, travel), anchor: 'end', under: falls },
    ],
  };
}

/** Below the dashed line that is the limit of comfort. */
function speedLane(frames: readonly PlanFrame[], fastest: number): MoveLane {
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
    name: 'speed',
    heightPx: 56,
    min: 0,
    max: most * 1.45,
    lines: [
      { label: 'speed', points },
      { label: 'comfort', points: comfort },
    ],
    marks: [
      { at: comfort[0], text: w.comfort, anchor: 'start' },
      // Between the limit and the ground, where there is more room.
      {
        at: peak,
        text: w.width(secondsText(1 / fastest)),
        anchor: 'middle',
        under: fastest > limit / 2 && fastest < limit,
      },
    ],
  };
}

/** What comes one after the other in an interval, from the ground up; blank above is time to spare. */
export const PARTS = ['shutterS', 'bracketS', 'darkS', 'writeS', 'moveS', 'settleS'] as const;

function timeLane(plan: PlanMade, frames: readonly PlanFrame[]): MoveLane {
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
    name: 'time',
    heightPx: 74,
    min: 0,
    max: intervalS,
    lines: used.map((label, i) => ({ label, points: tops[i] ?? [] })),
    marks: names.map((part, i) => ({
      between: [layers[i - 1], layers[i] ?? []],
      text: budget.parts[part],
      anchor: 'middle',
    })),
  };
}
