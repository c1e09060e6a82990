// Which marks of a lane are written, and where: over their step where there is room for it.

import { markText } from '../parts/text.js';
import type { Geometry, LanePlace } from './geometry.js';
import { textPx } from './text-px.js';

interface LaneMark {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

export function laneMarks({ control, runs, yOf }: LanePlace, { xOf, left, right }: Geometry): LaneMark[] {
  const starts = runs.filter((run, i) => i === 0 || run.label !== runs[i - 1]?.label);
  const boxes = starts.map((run, i) => {
    const text = markText(control, run.label);
    const width = textPx(text);
    const from = xOf(run.x);
    const next = starts[i + 1];
    const to = next === undefined ? right : xOf(next.x);
    const before = starts[i - 1];
    // Over a short step the mark leans out to where the line is lower.
    const roomy = width + 5 <= to - from;
    const leansBack = !roomy && before !== undefined && before.y < run.y;
    const leansOn = !roomy && next !== undefined && next.y < run.y;
    const x = leansBack ? to - width - 2 : from + 3;
    return { text, width, x, fits: roomy || leansBack || leansOn, y: yOf(run.y) - 4 };
  });
  // The ends of the schedule first: the rest takes what room is left.
  const end = boxes.at(-1);
  const marks: LaneMark[] = [];
  let freeFrom = left;
  for (const box of boxes) {
    const freeTo = box === end ? right : (end?.x ?? right) - 6;
    const free = box.x >= freeFrom && box.x + box.width <= freeTo;
    if (box !== end && !(box.fits && free)) continue;
    const x = Math.max(left + 3, Math.min(box.x, right - box.width - 2));
    marks.push({ text: box.text, x, y: box.y });
    freeFrom = box.x + box.width + 6;
  }
  return marks;
}
