// The first page of the card: read at home and at dusk, before the first frame.

import type { PlanMade } from '@evenfall/core';
import { evPanel } from '../plot/ev-panel.js';
import { clockRow } from '../plot/frame.js';
import { scenePoints, targetPoints } from '../plot/series.js';
import { timeAxis } from '../plot/time-axis.js';
import { LINE } from '../svg/ink.js';
import { element, part } from '../svg/svg.js';
import { textWidth, wrapText } from '../svg/text-width.js';
import { describePlan } from '../text/describe.js';
import { instantMs } from '../text/local-time.js';
import { exposureText, filterText } from '../text/setting.js';
import { noteBlocks, warningBlocks } from './back.js';
import type { CardFacts } from './facts.js';
import { moveStartBlocks } from './moves.js';
import { type Block, type Layout, LEADING, SIZE } from './page.js';

const SMALL = { size: SIZE.small };
const HEAD = { size: SIZE.small, bold: true };

/** A chart flatter than this is not read, points. */
const CHART_LEAST = 66;
const CHART_MOST = 130;

/** What stands on the first page, and what goes to where there is room. */
export interface Front {
  readonly blocks: readonly Block[];
  /** How to read the light, the table of shutters, the chart; in the order in which they are missed. */
  readonly loose: readonly Loose[];
}

/** A block that stretches over what room there is. */
export interface Loose {
  readonly least: number;
  readonly needed: boolean; // else it is left out where nowhere has room
  readonly block: (room: number) => Block;
}

/** The first page as far as it is bound to be there. */
export function front(plan: PlanMade, facts: CardFacts, layout: Layout): Front {
  const { card } = layout.words;
  const fixed = (block: Block): Loose => ({ least: block.height, needed: true, block: () => block });
  return {
    blocks: [
      timesBlock(facts, layout),
      firstSettingBlock(plan, layout),
      ...bracketBlocks(facts, layout),
      ...warningBlocks(plan, layout),
      ...noteBlocks(plan, layout),
      ...moveStartBlocks(plan, layout),
      listBlock(facts.checks, true, layout, card.beforeStarting),
      ...(facts.events.length > 0 ? [listBlock(facts.events, false, layout)] : []),
    ],
    loose: [
      fixed(readingsBlock(facts, layout)),
      fixed(evTableBlock(facts, layout)),
      {
        least: CHART_LEAST,
        needed: false,
        block: (room) => chartBlock(plan, Math.min(CHART_MOST, room), layout),
      },
    ],
  };
}

/** Those that fit below the blocks on pages of so much room, in order, and those that are left. */
export function placed(
  blocks: readonly Block[],
  loose: readonly Loose[],
  room: number,
): { readonly blocks: readonly Block[]; readonly left: readonly Loose[] } {
  let free = blocks.reduce((left, { height }) => (height > left ? room : left) - height, room) - 0.5;
  const here: Block[] = [];
  const left: Loose[] = [];
  for (const each of loose) {
    if (each.least > free) left.push(each);
    else {
      const block = each.block(free);
      here.push(block);
      free -= block.height;
    }
  }
  return { blocks: [...blocks, ...here], left };
}

function timesBlock(facts: CardFacts, { form: { left, inner } }: Layout): Block {
  // As large as the times, which are its own.
  const zoneX = textWidth(facts.place, SIZE.small) + 8;
  return {
    height: 50,
    draw: (top, pen) =>
      pen.text(left, top + 8.5, facts.place, SMALL) +
      pen.within(left + zoneX, top + 8.5, facts.zone, inner - zoneX, { size: 11, bold: true }) +
      pen.text(left, top + 22, facts.setUpBy, { size: 11, bold: true }) +
      pen.within(left, top + 34.5, facts.startAndEnd, inner, { size: 11, bold: true }) +
      pen.within(left, top + 45.5, facts.length, inner, SMALL),
  };
}

function firstSettingBlock(plan: PlanMade, { form, words }: Layout): Block {
  const first = plan.frames[0]!;
  const height = 46;
  const { left, right, inner } = form;
  const label = words.card.firstSetting;
  return {
    height,
    draw: (top, pen) =>
      pen.frame({ left: left + 1, right: right - 1, top: top + 3, bottom: top + height - 5 }, 2) +
      pen.text(right - 7, top + 34.5, label, { ...SMALL, anchor: 'end' }) +
      pen.within(left + 8, top + 19, exposureText(first), inner - 16, { size: SIZE.value, bold: true }) +
      pen.within(
        left + 8,
        top + 35,
        filterText(first.filters, words),
        inner - 22 - textWidth(label, SIZE.small),
        {
          size: SIZE.clock,
          bold: true,
        },
      ),
  };
}

// What the camera's own bracketing is set to; none without a bracket.
function bracketBlocks({ bracket }: CardFacts, { form: { left, inner } }: Layout): Block[] {
  if (bracket === undefined) return [];
  const lines = [
    ...wrapText(bracket.setTo, inner, SIZE.body, true).map((text) => ({
      text,
      style: { size: SIZE.body, bold: true },
    })),
    ...wrapText(bracket.how, inner, SIZE.small).map((text) => ({ text, style: SMALL })),
  ];
  return [
    {
      height: lines.length * LEADING + 5,
      draw: (top, pen) =>
        lines.map(({ text, style }, i) => pen.text(left, top + 8.5 + i * LEADING, text, style)).join(''),
    },
  ];
}

// In two columns, read down; in one where a text needs the width.
function listBlock(items: readonly string[], boxes: boolean, { form }: Layout, head?: string): Block {
  const indent = boxes ? 13 : 0;
  const half = form.inner / 2;
  const fits = items.every((item) => textWidth(item, SIZE.small) <= half - indent - 4);
  const rows = fits ? Math.ceil(items.length / 2) : items.length;
  const width = (fits ? half : form.inner) - indent - 4;
  const first = head === undefined ? 8.5 : 19.5;
  return {
    height: first + (rows - 1) * LEADING + 5,
    is: 'parts',
    draw: (top, pen) =>
      (head === undefined ? '' : part(2, pen.text(form.left, top + 8.5, head, HEAD))) +
      items
        .map((item, i) => {
          const x = form.left + (i < rows ? 0 : half);
          const y = top + first + (i % rows) * LEADING;
          const text = pen.within(x + indent, y, item, width, SMALL);
          return part('paragraph', boxes ? pen.tick(x, y, 9) + text : text);
        })
        .join(''),
  };
}

// Scene and target, with every cue a tick across the target and every filter change a ring on it.
function chartBlock(plan: PlanMade, height: number, { form: { left, right }, words }: Layout): Block {
  const { frames } = plan;
  return {
    height,
    is: 'img',
    label: describePlan(plan, words),
    draw(top, { ink }) {
      const look = { ink, unit: 0.75 };
      const axis = timeAxis(frames, left + 34, right);
      const bottom = top + height - 19;
      const row = { moments: frames, axis, look, words };
      const panel = evPanel({
        ...row,
        box: { left: axis.left, right: axis.right, top: top + 2, bottom },
        series: [
          { points: scenePoints(frames), stepped: false, weight: LINE.fine, stroke: ink.scene },
          { points: targetPoints(frames), stepped: false, weight: LINE.heavy, stroke: ink.target },
        ],
        band: [],
        events: [],
      });
      const marks = plan.cues.map((cue) => {
        const x = axis.x(instantMs(cue.at));
        const y = panel.y(frames[cue.frame]!.targetEv100);
        return cue.changes.some((change) => change.control === 'filter')
          ? element('circle', { cx: x, cy: y, r: 4, fill: ink.paper, stroke: ink.frame, 'stroke-width': 1.6 })
          : element('line', {
              x1: x,
              x2: x,
              y1: y - 4.5,
              y2: y + 4.5,
              stroke: ink.frame,
              'stroke-width': 0.9,
            });
      });
      return panel.svg + marks.join('') + clockRow({ ...row, y: bottom, width: right + 2, named: false });
    },
  };
}

// Pairs of shutter and EV side by side, read down.
function evTableBlock({ evTable: { head, cells, filters } }: CardFacts, { form }: Layout): Block {
  const { left, inner } = form;
  const widest = (texts: readonly string[], bold: boolean) =>
    texts.reduce((width, text) => Math.max(width, textWidth(text, SIZE.small, bold)), 0);
  const shutterWidth = widest(
    cells.map(({ shutter }) => shutter),
    false,
  );
  const evWidth = widest(
    cells.map(({ ev }) => ev),
    true,
  );
  const columns = Math.max(1, Math.floor(inner / (shutterWidth + evWidth + 12)));
  const rows = Math.ceil(cells.length / columns);
  const heads = [
    ...wrapText(head, inner, SIZE.small, true),
    ...(filters === '' ? [] : wrapText(filters, inner, SIZE.small)),
  ];
  const first = 8.5 + heads.length * LEADING;
  return {
    height: first + (rows - 1) * LEADING + 5,
    draw: (top, pen) =>
      heads.map((line, i) => pen.text(left, top + 8.5 + i * LEADING, line, i === 0 ? HEAD : SMALL)).join('') +
      cells
        .map(({ shutter, ev }, i) => {
          const x = left + (inner / columns) * Math.floor(i / rows);
          const y = top + first + (i % rows) * LEADING;
          return (
            pen.text(x + shutterWidth, y, shutter, { ...SMALL, anchor: 'end' }) +
            pen.text(x + shutterWidth + 5, y, ev, HEAD)
          );
        })
        .join(''),
  };
}

const READINGS_PER_ROW = 4;
const READING_HEIGHT = 17;

function readingsBlock(facts: CardFacts, { form: { left, right, inner }, words }: Layout, rows = 1): Block {
  const lines = wrapText(facts.correction, inner, SIZE.small);
  const headHeight = 12;
  const tableTop = 11 + lines.length * LEADING + 3;
  return {
    height: tableTop + headHeight + rows * READING_HEIGHT + 3,
    draw(top, pen) {
      const cell = inner / READINGS_PER_ROW;
      const y = top + tableTop;
      const foot = y + headHeight + rows * READING_HEIGHT;
      return [
        pen.text(left, top + 8.5, words.card.readings, HEAD),
        ...lines.map((text, i) => pen.text(left, top + 19.5 + i * LEADING, text, SMALL)),
        pen.frame({ left: left + 0.5, right: right - 0.5, top: y, bottom: foot }),
        ...Array.from({ length: rows - 1 }, (_, i) => {
          const lineY = y + headHeight + (i + 1) * READING_HEIGHT;
          return pen.line(left, lineY, right, lineY);
        }),
        ...Array.from({ length: READINGS_PER_ROW }, (_, i) => {
          const x = left + i * cell;
          return (
            (i > 0 ? pen.line(x, y, x, foot) : '') +
            pen.within(x + 4, y + 9.5, words.card.readingTime, cell / 2, SMALL) +
            pen.within(x + 0.6 * cell, y + 9.5, words.card.readingEv, 0.4 * cell, SMALL)
          );
        }),
      ].join('');
    },
  };
}
