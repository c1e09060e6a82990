// The first page of the card: read at home and at dusk, before the first frame.

import type { PlanMade } from '@evenfall/core';
import type { CardFacts } from './card-facts.js';
import { type Block, LEFT, RIGHT, ROOM, SIZE, tickBox, WIDTH } from './card-page.js';
import { clockRow } from './chart-frame.js';
import { evPanel } from './ev-panel.js';
import { INKS, LINE } from './ink.js';
import { instantMs } from './local-time.js';
import { scenePoints, targetPoints } from './plan-series.js';
import { exposureText, filterText } from './setting-text.js';
import { element, textAt, textWithin } from './svg.js';
import { wrapText } from './text-width.js';
import { timeAxis } from './time-axis.js';
import type { Words } from './words.js';

const SMALL = { size: SIZE.small };
const HEAD = { size: SIZE.small, bold: true };
const LEADING = 11.3;

const CHART_HEIGHTS = { least: 66, most: 120 };

/** The blocks of the first page, in reading order; the chart takes the height the others leave. */
export function frontBlocks(plan: PlanMade, facts: CardFacts, words: Words): Block[] {
  const before = [
    timesBlock(facts),
    firstSettingBlock(plan, words),
    listBlock(facts.checks, true, words.card.beforeStarting),
    ...(facts.events.length > 0 ? [listBlock(facts.events, false)] : []),
  ];
  const readings = readingsBlock(facts, words);
  const left = ROOM - [...before, readings].reduce((sum, { height }) => sum + height, 0) - 0.5;
  const chartHeight = Math.min(CHART_HEIGHTS.most, Math.max(CHART_HEIGHTS.least, left));
  return [...before, chartBlock(plan, chartHeight, words), readings];
}

function timesBlock(facts: CardFacts): Block {
  return {
    height: 50,
    draw: (top) =>
      textWithin(LEFT, top + 8.5, facts.place, WIDTH, SMALL) +
      textAt(LEFT, top + 22, facts.setUpBy, { size: 11, bold: true }) +
      textWithin(LEFT, top + 34.5, facts.startAndEnd, WIDTH, { size: 11, bold: true }) +
      textWithin(LEFT, top + 45.5, facts.length, WIDTH, SMALL),
  };
}

function firstSettingBlock(plan: PlanMade, words: Words): Block {
  const first = plan.frames[0]!;
  const height = 46;
  return {
    height,
    draw: (top) =>
      element('rect', {
        x: LEFT + 1,
        y: top + 3,
        width: WIDTH - 2,
        height: height - 8,
        fill: 'none',
        stroke: '#000',
        'stroke-width': 2,
      }) +
      textAt(RIGHT - 7, top + 34.5, words.card.firstSetting, { size: SIZE.small, anchor: 'end' }) +
      textWithin(LEFT + 8, top + 19, exposureText(first), WIDTH - 16, { size: SIZE.value, bold: true }) +
      textWithin(LEFT + 8, top + 35, filterText(first.filters, words), WIDTH - 90, {
        size: SIZE.clock,
        bold: true,
      }),
  };
}

// In two columns, read down.
function listBlock(items: readonly string[], boxes: boolean, head?: string): Block {
  const rows = Math.ceil(items.length / 2);
  const column = WIDTH / 2;
  const indent = boxes ? 13 : 0;
  const first = head === undefined ? 8.5 : 19.5;
  return {
    height: first + (rows - 1) * LEADING + 5,
    draw: (top) =>
      (head === undefined ? '' : textAt(LEFT, top + 8.5, head, HEAD)) +
      items
        .map((item, i) => {
          const x = LEFT + (i < rows ? 0 : column);
          const y = top + first + (i % rows) * LEADING;
          const text = textWithin(x + indent, y, item, column - indent - 4, SMALL);
          return boxes ? tickBox(x, y, 9) + text : text;
        })
        .join(''),
  };
}

// Scene and target, with every cue a tick across the target and every filter change a ring on it.
function chartBlock(plan: PlanMade, height: number, words: Words): Block {
  const look = { ink: INKS.print, unit: 0.75 };
  const { frames } = plan;
  return {
    height,
    draw(top) {
      const axis = timeAxis(frames, LEFT + 34, RIGHT);
      const bottom = top + height - 19;
      const row = { moments: frames, axis, look, words };
      const panel = evPanel({
        ...row,
        box: { left: axis.left, right: axis.right, top: top + 2, bottom },
        series: [
          { points: scenePoints(frames), stepped: false, weight: LINE.fine, stroke: '#000' },
          { points: targetPoints(frames), stepped: false, weight: LINE.heavy, stroke: '#000' },
        ],
        band: [],
        events: [],
      });
      const marks = plan.cues.map((cue) => {
        const x = axis.x(instantMs(cue.at));
        const y = panel.y(frames[cue.frame]!.targetEv100);
        return cue.changes.some((change) => change.control === 'filter')
          ? element('circle', { cx: x, cy: y, r: 4, fill: '#fff', stroke: '#000', 'stroke-width': 1.6 })
          : element('line', { x1: x, x2: x, y1: y - 4.5, y2: y + 4.5, stroke: '#000', 'stroke-width': 0.9 });
      });
      return panel.svg + marks.join('') + clockRow({ ...row, y: bottom, width: RIGHT + 2, named: false });
    },
  };
}

const READINGS_PER_ROW = 4;

function readingsBlock(facts: CardFacts, words: Words): Block {
  const lines = wrapText(facts.correction, WIDTH, SIZE.small);
  const rowHeight = 17;
  const headHeight = 12;
  const tableTop = 11 + lines.length * LEADING + 3;
  return {
    height: tableTop + headHeight + rowHeight,
    draw(top) {
      const cell = WIDTH / READINGS_PER_ROW;
      const y = top + tableTop;
      const foot = y + headHeight + rowHeight;
      const upright = (x: number) =>
        element('line', { x1: x, x2: x, y1: y, y2: foot, stroke: '#000', 'stroke-width': 0.9 });
      return [
        textAt(LEFT, top + 8.5, words.card.readings, HEAD),
        ...lines.map((text, i) => textAt(LEFT, top + 19.5 + i * LEADING, text, SMALL)),
        element('rect', {
          x: LEFT + 0.5,
          y,
          width: WIDTH - 1,
          height: foot - y,
          fill: 'none',
          stroke: '#000',
          'stroke-width': 0.9,
        }),
        ...Array.from({ length: READINGS_PER_ROW }, (_, i) => {
          const x = LEFT + i * cell;
          return (
            (i > 0 ? upright(x) : '') +
            textWithin(x + 4, y + 9.5, words.card.readingTime, cell / 2, SMALL) +
            textWithin(x + 0.6 * cell, y + 9.5, words.card.readingEv, 0.4 * cell, SMALL)
          );
        }),
      ].join('');
    },
  };
}
