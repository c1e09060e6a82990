// Names and marks on the schedule's lanes: a mark stands over its step where there is room for it.

import type { Chart, Plugin } from 'chart.js';
import { markText } from '../parts/text.js';
import { words } from '../words/words.js';
import type { Lane } from './data.js';
import type { Inks } from './inks.js';

/** Draws what `current` gives, over the lanes. */
export function laneLabelPlugin(
  current: () => { lanes: readonly Lane[]; inks: Inks } | undefined,
): Plugin<'line'> {
  return {
    id: 'lane-labels',
    afterDatasetsDraw(chart: Chart) {
      const now = current();
      const x = chart.scales.x;
      if (now === undefined || x === undefined) return;
      const { ctx, chartArea } = chart;
      ctx.save();
      ctx.fillStyle = now.inks.text;
      ctx.textBaseline = 'alphabetic';
      for (const { control, runs } of now.lanes) {
        const y = chart.scales[control];
        if (y === undefined) continue;
        ctx.strokeStyle = now.inks.grid;
        ctx.beginPath();
        ctx.moveTo(0, Math.round(y.top) + 0.5);
        ctx.lineTo(chartArea.right, Math.round(y.top) + 0.5);
        ctx.stroke();
        ctx.textAlign = 'right';
        ctx.font = '600 12px system-ui, sans-serif';
        ctx.fillText(words().chart.lanes[control], chartArea.left - 6, (y.top + y.bottom) / 2 + 4);
        ctx.textAlign = 'left';
        ctx.font = '12px system-ui, sans-serif';
        const starts = runs.filter((run, i) => i === 0 || run.label !== runs[i - 1]?.label);
        const boxes = starts.map((run, i) => {
          const text = markText(control, run.label);
          const width = ctx.measureText(text).width;
          const from = x.getPixelForValue(run.x);
          const next = starts[i + 1];
          const to = next === undefined ? chartArea.right : x.getPixelForValue(next.x);
          const before = starts[i - 1];
          // Over a short step the mark leans out to where the line is lower.
          const roomy = width + 5 <= to - from;
          const leansBack = !roomy && before !== undefined && before.y < run.y;
          const leansOn = !roomy && next !== undefined && next.y < run.y;
          const left = leansBack ? to - width - 2 : from + 3;
          return { text, width, left, fits: roomy || leansBack || leansOn, y: y.getPixelForValue(run.y) - 4 };
        });
        // The ends of the schedule first: the rest takes what room is left.
        const end = boxes.at(-1);
        let freeFrom = chartArea.left;
        for (const box of boxes) {
          const freeTo = box === end ? chartArea.right : (end?.left ?? chartArea.right) - 6;
          const free = box.left >= freeFrom && box.left + box.width <= freeTo;
          if (box !== end && !(box.fits && free)) continue;
          ctx.fillText(
            box.text,
            Math.max(chartArea.left + 3, Math.min(box.left, chartArea.right - box.width - 2)),
            box.y,
          );
          freeFrom = box.left + box.width + 6;
        }
      }
      ctx.restore();
    },
  };
}
