// The last page of the card: what to do when a cue was missed, and what to take care of.

import type { PlanMade } from '@evenfall/core';
import { type Block, type Layout, LEADING, SIZE } from './card-page.js';
import { wrapText } from './text-width.js';
import type { Words } from './words.js';

/** The blocks of the last page. */
export function backBlocks(layout: Layout): Block[] {
  const { card } = layout.words;
  return [
    headBlock(card.missedTitle, layout),
    ...card.missed.map((text) => itemBlock(text, layout)),
    headBlock(card.cautionsTitle, layout),
    ...card.cautions.map((text) => itemBlock(text, layout)),
  ];
}

/** The plan's cautions and warnings, for the end of the cues; none where it has nothing to add. */
export function noteBlocks(plan: PlanMade, layout: Layout): Block[] {
  const notes = notesBeyond(plan, layout.words);
  if (notes.length === 0) return [];
  const [first, ...rest] = notes.map((text) => itemBlock(text, layout));
  return [together(headBlock(layout.words.card.notesTitle, layout), first!), ...rest];
}

// The last page warns of the sun anyway; saying it twice would make both weaker.
function notesBeyond({ notes }: PlanMade, { card, note }: Words): string[] {
  const cautions = card.cautions.map((text) => text.replace(/\.$/, ''));
  return notes
    .filter(({ level }) => level !== 'info')
    .map(({ text }) => note(text))
    .filter((text) => !cautions.some((caution) => text.startsWith(caution)));
}

function together(upper: Block, lower: Block): Block {
  return {
    height: upper.height + lower.height,
    draw: (top, pen) => upper.draw(top, pen) + lower.draw(top + upper.height, pen),
  };
}

function headBlock(text: string, { form }: Layout): Block {
  return {
    height: 18,
    draw: (top, pen) => pen.text(form.left, top + 13, text, { size: 11, bold: true }),
  };
}

function itemBlock(text: string, { form }: Layout): Block {
  const indent = 10;
  const lines = wrapText(text, form.inner - indent, SIZE.small);
  return {
    height: lines.length * LEADING + 2.5,
    draw: (top, pen) =>
      pen.text(form.left, top + 9, '·', { size: SIZE.small, bold: true }) +
      lines
        .map((line, i) => pen.text(form.left + indent, top + 9 + i * LEADING, line, { size: SIZE.small }))
        .join(''),
  };
}
