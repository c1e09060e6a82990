// An A6 page of the card: its size, its header, and the filling of pages with blocks that are never split.

import type { PlanFrame, PlanMade } from '@evenfall/core';
import { exposureText, filterText } from './setting-text.js';
import { element, escapeXml, svgRoot, textAt, textWithin } from './svg.js';
import { textWidth } from './text-width.js';
import type { Words } from './words.js';

const POINTS_PER_MM = 72 / 25.4;

const EDGE = 14.5; // white on every side, points

/** A6 portrait, in points. */
export const PAGE = { widthMm: 105, heightMm: 148, width: 105 * POINTS_PER_MM, height: 148 * POINTS_PER_MM };
export const LEFT: number = EDGE;
export const RIGHT = PAGE.width - EDGE;
export const WIDTH = RIGHT - LEFT;

/** Type sizes in points: nothing on the card is smaller than `small`. */
export const SIZE = { small: 9, body: 10, clock: 12, name: 14, value: 15 };

/** Something that stands on one page whole. */
export interface Block {
  readonly height: number;
  readonly draw: (top: number) => string;
}

/** A run of pages; each says the setting it starts from where `startsFrom` gives one. */
export interface Section {
  readonly blocks: readonly Block[];
  readonly startsFrom?: (firstBlock: number) => PlanFrame;
  readonly label: string;
}

/** Lays the sections on pages, each section beginning a new one. */
export function layPages(plan: PlanMade, sections: readonly Section[], words: Words): string[] {
  const pages = sections.flatMap((section) => filled(section));
  return pages.map((page, i) => drawPage(plan, page, i + 1, pages.length, words));
}

interface FilledPage {
  readonly blocks: readonly Block[];
  readonly frame: PlanFrame | undefined;
  readonly label: string;
}

const HEADER_HEIGHT = 28;
const SETTING_HEIGHT = 30;

/** Height for blocks on a page that does not say which setting it starts from. */
export const ROOM = PAGE.height - 2 * EDGE - HEADER_HEIGHT;

function filled({ blocks, startsFrom, label }: Section): FilledPage[] {
  const room = ROOM - (startsFrom === undefined ? 0 : SETTING_HEIGHT);
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

function drawPage(plan: PlanMade, page: FilledPage, n: number, of: number, words: Words): string {
  let top = EDGE + HEADER_HEIGHT + (page.frame === undefined ? 0 : SETTING_HEIGHT);
  const body = page.blocks.map((block) => {
    const svg = block.draw(top);
    top += block.height;
    return svg;
  });
  const title = plan.shoot.title === '' ? words.untitled : plan.shoot.title;
  return svgRoot(
    {
      width: `${PAGE.widthMm}mm`,
      height: `${PAGE.heightMm}mm`,
      viewBox: `0 0 ${PAGE.width.toFixed(2)} ${PAGE.height.toFixed(2)}`,
    },
    [
      element('title', {}, [escapeXml(`${title}, ${words.card.page(n, of)}`)]),
      element('rect', { width: PAGE.width, height: PAGE.height, fill: '#fff' }),
      header(plan, title, words.card.page(n, of), words),
      page.frame === undefined ? '' : startingSetting(page.frame, page.label, words),
      ...body,
    ],
  );
}

function header(plan: PlanMade, title: string, page: string, words: Words): string {
  const { shoot } = plan;
  const pageWidth = textWidth(page, SIZE.small, true) + 8;
  const under = `${words.date(shoot.date)} · ${words.card.every(words.seconds(shoot.intervalS))}`;
  return (
    textWithin(LEFT, EDGE + 9, title, WIDTH - pageWidth, { size: SIZE.body, bold: true }) +
    textAt(RIGHT, EDGE + 9, page, { size: SIZE.small, bold: true, anchor: 'end' }) +
    textWithin(LEFT, EDGE + 20.5, under, WIDTH, { size: SIZE.small }) +
    rule(EDGE + 25)
  );
}

// On two lines, so that the longest names still fit.
function startingSetting(frame: PlanFrame, label: string, words: Words): string {
  const top = EDGE + HEADER_HEIGHT;
  const x = LEFT + textWidth(label, SIZE.small) + 8;
  const style = { size: SIZE.body, bold: true };
  return (
    textAt(LEFT, top + 9, label, { size: SIZE.small }) +
    textWithin(x, top + 9, exposureText(frame), RIGHT - x, style) +
    textWithin(x, top + 21.5, filterText(frame.filters, words), RIGHT - x, style) +
    rule(top + 26.5)
  );
}

/** A line across the page. */
export function rule(y: number, weight = 0.9): string {
  return element('line', { x1: LEFT, x2: RIGHT, y1: y, y2: y, stroke: '#000', 'stroke-width': weight });
}

/** A box to tick in pencil; `y` is the baseline of the text it stands beside. */
export function tickBox(x: number, y: number, size: number): string {
  return element('rect', {
    x,
    y: y - size + 1.5,
    width: size,
    height: size,
    fill: 'none',
    stroke: '#000',
    'stroke-width': 1.1,
  });
}
