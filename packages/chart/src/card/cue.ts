// One cue on the card: a row for a turn of the dial, a framed box for a filter change.

import type { Pen } from '../svg/pen.js';
import { textWidth, wrapText } from '../svg/text-width.js';
import { bracketEnds } from '../text/bracket.js';
import { clockText } from '../text/local-time.js';
import { controlText, exposureText, filterText, settingText } from '../text/setting.js';
import type { Words } from '../text/words.js';
import { type CueFacts, type CueStep, stepText } from './cue-facts.js';
import type { Mark } from './marks.js';
import { type Big, type Block, type Layout, SIZE } from './page.js';

const SMALL = { size: SIZE.small };
const SMALL_LEADING = 11.5;

interface CueLayout extends Layout {
  readonly withSeconds: boolean;
  readonly column: number; // where what to do begins, right of box and clock
}

/** A row of the card: a cue, or what falls between cues. */
export type Row = CueFacts | Mark;

/** The blocks of the rows, one each. */
export function rowBlocks(rows: readonly Row[], withSeconds: boolean, layout: Layout): Block[] {
  const { words, form, big } = layout;
  const widths = rows.flatMap((row) => {
    if (!('cue' in row)) return [clockOf(row.at, withSeconds, words, big).width];
    const under =
      textWidth(countText(row, words), SIZE.small) + 5 + textWidth(minutesText(row, words), SIZE.small);
    return [
      clockOf(row.cue.at, withSeconds, words, big).width,
      under + UNDER_GAP - big.gap - CLOCK,
      textWidth(words.card.frame(String(row.frameNumber)), SIZE.small),
    ];
  });
  const column = form.left + CLOCK + widths.reduce((a, b) => Math.max(a, b), 0) + big.gap;
  const cueLayout = { ...layout, withSeconds, column };
  return rows.map((row) => {
    if (!('cue' in row)) return markBlock(row, cueLayout);
    if (row.byRig) return rigBlock(row, cueLayout);
    return row.filterChange ? filterBlock(row, cueLayout) : dialBlock(row, cueLayout);
  });
}

const BOX = 13;
const UNDER_GAP = 8; // from what stands under the clock to what to do
const CLOCK = 20; // of the clock, right of the page's left edge

// "6:42:13 pm", "02:30:13 +02:00": half of the day and offset smaller, so that the digits stay as big.
function clockOf(at: string, withSeconds: boolean, words: Words, { clock }: Big) {
  const [digits = '', ...rest] = clockText(at, withSeconds, words).split(' ');
  const half = rest.join(' ');
  const digitsWidth = textWidth(digits, clock, true);
  const halfX = digitsWidth + 2.5;
  const width = half === '' ? digitsWidth : halfX + textWidth(half, SIZE.small, true);
  return {
    width,
    draw: (x: number, y: number, pen: Pen, inBar = false) =>
      pen.text(x, y, digits, { size: clock, bold: true, inBar }) +
      (half === '' ? '' : pen.text(x + halfX, y, half, { size: SIZE.small, bold: true, inBar })),
  };
}

function dialBlock(facts: CueFacts, { form, words, withSeconds, column, big }: CueLayout): Block {
  const { left, right } = form;
  const width = right - column;
  const light = lightText(facts, words);
  const filter = filterText(facts.after.filters, words);
  const crowded = textWidth(filter, SIZE.small) + textWidth(light, SIZE.small) + 8 > width;
  const lines = facts.steps.map((step) => dialLine(step, width, words, big));
  const bigHeight = lines.reduce((sum, { height }) => sum + height, 0);
  const clicks = facts.steps.length === 1 ? clicksText(facts, facts.steps[0]!, words) : '';
  const whole = exposureText(facts.after);
  const [wholeWidth, clicksWidth] = [textWidth(whole, SIZE.small), textWidth(clicks, SIZE.small, true)];
  const frame = words.card.frame(String(facts.frameNumber));
  // Beside the setting, else under the clock: a line more would be a cue less on the page.
  const beside = wholeWidth + clicksWidth + 8 <= width;
  const under = !beside && textWidth(frame, SIZE.small) + clicksWidth + 5 <= column - UNDER_GAP - left;
  const exposure = wrapText(whole, beside || under ? width : width - clicksWidth - 8, SIZE.small);
  const bracket = bracketEnds(facts.after, words);
  const ends = bracket === '' ? [] : wrapText(bracket, width, SIZE.small);
  const smallLines = exposure.length + ends.length + (crowded ? 2 : 1);
  const height = bigHeight + SMALL_LEADING * smallLines + 5;
  const first = big.leading - 3;
  const small = bigHeight + 10.5;
  return {
    height,
    draw(top, pen) {
      const filterY = top + small + SMALL_LEADING * (exposure.length + ends.length);
      let y = top + first;
      const set = lines.map((line) => {
        const svg = line.draw(column, y, pen);
        y += line.height;
        return svg;
      });
      return [
        pen.tick(left, top + first, BOX),
        clockOf(facts.cue.at, withSeconds, words, big).draw(left + CLOCK, top + first, pen),
        ...set,
        pen.text(left, top + small, countText(facts, words), SMALL),
        pen.text(column - UNDER_GAP, top + small, minutesText(facts, words), { ...SMALL, anchor: 'end' }),
        pen.text(left, top + small + SMALL_LEADING, frame, SMALL),
        ...[...exposure, ...ends].map((text, i) =>
          pen.text(column, top + small + SMALL_LEADING * i, text, SMALL),
        ),
        clicks === ''
          ? ''
          : pen.text(under ? column - UNDER_GAP : right, top + small + (under ? SMALL_LEADING : 0), clicks, {
              size: SIZE.small,
              bold: true,
              anchor: 'end',
            }),
        pen.within(column, filterY, filter, width, SMALL),
        pen.text(right, filterY + (crowded ? SMALL_LEADING : 0), light, { ...SMALL, anchor: 'end' }),
        pen.line(left, top + height - 1, right, top + height - 1),
      ].join('');
    },
  };
}

/** What falls between cues: one line, with a box where there is something to do. */
function markBlock({ at, text, toDo }: Mark, { form, words, withSeconds, column, big }: CueLayout): Block {
  const { left, right } = form;
  const lines = wrapText(text, right - column, SIZE.clock, true);
  const height = 16 + (lines.length - 1) * 14 + (toDo ? 4 : 0);
  const first = toDo ? 14 : 11.5;
  return {
    height,
    draw: (top, pen) =>
      (toDo ? pen.tick(left, top + first, BOX) : '') +
      clockOf(at, withSeconds, words, big).draw(left + CLOCK, top + first, pen) +
      lines
        .map((line, i) => pen.text(column, top + first + i * 14, line, { size: SIZE.clock, bold: true }))
        .join('') +
      pen.line(left, top + height - 1, right, top + height - 1),
  };
}

/** One line without a box to tick: where the rig has the shutter, for whom must set it by hand after all. */
function rigBlock(facts: CueFacts, { form, words, withSeconds, column, big }: CueLayout): Block {
  const { left, right } = form;
  const height = 16;
  return {
    height,
    draw: (top, pen) =>
      clockOf(facts.cue.at, withSeconds, words, big).draw(left + CLOCK, top + 11.5, pen) +
      pen.text(column, top + 11.5, controlText('shutter', facts.after, words), {
        size: SIZE.clock,
        bold: true,
      }) +
      pen.text(right, top + 11.5, lightText(facts, words), { ...SMALL, anchor: 'end' }) +
      pen.line(left, top + height - 1, right, top + height - 1),
  };
}

function lightText({ cue, after }: CueFacts, words: Words): string {
  const sun = words.card.sun(words.number(cue.sunAltitudeDeg, 1));
  return `${sun} · ${words.card.ev(words.number(after.sceneEv100, 1))}`;
}

function minutesText({ minutesSince }: CueFacts, words: Words): string {
  return words.card.minutesAfter(words.number(minutesSince, 1));
}

/** "7 of 20". */
function countText({ number, cueCount }: CueFacts, words: Words): string {
  return words.card.cueOf(number, cueCount);
}

/** "2 clicks" of the dial that a step turns; "" for a filter. */
function clicksText({ clicks }: CueFacts, step: CueStep, words: Words): string {
  return step.kind !== 'dial' || clicks[step.control] === 0 ? '' : words.card.clicks(clicks[step.control]);
}

interface Line {
  readonly height: number;
  readonly width: number; // of its first line
  readonly draw: (x: number, y: number, pen: Pen) => string;
}

// Name and new value in the biggest type of the card, the old value smaller between them; the name has a line
// of its own where all three would not fit on one, because a value is never shortened.
function dialLine(step: CueStep, width: number, words: Words, big: Big): Line {
  if (step.kind !== 'dial') return { height: 0, width: 0, draw: () => '' };
  const name = words.controls[step.control];
  const nameWidth = textWidth(name, big.name, true) + 5;
  const fromWidth = textWidth(step.from, big.old) + 3;
  const arrowWidth = textWidth('→', big.clock) + 3;
  const values = fromWidth + arrowWidth + textWidth(step.to, big.value, true);
  const broken = nameWidth + values > width;
  return {
    height: broken ? 2 * big.leading : big.leading,
    width: broken ? nameWidth : nameWidth + values,
    draw(x, y, pen) {
      const [fromX, valueY] = broken ? [x, y + big.leading] : [x + nameWidth, y];
      return (
        pen.text(x, y, name, { size: big.name, bold: true }) +
        pen.text(fromX, valueY, step.from, { size: big.old }) +
        pen.text(fromX + fromWidth, valueY, '→', { size: big.clock }) +
        pen.text(fromX + fromWidth + arrowWidth, valueY, step.to, { size: big.value, bold: true })
      );
    },
  };
}

const BAR = 21;
const INDENT = 38; // of the text of a step, past its box and number

function filterBlock(facts: CueFacts, { form, words, withSeconds, big }: CueLayout): Block {
  const { left, right, inner } = form;
  const textRoom = inner - INDENT - 8;
  const steps = facts.steps.map((step) => stepLine(step, textRoom, words, big));
  const stepsHeight = steps.reduce((sum, { height }) => sum + height + 1, 0);
  const ends = bracketEnds(facts.after, words);
  const setting = wrapText(
    `${words.card.after} ${settingText(facts.after, words)}${ends === '' ? '' : `, ${ends}`}`,
    inner - 16,
    SIZE.small,
  );
  const cost = [
    ...(facts.mayCost === undefined ? [] : [words.card.mayCost(facts.mayCost.first, facts.mayCost.last)]),
    ...facts.notes.flatMap((text) => wrapText(text, inner - 16, SIZE.small, true)),
  ];
  const boxHeight = BAR + 13 + stepsHeight + 3 + (cost.length + setting.length) * SMALL_LEADING + 4;
  const meta = [
    countText(facts, words),
    minutesText(facts, words),
    words.card.frame(String(facts.frameNumber)),
    lightText(facts, words),
  ].join(' · ');
  return {
    height: boxHeight + 9,
    draw(top, pen) {
      const box = { left: left + 1, right: right - 1, top: top + 3, bottom: top + 3 + boxHeight };
      const bar = { ...box, bottom: box.top + BAR };
      let y = bar.bottom + 10.5;
      const svg = [
        pen.frame(box, 2),
        pen.bar(bar),
        clockOf(facts.cue.at, withSeconds, words, big).draw(left + 8, box.top + 15.5, pen, true),
        pen.text(right - 8, box.top + 15.8, words.card.filterChange, {
          size: SIZE.name,
          bold: true,
          anchor: 'end',
          inBar: true,
        }),
        pen.within(left + 8, y, meta, inner - 16, SMALL),
      ];
      y += 18;
      steps.forEach((step, i) => {
        svg.push(
          pen.tick(left + 8, y, 12),
          pen.text(left + 25, y, String(i + 1), { size: SIZE.clock }),
          step.draw(left + INDENT, y, pen),
        );
        const clicks = clicksText(facts, facts.steps[i]!, words);
        const beside = textWidth(clicks, SIZE.small, true) + step.width + 8 <= textRoom;
        if (clicks !== '' && beside)
          svg.push(pen.text(right - 8, y, clicks, { size: SIZE.small, bold: true, anchor: 'end' }));
        y += step.height + 1;
      });
      y -= 3.5;
      for (const text of cost) {
        svg.push(pen.text(left + 8, y, text, { size: SIZE.small, bold: true }));
        y += SMALL_LEADING;
      }
      for (const text of setting) {
        svg.push(pen.text(left + 8, y, text, SMALL));
        y += SMALL_LEADING;
      }
      return svg.join('');
    },
  };
}

function stepLine(step: CueStep, width: number, words: Words, big: Big): Line {
  if (step.kind === 'dial' && step.control !== 'filter') return dialLine(step, width, words, big);
  const text = step.kind === 'dial' ? `${step.from} → ${step.to}` : stepText(step, words);
  const lines = wrapText(text, width, SIZE.name, true);
  return {
    height: lines.length * (big.leading + 1) - 1,
    width,
    draw: (x, y, pen) =>
      lines
        .map((line, i) => pen.text(x, y + (big.leading + 1) * i, line, { size: SIZE.name, bold: true }))
        .join(''),
  };
}
