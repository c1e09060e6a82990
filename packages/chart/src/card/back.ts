// The last page of the card: what to do when a cue was missed, and what to take care of.

import type { PlanMade } from '@evenfall/core';
import { wrapText } from '../svg/text-width.js';
import { noteText } from '../text/sentences.js';
import type { Words } from '../text/words.js';
import { type Block, drawn, type Layout, LEADING, SIZE } from './page.js';

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

/** The night's own notes, for the first page; none where the plan has nothing to add to the warnings. */
export function noteBlocks(plan: PlanMade, layout: Layout): Block[] {
  const notes = cautionsBeyond(plan, layout.words);
  if (notes.length === 0) return [];
  const [first, ...rest] = notes.map((text) => itemBlock(text, layout));
  return [together(headBlock(layout.words.card.notesTitle, layout), first!), ...rest];
}

// The last page warns of the sun anyway; saying it twice would make both weaker.
function cautionsBeyond({ notes }: PlanMade, words: Words): string[] {
  return notes
    .filter(({ level, kind }) => level === 'caution' && kind !== 'sun')
    .map((note) => noteText(note, words));
}

/** What would spoil the shoot, a card too small say: for the first page, a framed text each. */
export function warningBlocks({ notes }: PlanMade, { form, words }: Layout): Block[] {
  const [left, right] = [form.left + 1, form.right - 1];
  return notes
    .filter(({ level }) => level === 'warning')
    .map((note) => {
      const lines = wrapText(noteText(note, words), form.inner - 30, SIZE.small, true);
      const height = lines.length * LEADING + 9;
      const middle = (top: number) => top + height / 2 - 2;
      return {
        height,
        draw: (top, pen) =>
          pen.frame({ left, right, top: top + 1, bottom: top + height - 4 }, 2) +
          pen.text(left + 10, middle(top) + 6, '!', { size: SIZE.value, bold: true, anchor: 'middle' }) +
          lines
            .map((line, i) =>
              pen.text(left + 21, top + 12 + i * LEADING, line, { size: SIZE.small, bold: true }),
            )
            .join(''),
      };
    });
}

function together(upper: Block, lower: Block): Block {
  return {
    height: upper.height + lower.height,
    draw: (top, pen) => drawn(upper, top, pen) + drawn(lower, top + upper.height, pen),
    is: 'parts',
  };
}

function headBlock(text: string, { form }: Layout): Block {
  return {
    height: 18,
    draw: (top, pen) => pen.text(form.left, top + 13, text, { size: 11, bold: true }),
    is: 2,
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
