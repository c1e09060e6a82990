// The last page of the card: what to do when a cue was missed, and what to take care of.

import type { PlanMade } from '@evenfall/core';
import { type Block, LEFT, SIZE, WIDTH } from './card-page.js';
import { textAt } from './svg.js';
import { wrapText } from './text-width.js';
import type { Words } from './words.js';

/** The blocks of the last page. */
export function backBlocks({ card }: Words): Block[] {
  return [
    headBlock(card.missedTitle),
    ...card.missed.map(itemBlock),
    headBlock(card.cautionsTitle),
    ...card.cautions.map(itemBlock),
  ];
}

/** The plan's cautions and warnings, for the end of the cues; none where it has nothing to add. */
export function noteBlocks(plan: PlanMade, { card }: Words): Block[] {
  const cautions = card.cautions.map((text) => text.replace(/\.$/, ''));
  // The last page warns anyway; saying it twice would make both weaker.
  const notes = plan.notes.filter(
    ({ level, text }) => level !== 'info' && !cautions.some((caution) => text.startsWith(caution)),
  );
  if (notes.length === 0) return [];
  const [first, ...rest] = notes.map((note) => itemBlock(note.text));
  return [together(headBlock(card.notesTitle), first!), ...rest];
}

function together(upper: Block, lower: Block): Block {
  return {
    height: upper.height + lower.height,
    draw: (top) => upper.draw(top) + lower.draw(top + upper.height),
  };
}

function headBlock(text: string): Block {
  return {
    height: 18,
    draw: (top) => textAt(LEFT, top + 13, text, { size: 11, bold: true }),
  };
}

function itemBlock(text: string): Block {
  const indent = 10;
  const lines = wrapText(text, WIDTH - indent, SIZE.small);
  return {
    height: lines.length * 11.3 + 2.5,
    draw: (top) =>
      textAt(LEFT, top + 9, '·', { size: SIZE.small, bold: true }) +
      lines.map((line, i) => textAt(LEFT + indent, top + 9 + i * 11.3, line, { size: SIZE.small })).join(''),
  };
}
