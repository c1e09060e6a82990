// The cue card on A6 pages: a first page to prepare by, the cues, a last page of cautions.

import type { PlanMade } from '@evenfall/core';
import { backBlocks, noteBlocks } from './card-back.js';
import { cueBlock } from './card-cue.js';
import { cardFacts } from './card-facts.js';
import { frontBlocks } from './card-front.js';
import { type Block, LEFT, layPages, SIZE, WIDTH } from './card-page.js';
import { cueFacts } from './cue-facts.js';
import { textAt } from './svg.js';
import { wrapText } from './text-width.js';
import { english, type Words } from './words.js';

/**
 * The card as SVG, one entry a page, A6 portrait, black on white. Every cue stands on one page whole.
 * `summary` and `cues` must belong to `frames`, as in any plan file.
 */
export function cardPages(plan: PlanMade, { words = english }: { readonly words?: Words } = {}): string[] {
  const facts = cardFacts(plan, words);
  const cues = cueFacts(plan, words);
  const how = paragraph(cues.length > 0 ? words.card.howToRead : words.card.noCues);
  const first = plan.frames[0]!;
  const last = plan.frames.at(-1)!;
  return layPages(
    plan,
    [
      { blocks: frontBlocks(plan, facts, words), label: '' },
      {
        blocks: [
          how,
          ...cues.map((cue) => cueBlock(cue, facts.withSeconds, words)),
          ...noteBlocks(plan, words),
        ],
        // Block 0 is the paragraph, block i the cue i - 1; the notes follow the last cue.
        startsFrom: (block) => (block === 0 ? first : (cues[block - 1]?.before ?? last)),
        label: words.card.startsFrom,
      },
      { blocks: backBlocks(words), startsFrom: () => last, label: words.card.endsOn },
    ],
    words,
  );
}

function paragraph(text: string): Block {
  const lines = wrapText(text, WIDTH, SIZE.small);
  return {
    height: lines.length * 11.3 + 4,
    draw: (top) =>
      lines.map((line, i) => textAt(LEFT, top + 9 + i * 11.3, line, { size: SIZE.small })).join(''),
  };
}
