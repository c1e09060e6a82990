// The chart of a plan on a canvas: light above, a lane for each control below, one time axis for all.

import type { Control, PlanMade } from '@evenfall/core';
import {
  Chart,
  type ChartConfiguration,
  type ChartDataset,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
} from 'chart.js';
import { clock } from '../parts/clock.js';
import { words } from '../words/words.js';
import { type Backdrop, backdropOf, backdropPlugin } from './backdrop.js';
import { type ChartData, chartData, type Point } from './data.js';
import type { Inks } from './inks.js';
import { laneLabelPlugin } from './lane-labels.js';
import { timeTicks } from './time-ticks.js';

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

export type Line = ChartDataset<'line', Point[]>;

/** Lanes below those of the controls, from a part of the page that is loaded later. */
export interface MoreLanes {
  readonly names: string; // other lanes, other names
  readonly lines: readonly Line[];
  readonly axes: readonly (readonly [id: string, axis: LaneAxis])[]; // from the top down
  draw(chart: Chart): void; // names and marks, over the lines
}

interface Shown {
  readonly plan: PlanMade;
  readonly data: ChartData;
  readonly inks: Inks;
  readonly backdrop: Backdrop;
  readonly more: MoreLanes | undefined;
}

/** Where the chart's inside lies on the page, CSS pixels from the canvas's corner, and how to go to and fro. */
export interface Geometry {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly evBottom: number;
  xOf(ms: number): number;
  msAt(x: number): number;
  yOf(ev: number): number;
  evAt(y: number): number;
}

export interface LiveChart {
  show(plan: PlanMade, inks: Inks, more?: MoreLanes): void;
  geometry(): Geometry | undefined;
  /** What is drawn, by the name of each line. */
  drawn(): Readonly<Record<string, readonly Point[]>>;
  remove(): void;
}

const AXIS_WIDTH = 56;

/** @param moved called after each drawing: on new data and on a new size */
export function liveChart(canvas: HTMLCanvasElement, moved: () => void): LiveChart {
  let now: Shown | undefined;
  let chart: Chart<'line', Point[]> | undefined;
  let controls = '';

  const plugins = [
    backdropPlugin(() => now),
    laneLabelPlugin(() => now && { lanes: now.data.lanes, inks: now.inks }),
    { id: 'more-lanes', afterDatasetsDraw: (drawn: Chart) => now?.more?.draw(drawn) },
    { id: 'moved', afterRender: moved },
  ];

  return {
    show(plan, inks, more) {
      const data = chartData(plan);
      now = { plan, data, inks, backdrop: backdropOf(plan), more };
      const lanes = data.lanes.map(({ control }) => control).join() + (more?.names ?? '');
      if (chart === undefined || lanes !== controls) {
        chart?.destroy();
        chart = new Chart(canvas, { ...configuration(now), plugins });
        controls = lanes;
        return;
      }
      chart.options = configuration(now).options ?? {};
      chart.data.datasets = datasets(now);
      chart.update('none');
    },
    geometry() {
      const x = chart?.scales.x;
      const ev = chart?.scales.ev;
      if (chart === undefined || x === undefined || ev === undefined) return undefined;
      const { left, right, top, bottom } = chart.chartArea;
      return {
        left,
        right,
        top,
        bottom,
        evBottom: ev.bottom,
        xOf: (ms) => x.getPixelForValue(ms),
        msAt: (px) => x.getValueForPixel(px) ?? 0,
        yOf: (value) => ev.getPixelForValue(value),
        evAt: (px) => ev.getValueForPixel(px) ?? 0,
      };
    },
    drawn: () =>
      Object.fromEntries((chart?.data.datasets ?? []).map(({ label = '', data }) => [label, data])),
    remove: () => chart?.destroy(),
  };
}

function datasets({ data, inks, more }: Shown): Line[] {
  const line = (label: string, points: readonly Point[], style: Partial<Line>): Line => ({
    label,
    data: points as Point[],
    yAxisID: 'ev',
    borderWidth: 2,
    ...style,
  });
  return [
    line('low', data.low, { borderWidth: 0, backgroundColor: inks.band, fill: '+1' }),
    line('high', data.high, { borderWidth: 0 }),
    line('scene', data.scene, { borderColor: inks.scene, borderDash: [2, 3] }),
    line('target', data.target, { borderColor: inks.target }),
    line('settings', data.settings, { borderColor: inks.settings, stepped: 'before' }),
    ...data.lanes.map(({ control, runs }) =>
      line(control, runs, { yAxisID: control, borderColor: inks.settings, stepped: 'before' }),
    ),
    ...(more?.lines ?? []),
  ];
}

function configuration(now: Shown) {
  const { plan, data, inks, more } = now;
  const { frames, shoot, summary } = plan;
  const labels = new Map<number, string>();
  const lanes = [...data.lanes].reverse();
  const config: ChartConfiguration<'line', Point[]> = {
    type: 'line',
    data: { datasets: datasets(now) },
    options: {
      animation: false,
      events: [], // the cursor is the page's own
      maintainAspectRatio: false,
      responsive: true,
      parsing: false,
      normalized: true,
      layout: { padding: { top: 2, right: 8 } },
      elements: { point: { radius: 0 } },
      font: { family: 'system-ui, sans-serif', size: 12 },
      scales: {
        x: {
          type: 'linear',
          min: Date.parse(summary.startAt),
          max: Math.max(Date.parse(summary.endAt), Date.parse(summary.startAt) + 1000),
          afterBuildTicks: (scale) => {
            labels.clear();
            const most = Math.max(2, Math.floor(scale.width / (plan.clocksBack ? 104 : 64)));
            scale.ticks = timeTicks(frames, shoot.intervalS, most).map(({ value, at }) => {
              labels.set(value, clock(at, false));
              return { value };
            });
          },
          ticks: {
            callback: (value) => labels.get(Number(value)) ?? '',
            color: inks.text,
            maxRotation: 0,
            autoSkip: false,
          },
          grid: { color: inks.grid },
        },
        ...Object.fromEntries([...(more?.axes ?? [])].reverse()),
        ...Object.fromEntries(lanes.map(({ control, runs }) => [control, laneAxis(control, runs)])),
        ev: {
          type: 'linear',
          position: 'left',
          stack: 'lanes',
          stackWeight: 7,
          afterFit: (scale) => {
            scale.width = AXIS_WIDTH;
          },
          ticks: {
            color: inks.text,
            precision: 0,
            // Few enough for any height: measuring each to leave some out is slow.
            maxTicksLimit: 8,
            autoSkip: false,
            // The axis is named at its top, where no curve comes.
            callback: (value, i, ticks) =>
              `${i === ticks.length - 1 ? 'EV ' : ''}${words().number(Number(value), 0)}`,
          },
          grid: { color: inks.grid },
        },
      },
    },
  };
  return config;
}

function laneAxis(control: Control, runs: readonly Point[]) {
  const levels = runs.map(({ y }) => y);
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  const stays = high - low < 0.01;
  return laneOf({
    stackWeight: stays || control === 'filter' ? 1.2 : 2,
    // Room above the highest step for its label.
    min: stays ? low - 1 : low - (high - low) * 0.15,
    max: stays ? high + 1 : high + (high - low) * (control === 'filter' ? 1 : 0.45),
  });
}

type LaneAxis = ReturnType<typeof laneOf>;

/** The axis of a lane: no marks of its own, as wide as the others. */
export function laneOf(size: { readonly stackWeight: number; readonly min: number; readonly max: number }) {
  return {
    type: 'linear' as const,
    position: 'left' as const,
    stack: 'lanes',
    ...size,
    afterFit: (scale: { width: number }) => {
      scale.width = AXIS_WIDTH;
    },
    ticks: { display: false },
    grid: { display: false },
    border: { display: false },
  };
}
