// A page of the card: its type sizes, its header, and the filling of pages with blocks that are never split.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import type { Pen } from '../svg/pen.js';
import { element } from '../svg/svg.js';
import { textWidth } from '../svg/text-width.js';
import { exposureText, filterText } from '../text/setting.js';
import type { Words } from '../text/words.js';
import { EDGE, type PageForm } from './paper.js';

/** Type sizes in points: nothing on the card is smaller than `small`. */
export const SIZE = { small: 9, body: 10, clock: 12, name: 14, value: 15 };

/** From one line of small type to the next. */
export const LEADING = 11.3;

/** What every part of a card is laid out by. */
export interface Layout {
  readonly form: PageForm;
  readonly words: Words;
}

/** Something that stands on one page whole. */
export interface Block {
  readonly height: number;
  readonly draw: (top: number, pen: Pen) => string;
}

/** A run of pages; each says the setting it starts from where `startsFrom` gives one. */
export interface Section {
  readonly blocks: readonly Block[];
  readonly startsFrom?: (firstBlock: number) => PlanFrame;
  readonly label: string;
}

/** Lays the sections on pages, each section beginning a new one. Each page is SVG without an outer element. */
export function layPages(
  plan: PlanMade,
  sections: readonly Section[],
  layout: Layout,
  pen: Pen,
): { readonly title: string; readonly svg: string }[] {
  const pages = sections.flatMap((section) => filled(section, layout.form));
  const title = plan.shoot.title === '' ? layout.words.untitled : plan.shoot.title;
  return pages.map((page, i) => {
    const number = layout.words.card.page(i + 1, pages.length);
    return { title: `${title}, ${number}`, svg: drawPage(plan, page, title, number, layout, pen) };
  });
}

interface FilledPage {
  readonly blocks: readonly Block[];
  readonly frame: PlanFrame | undefined;
  readonly label: string;
}

const HEADER_HEIGHT = 28;
const SETTING_HEIGHT = 30;

/** Height for blocks on a page that does not say which setting it starts from. */
export function roomOf({ height }: PageForm): number {
  return height - 2 * EDGE - HEADER_HEIGHT;
}

function filled({ blocks, startsFrom, label }: Section, form: PageForm): FilledPage[] {
  const room = roomOf(form) - (startsFrom === undefined ? 0 : SETTING_HEIGHT);
  const starts: number[] = [];
  let left = 0;
  blocks.forEach(({ height }, i) => {
    if (starts.length === 0 || height > left) {
      starts.push(i);
      left = room;
    }
    left -= height;
  });
  return starts.map((start, i) => ({
    blocks: blocks.slice(start, starts[i + 1]),
    frame: startsFrom?.(start),
    label,
  }));
}

function drawPage(
  plan: PlanMade,
  page: FilledPage,
  title: string,
  number: string,
  layout: Layout,
  pen: Pen,
): string {
  const { width, height } = layout.form;
  let top = EDGE + HEADER_HEIGHT + (page.frame === undefined ? 0 : SETTING_HEIGHT);
  const body = page.blocks.map((block) => {
    const svg = block.draw(top, pen);
    top += block.height;
    return svg;
  });
  return [
    element('rect', { width, height, fill: pen.ink.paper }),
    header(plan, title, number, layout, pen),
    page.frame === undefined ? '' : startingSetting(page.frame, page.label, layout, pen),
    ...body,
  ].join('');
}

function header({ shoot }: PlanMade, title: string, number: string, { form, words }: Layout, pen: Pen) {
  const { left, right, inner } = form;
  const numberWidth = textWidth(number, SIZE.small, true) + 8;
  const under = `${words.date(shoot.date)} · ${words.card.every(words.seconds(shoot.intervalS))}`;
  return (
    pen.within(left, EDGE + 9, title, inner - numberWidth, { size: SIZE.body, bold: true }) +
    pen.text(right, EDGE + 9, number, { size: SIZE.small, bold: true, anchor: 'end' }) +
    pen.within(left, EDGE + 20.5, under, inner, { size: SIZE.small }) +
    pen.line(left, EDGE + 25, right, EDGE + 25)
  );
}

// On two lines, so that the longest names still fit.
function startingSetting(frame: PlanFrame, label: string, { form, words }: Layout, pen: Pen): string {
  const { left, right } = form;
  const top = EDGE + HEADER_HEIGHT;
  const x = left + textWidth(label, SIZE.small) + 8;
  const style = { size: SIZE.body, bold: true };
  return (
    pen.text(left, top + 9, label, { size: SIZE.small }) +
    pen.within(x, top + 9, exposureText(frame), right - x, style) +
    pen.within(x, top + 21.5, filterText(frame.filters, words), right - x, style) +
    pen.line(left, top + 26.5, right, top + 26.5)
  );
}
