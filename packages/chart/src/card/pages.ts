// The cue card: a first page to prepare by, the cues, a last page of cautions; on sheets of the paper asked for.

import type { PlanMade } from '@evenfall/core';
import { INKS } from '../svg/ink.js';
import { penOf } from '../svg/pen.js';
import { wrapText } from '../svg/text-width.js';
import { wordsOver } from '../text/local-time.js';
import { english, type Words } from '../text/words.js';
import { backBlocks, noteBlocks } from './back.js';
import { cueBlocks } from './cue.js';
import { rowFacts } from './cue-facts.js';
import { cardFacts } from './facts.js';
import { frontSections } from './front.js';
import { moveEndBlocks } from './moves.js';
import { type Block, type Layout, LEADING, layPages, SIZE } from './page.js';
import { type Paper, pageForm } from './paper.js';
import { sheets } from './sheet.js';

/** How a card is printed or shown. */
export interface CardOptions {
  /** Language and clock, from {@link wordsFor}; default English and 24 hours. */
  readonly words?: Words;
  /** Default A6. */
  readonly paper?: Paper;
  /** Red on black, for screens; default black on white. */
  readonly dark?: boolean;
}

/**
 * The cue card as pictures, one a sheet: a page on A6 and A5, four pages with cut marks on A4 and Letter.
 * Every cue stands on one page whole. `summary` and `cues` must belong to `frames`, as in any plan file.
 *
 * @param plan from `planShoot` or `readPlan`
 * @param options language, paper and ink
 * @returns SVG text, one entry a sheet
 * @throws RangeError on a plan whose times are none
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { cardPages } from '@evenfall/chart';
 *
 * const a6 = cardPages(plan).length;
 * // Four pages of A6 lie on a sheet of A4.
 * cardPages(plan, { paper: 'a4' }).length; // → Math.ceil(a6 / 4)
 * ```
 */
export function cardPages(plan: PlanMade, options: CardOptions = {}): string[] {
  const { paper = 'a6', dark = false } = options;
  const words = wordsOver(plan, options.words ?? english);
  const layout: Layout = { form: pageForm(paper), words };
  const pen = penOf(INKS[dark ? 'dark' : 'print']);
  const facts = cardFacts(plan, words);
  const cues = rowFacts(plan, words);
  const first = plan.frames[0]!;
  const last = plan.frames.at(-1)!;
  const pages = layPages(
    plan,
    [
      ...frontSections(plan, facts, layout),
      {
        blocks: [
          paragraph(facts.howToRead, layout),
          ...cueBlocks(cues, facts.withSeconds, layout),
          ...moveEndBlocks(plan, layout),
          ...noteBlocks(plan, layout),
        ],
        // Block 0 is the paragraph, block i the cue i - 1; moves and notes follow the last cue.
        startsFrom: (block) => (block === 0 ? first : (cues[block - 1]?.before ?? last)),
        label: words.card.startsFrom,
      },
      {
        blocks: backBlocks(layout),
        startsFrom: () => last,
        label: words.card.endsOn,
      },
    ],
    layout,
    pen,
  );
  return sheets(pages, layout.form, pen.ink);
}

function paragraph(text: string, { form }: Layout): Block {
  const lines = wrapText(text, form.inner, SIZE.small);
  return {
    height: lines.length * LEADING + 4,
    draw: (top, pen) =>
      lines.map((line, i) => pen.text(form.left, top + 9 + i * LEADING, line, { size: SIZE.small })).join(''),
  };
}
