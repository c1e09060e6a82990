// The lanes of a move on a canvas of their own, under the picture and on its time axis.

import type { PlanMade } from '@evenfall/core';
import { Chart, Filler, LinearScale, LineController, LineElement, PointElement } from 'chart.js';
import type { Point } from '../chart/data.js';
import type { Geometry } from '../chart/geometry.js';
import { inksAt } from './inks.js';
import { type MoveLanes, moveLanes } from './lanes.js';

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

export interface LaneChart {
  show(plan: PlanMade, geometry: Geometry): void;
  /** What is drawn, by the name of each line. */
  drawn(): Readonly<Record<string, readonly Point[]>>;
  remove(): void;
}

export function laneChart(canvas: HTMLCanvasElement): LaneChart {
  let lanes: MoveLanes | undefined;
  let chart: Chart<'line', Point[]> | undefined;
  return {
    show(plan, geometry) {
      lanes = moveLanes(plan, inksAt(canvas.parentElement ?? document.body));
      if (lanes === undefined) return;
      chart?.destroy();
      chart = new Chart<'line', Point[]>(canvas, {
        type: 'line',
        data: { datasets: [...lanes.lines] },
        options: options(lanes, geometry),
        plugins: [{ id: 'marks', afterDatasetsDraw: (drawn) => lanes?.draw(drawn as Chart) }],
      });
    },
    drawn: () =>
      Object.fromEntries((chart?.data.datasets ?? []).map(({ label = '', data }) => [label, data])),
    remove: () => chart?.destroy(),
  };
}

function options({ axes }: MoveLanes, { left, right, width, msAt }: Geometry) {
  const quiet = { ticks: { display: false }, grid: { display: false }, border: { display: false } };
  return {
    animation: false as const,
    events: [], // the cursor is the page's own
    maintainAspectRatio: false,
    parsing: false as const,
    normalized: true,
    layout: { padding: { right: width - right } },
    elements: { point: { radius: 0 } },
    scales: {
      x: { type: 'linear' as const, min: msAt(left), max: msAt(right), display: false },
      ...Object.fromEntries(
        [...axes].reverse().map(([id, stackWeight, min, max]) => [
          id,
          {
            type: 'linear' as const,
            position: 'left' as const,
            stack: 'lanes',
            stackWeight,
            min,
            max,
            afterFit: (scale: { width: number }) => {
              scale.width = left;
            },
            ...quiet,
          },
        ]),
      ),
    },
  };
}
