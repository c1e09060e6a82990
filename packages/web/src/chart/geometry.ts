// Where everything of the picture lies: time across, EV up the sky, a lane for each control under it.

import type { Control, PlanMade } from '@evenfall/core';
import { type ChartData, chartData, type Run } from './data.js';
import { type Moment, momentsOf } from './moments.js';

/** CSS pixels from the corner of the picture, and how to go to and fro. */
export interface Geometry {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly top: number; // of the sky
  readonly evBottom: number; // of the sky
  readonly bottom: number; // of the last lane; the clock stands under it
  xOf(ms: number): number;
  msAt(x: number): number;
  yOf(ev: number): number;
  evAt(y: number): number;
}

export interface LanePlace {
  readonly control: Control;
  readonly runs: readonly Run[];
  readonly top: number;
  readonly bottom: number;
  yOf(level: number): number;
}

/** All that is drawn of a plan, and where. */
export interface Layout {
  readonly plan: PlanMade;
  readonly data: ChartData;
  readonly geometry: Geometry;
  readonly moments: readonly Moment[];
  readonly lanes: readonly LanePlace[];
  readonly lowEv: number;
  readonly highEv: number;
}

const LEFT_PX = 56; // for the names of axis and lanes
export const ROW_PX = 17; // of the names of moments
export const CLOCK_PX = 22; // under the last lane
export const LANE_PX = 40;
const QUIET_LANE_PX = 24; // of a control that stays

export function layoutOf(plan: PlanMade, width: number, skyPx: number): Layout {
  const data = chartData(plan);
  const left = LEFT_PX;
  const right = width - 2;
  const fromMs = Date.parse(plan.summary.startAt);
  const toMs = Math.max(Date.parse(plan.summary.endAt), fromMs + 1000);
  const xOf = (ms: number) => left + ((ms - fromMs) / (toMs - fromMs)) * (right - left);
  const moments = momentsOf(plan, xOf, left, right);
  const top = Math.max(1, ...moments.map(({ row }) => row + 1)) * ROW_PX + 3;
  const evBottom = top + skyPx;
  const levels = [...data.low, ...data.high, ...data.settings].map(({ y }) => y);
  const [lowEv, highEv] = [Math.min(...levels) - 0.8, Math.max(...levels) + 0.8];
  let laneTop = evBottom;
  const lanes = data.lanes.map(({ control, runs }): LanePlace => {
    const steps = runs.map(({ y }) => y);
    const [low, high] = [Math.min(...steps), Math.max(...steps)];
    const stays = high - low < 0.01;
    const lane = { top: laneTop, bottom: laneTop + (stays ? QUIET_LANE_PX : LANE_PX) };
    laneTop = lane.bottom;
    const [foot, head] = [lane.bottom - 5, lane.top + 17]; // room above the highest step for its label
    const yOf = (level: number) => (stays ? foot : foot - ((level - low) / (high - low)) * (foot - head));
    return { control, runs, ...lane, yOf };
  });
  const geometry: Geometry = {
    width,
    left,
    right,
    top,
    evBottom,
    bottom: laneTop,
    xOf,
    msAt: (x) => fromMs + ((x - left) / (right - left)) * (toMs - fromMs),
    yOf: (ev) => evBottom - ((ev - lowEv) / (highEv - lowEv)) * skyPx,
    evAt: (y) => lowEv + ((evBottom - y) / skyPx) * (highEv - lowEv),
  };
  return { plan, data, geometry, moments, lanes, lowEv, highEv };
}
