// A page of the card: its type sizes, its header, and the filling of pages with blocks that are never split.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import type { Pen } from '../svg/pen.js';
import { element, type Part, part } from '../svg/svg.js';
import { textWidth } from '../svg/text-width.js';
import { exposureText, filterText } from '../text/setting.js';
import type { Words } from '../text/words.js';
import { EDGE, type PageForm } from './paper.js';

/** Type sizes in points: nothing on the card is smaller than `small`. */
export const SIZE = { small: 9, body: 10, clock: 12, name: 14, value: 15 };

/** From one line of small type to the next. */
export const LEADING = 11.3;

/** What is read at a glance in the dark: clock, control and new value of a cue. */
export interface Big {
  readonly clock: number;
  readonly name: number;
  readonly value: number;
  readonly old: number; // the value that goes
  readonly leading: number;
  readonly gap: number; // from the widest clock to what to do
}

const BIG: Big = { clock: SIZE.clock, name: SIZE.name, value: SIZE.value, old: 11, leading: 18, gap: 5.5 };

/** A page that is larger than a quarter of a sheet has room for more than its other type is larger. */
const BIGGER: Big = { clock: 14, name: 14, value: 19, old: 11, leading: 22, gap: 10 };

/** The type of cues on a form. */
export function bigOf({ scale }: PageForm): Big {
  return scale > 1 ? BIGGER : BIG;
}

/** What every part of a card is laid out by. */
export interface Layout {
  readonly form: PageForm;
  readonly words: Words;
  readonly big: Big;
}

/** Something that stands on one page whole. */
export interface Block {
  readonly height: number;
  readonly draw: (top: number, pen: Pen) => string;
  /** Default a paragraph; `parts` where it draws several itself. */
  readonly is?: Part | 'parts';
  readonly label?: string; // of a picture
}

/** Draws a block as the part of the page that it is. */
export function drawn({ draw, is = 'paragraph', label }: Block, top: number, pen: Pen): string {
  const svg = draw(top, pen);
  return is === 'parts' ? svg : part(is, svg, label);
}

/** A run of pages; each says the setting it starts from where `startsFrom` gives one. */
export interface Section {
  readonly blocks: readonly Block[];
  readonly startsFrom?: (firstBlock: number) => PlanFrame;
  readonly label: string;
  /** Pages of a run are filled alike, so that none is left with a line; else each as far as it goes. */
  readonly even?: boolean;
  /** At the foot of a page that another follows: what comes there. */
  readonly foot?: (nextBlock: number) => string;
}

/** Lays the sections on pages, each section beginning a new one. Each page is SVG without an outer element. */
export function layPages(
  plan: PlanMade,
  sections: readonly Section[],
  layout: Layout,
  pen: Pen,
): { readonly title: string; readonly svg: string }[] {
  const pages = sections.flatMap((section) => filled(section, layout));
  const title = plan.shoot.title === '' ? layout.words.untitled : plan.shoot.title;
  return pages.map((page, i) => {
    const number = layout.words.card.page(i + 1, pages.length);
    const level = i === 0 ? 1 : 2;
    return { title: `${title}, ${number}`, svg: drawPage(plan, page, { title, number, level }, layout, pen) };
  });
}

interface FilledPage {
  readonly blocks: readonly Block[];
  readonly frame: PlanFrame | undefined;
  readonly label: string;
  readonly foot: string;
}

const HEADER_HEIGHT = 28;
const FOOT_HEIGHT = 12;
const SETTING_LEADING = 12.5;

/** On one line where it fits, on two so that the longest names still do. */
export function settingHeight(frame: PlanFrame, label: string, { form, words }: Layout): number {
  return 17.5 + (settingLines(frame, label, form, words).length - 1) * SETTING_LEADING;
}

function settingLines(frame: PlanFrame, label: string, { inner }: PageForm, words: Words): string[] {
  const [exposure, filter] = [exposureText(frame), filterText(frame.filters, words)];
  const whole = `${exposure} · ${filter}`;
  const room = inner - textWidth(label, SIZE.small) - 8;
  return textWidth(whole, SIZE.body, true) <= room ? [whole] : [exposure, filter];
}

/** Height for blocks on a page that does not say which setting it starts from. */
export function roomOf({ height }: PageForm): number {
  return height - 2 * EDGE - HEADER_HEIGHT;
}

/** Blocks from which each page begins, no page higher than `room`; one that is higher by itself has a page of its own. */
function startsWithin(blocks: readonly Block[], roomAt: (start: number) => number): number[] {
  const starts: number[] = [];
  let left = 0;
  blocks.forEach(({ height }, i) => {
    if (starts.length === 0 || height > left) {
      starts.push(i);
      left = roomAt(i);
    }
    left -= height;
  });
  return starts;
}

/** The same pages, the last of which share what the others have too much. */
function shared(
  starts: readonly number[],
  blocks: readonly Block[],
  roomAt: (start: number) => number,
): number[] {
  const even = [...starts];
  const heightOf = (from: number, to?: number) =>
    blocks.slice(from, to).reduce((sum, { height }) => sum + height, 0);
  for (let page = even.length - 1; page > 0; page--) {
    for (let first = even[page]! - 1; first > even[page - 1]!; first--) {
      const height = heightOf(first, even[page + 1]);
      if (height > heightOf(even[page - 1]!, first) || height > roomAt(first)) break;
      even[page] = first;
    }
  }
  return even;
}

/** How many pages a run of blocks makes. */
export function pageCount(section: Section, layout: Layout): number {
  return filled(section, layout).length;
}

function filled({ blocks, startsFrom, label, even = false, foot }: Section, layout: Layout): FilledPage[] {
  const roomAt = (start: number) => {
    const frame = startsFrom?.(start);
    const setting = frame === undefined ? 0 : settingHeight(frame, label, layout);
    return roomOf(layout.form) - setting - (foot === undefined ? 0 : FOOT_HEIGHT);
  };
  let starts = startsWithin(blocks, roomAt);
  if (even) {
    // The least room that takes no page more.
    for (let less = 4; ; less += 4) {
      const tighter = startsWithin(blocks, (start) => roomAt(start) - less);
      if (tighter.length > starts.length || less > roomOf(layout.form)) break;
      starts = tighter;
    }
    starts = shared(starts, blocks, roomAt);
  }
  return starts.map((start, i) => {
    const next = starts[i + 1];
    return {
      blocks: blocks.slice(start, next),
      frame: startsFrom?.(start),
      label,
      foot: next === undefined ? '' : (foot?.(next) ?? ''),
    };
  });
}

function drawPage(plan: PlanMade, page: FilledPage, head: Head, layout: Layout, pen: Pen): string {
  const { width, height } = layout.form;
  let top =
    EDGE + HEADER_HEIGHT + (page.frame === undefined ? 0 : settingHeight(page.frame, page.label, layout));
  const body = page.blocks.map((block) => {
    const svg = drawn(block, top, pen);
    top += block.height;
    return svg;
  });
  return [
    element('rect', { width, height, fill: pen.ink.paper }),
    header(plan, head, layout, pen),
    page.frame === undefined ? '' : startingSetting(page.frame, page.label, layout, pen),
    ...body,
    page.foot === ''
      ? ''
      : part(
          'paragraph',
          pen.text(layout.form.right, height - EDGE - 1.5, page.foot, {
            size: SIZE.small,
            bold: true,
            anchor: 'end',
          }),
        ),
  ].join('');
}

interface Head {
  readonly title: string;
  readonly number: string; // "page 2 of 5"
  readonly level: 1 | 2;
}

function header({ shoot }: PlanMade, { title, number, level }: Head, { form, words }: Layout, pen: Pen) {
  const { left, right, inner } = form;
  const numberWidth = textWidth(number, SIZE.small, true) + 8;
  const under = `${words.date(shoot.date)} · ${words.card.every(words.seconds(shoot.intervalS))}`;
  return (
    part(
      level,
      pen.within(left, EDGE + 9, title, inner - numberWidth, { size: SIZE.body, bold: true }) +
        pen.text(right, EDGE + 9, number, { size: SIZE.small, bold: true, anchor: 'end' }),
    ) +
    part('paragraph', pen.within(left, EDGE + 20.5, under, inner, { size: SIZE.small })) +
    pen.line(left, EDGE + 25, right, EDGE + 25)
  );
}

function startingSetting(frame: PlanFrame, label: string, { form, words }: Layout, pen: Pen): string {
  const { left, right } = form;
  const top = EDGE + HEADER_HEIGHT;
  const x = left + textWidth(label, SIZE.small) + 8;
  const style = { size: SIZE.body, bold: true };
  const lines = settingLines(frame, label, form, words);
  const under = top + 14 + (lines.length - 1) * SETTING_LEADING;
  return (
    part(
      'paragraph',
      pen.text(left, top + 9, label, { size: SIZE.small }) +
        lines.map((text, i) => pen.within(x, top + 9 + i * SETTING_LEADING, text, right - x, style)).join(''),
    ) + pen.line(left, under, right, under)
  );
}
