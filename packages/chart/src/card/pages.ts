// The cue card: a first page to prepare by, the cues, a last page of cautions; on sheets of the paper asked for.

import type { PlanMade } from '@evenfall/core';
import { INKS } from '../svg/ink.js';
import { penOf } from '../svg/pen.js';
import { wrapText } from '../svg/text-width.js';
import { checkOptions, checkPlan, givenWords } from '../text/given.js';
import { clockText, instantMs, wordsOver } from '../text/local-time.js';
import { english, type Words } from '../text/words.js';
import { backBlocks } from './back.js';
import { type Row, rowBlocks } from './cue.js';
import { rowFacts } from './cue-facts.js';
import { cardFacts } from './facts.js';
import { front, placed } from './front.js';
import { moveEndBlocks } from './moves.js';
import {
  type Block,
  bigOf,
  type Layout,
  LEADING,
  layPages,
  pageCount,
  roomOf,
  type Section,
  SIZE,
  settingHeight,
} from './page.js';
import { type Paper, pageForm } from './paper.js';
import { sheets } from './sheet.js';

/** How a card is printed or shown. */
export interface CardOptions {
  /** Language and clock, from {@link wordsFor}; default English and 24 hours. */
  readonly words?: Words | undefined;
  /** Default A6. */
  readonly paper?: Paper | undefined;
  /** Red on black, for screens; default black on white. */
  readonly dark?: boolean | undefined;
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
  checkPlan(plan);
  checkOptions(options, ['words', 'paper', 'dark']);
  const { paper = 'a6', dark = false } = options;
  const words = wordsOver(plan, givenWords(options.words ?? english));
  const form = pageForm(paper);
  const layout: Layout = { form, words, big: bigOf(form) };
  const pen = penOf(INKS[dark ? 'dark' : 'print']);
  return sheets(layPages(plan, sectionsOf(plan, layout), layout, pen), form, pen.ink);
}

function sectionsOf(plan: PlanMade, layout: Layout): Section[] {
  const { words, form } = layout;
  const facts = cardFacts(plan, words);
  const rows = [...rowFacts(plan, words), ...facts.marks].sort(
    (a, b) => instantMs(atOf(a)) - instantMs(atOf(b)),
  );
  const last = plan.frames.at(-1)!;
  const room = roomOf(form);
  const { blocks, loose } = front(plan, facts, layout);
  const first = placed(blocks, loose, room);
  const endsOn = words.card.endsOn;
  const backRoom = room - settingHeight(last, endsOn, layout);
  const back = placed(backBlocks(layout), first.left, backRoom);
  const run = (more: readonly Block[], after: readonly Block[] = []): Section => ({
    blocks: [
      ...more,
      paragraph(facts.howToRead, layout),
      ...rowBlocks(rows, facts.withSeconds, layout),
      ...moveEndBlocks(plan, layout),
      ...after,
    ],
    // Rows follow the paragraph; moves follow the last row.
    startsFrom: (block) => {
      const at = block - more.length - 1;
      return at < 0 ? plan.frames[0]! : (rows[at]?.before ?? last);
    },
    label: words.card.startsFrom,
    even: true,
    foot: (block) => {
      const next = rows[block - more.length - 1];
      return next === undefined ? '' : words.card.nextAt(clockText(atOf(next), facts.withSeconds, words));
    },
  });
  // What is left goes before the cues or after them where that takes no page more, else onto a page of its own. The chart
  // takes no page for itself: in the dark nobody needs it.
  const blocksOf = (wanted: boolean) =>
    back.left.filter(({ needed }) => needed === wanted).map((each) => each.block(each.least));
  const [needed, spare] = [blocksOf(true), blocksOf(false)];
  const alone = run([]);
  const together = [run(needed, spare), run([], [...needed, ...spare]), run(needed), run([], needed)].find(
    (each) => pageCount(each, layout) <= pageCount(alone, layout),
  );
  if (together === undefined) {
    // A page that must be is filled before the last one is.
    const own = placed([], first.left, room);
    return [
      { blocks: first.blocks, label: '' },
      { blocks: own.blocks, label: '' },
      alone,
      {
        blocks: placed(backBlocks(layout), own.left, backRoom).blocks,
        startsFrom: () => last,
        label: endsOn,
      },
    ];
  }
  return [
    { blocks: first.blocks, label: '' },
    together,
    { blocks: back.blocks, startsFrom: () => last, label: endsOn },
  ];
}

function atOf(row: Row): string {
  return 'cue' in row ? row.cue.at : row.at;
}

function paragraph(text: string, { form }: Layout): Block {
  const lines = wrapText(text, form.inner, SIZE.small);
  return {
    height: lines.length * LEADING + 4,
    draw: (top, pen) =>
      lines.map((line, i) => pen.text(form.left, top + 9 + i * LEADING, line, { size: SIZE.small })).join(''),
  };
}
