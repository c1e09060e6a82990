// What the moves do, on the card: where they start on its first page, where they stand after the last cue.

import type { PlanMade } from '@evenfall/core';
import { wrapText } from '../svg/text-width.js';
import { moveEnds, moveStarts } from '../text/move.js';
import { type Block, type Layout, LEADING, SIZE } from './page.js';

/** A block for the first page; none without moves. */
export function moveStartBlocks(plan: PlanMade, layout: Layout): Block[] {
  return blocksOf(moveStarts(plan, layout.words), layout);
}

/** A block after the last cue; none without moves. */
export function moveEndBlocks(plan: PlanMade, layout: Layout): Block[] {
  return blocksOf(moveEnds(plan, layout.words), layout);
}

function blocksOf(texts: readonly string[], { form }: Layout): Block[] {
  const lines = texts.flatMap((text) => wrapText(text, form.inner, SIZE.small, true));
  if (lines.length === 0) return [];
  return [
    {
      height: lines.length * LEADING + 5,
      draw: (top, pen) =>
        lines
          .map((line, i) =>
            pen.text(form.left, top + 9 + i * LEADING, line, { size: SIZE.small, bold: true }),
          )
          .join(''),
    },
  ];
}
