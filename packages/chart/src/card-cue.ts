// One cue on the card: a row for a turn of the dial, a framed box for a filter change.

import { type Block, LEFT, RIGHT, rule, SIZE, tickBox, WIDTH } from './card-page.js';
import type { CueFacts, CueStep } from './cue-facts.js';
import { clockText } from './local-time.js';
import { exposureText, filterText } from './setting-text.js';
import { element, textAt, textWithin } from './svg.js';
import { fitText, textWidth, wrapText } from './text-width.js';
import type { Words } from './words.js';

const COLUMN = LEFT + 85; // where what to do begins, right of box and clock
const SMALL = { size: SIZE.small };

/** The block of a cue. */
export function cueBlock(facts: CueFacts, withSeconds: boolean, words: Words): Block {
  return facts.filterChange ? filterBlock(facts, withSeconds, words) : dialBlock(facts, withSeconds, words);
}

function dialBlock(facts: CueFacts, withSeconds: boolean, words: Words): Block {
  const width = RIGHT - COLUMN;
  const light = lightText(facts, words);
  const filter = filterText(facts.after.filters, words);
  const crowded = textWidth(filter, SIZE.small) + textWidth(light, SIZE.small) + 8 > width;
  const bigHeight = facts.steps.length * 18;
  const height = bigHeight + 11.5 * (crowded ? 3 : 2) + 5;
  return {
    height,
    draw(top) {
      const first = top + 15;
      const small = top + bigHeight + 10.5;
      return [
        tickBox(LEFT, first, 13),
        textAt(LEFT + 20, first, clockText(facts.cue.at, withSeconds), { size: SIZE.clock, bold: true }),
        ...facts.steps.map((step, i) => dialLine(step, COLUMN, first + 18 * i, width, words)),
        textAt(LEFT + 20, small, minutesText(facts, words), SMALL),
        textAt(LEFT + 20, small + 11.5, words.card.frame(String(facts.frameNumber)), SMALL),
        textWithin(COLUMN, small, exposureText(facts.after), width, SMALL),
        textWithin(COLUMN, small + 11.5, filter, width, SMALL),
        textAt(RIGHT, small + (crowded ? 23 : 11.5), light, { ...SMALL, anchor: 'end' }),
        rule(top + height - 1),
      ].join('');
    },
  };
}

function lightText({ cue, after }: CueFacts, words: Words): string {
  const sun = words.card.sun(words.number(cue.sunAltitudeDeg, 1));
  return `${sun} · ${words.card.ev(words.number(after.sceneEv100, 1))}`;
}

function minutesText({ minutesSince }: CueFacts, words: Words): string {
  return words.card.minutesAfter(words.number(minutesSince, 1));
}

// Name and new value in the biggest type of the card, the old value smaller between them.
function dialLine(step: CueStep, x: number, y: number, width: number, words: Words): string {
  if (step.kind !== 'dial') return '';
  const name = words.controls[step.control];
  const nameStyle = { size: SIZE.name, bold: true };
  const toStyle = { size: SIZE.value, bold: true };
  const fromX = x + textWidth(name, SIZE.name, true) + 5;
  const arrowWidth = textWidth('→', SIZE.clock) + 6;
  const room = width - (fromX - x) - arrowWidth;
  const to = fitText(step.to, room - 12, SIZE.value, true);
  const from = fitText(step.from, room - textWidth(to, SIZE.value, true), 11);
  const arrowX = fromX + textWidth(from, 11) + 3;
  return (
    textAt(x, y, name, nameStyle) +
    textAt(fromX, y, from, { size: 11 }) +
    textAt(arrowX, y, '→', { size: SIZE.clock }) +
    textAt(arrowX + arrowWidth - 3, y, to, toStyle)
  );
}

const BAR = 21;
const INDENT = 38; // of the text of a step, past its box and number

function filterBlock(facts: CueFacts, withSeconds: boolean, words: Words): Block {
  const textRoom = WIDTH - INDENT - 8;
  const steps = facts.steps.map((step) => ({ step, lines: stepLines(step, textRoom, words) }));
  const lineCount = steps.reduce((sum, { lines }) => sum + lines.length, 0);
  const setting = wrapText(
    `${words.card.after} ${exposureText(facts.after)} · ${filterText(facts.after.filters, words)}`,
    WIDTH - 16,
    SIZE.small,
  );
  const cost =
    facts.mayCost === undefined ? [] : [words.card.mayCost(facts.mayCost.first, facts.mayCost.last)];
  const boxHeight = BAR + 13 + lineCount * 19 + 3 + (cost.length + setting.length) * 11.5 + 4;
  return {
    height: boxHeight + 9,
    draw(top) {
      const boxTop = top + 3;
      let y = boxTop + BAR + 10.5;
      const meta = [
        minutesText(facts, words),
        words.card.frame(String(facts.frameNumber)),
        lightText(facts, words),
      ].join(' · ');
      const svg = [
        element('rect', {
          x: LEFT + 1,
          y: boxTop,
          width: WIDTH - 2,
          height: boxHeight,
          fill: 'none',
          stroke: '#000',
          'stroke-width': 2,
        }),
        element('rect', { x: LEFT + 1, y: boxTop, width: WIDTH - 2, height: BAR, fill: '#000' }),
        textAt(LEFT + 8, boxTop + 15.5, clockText(facts.cue.at, withSeconds), {
          size: SIZE.clock,
          bold: true,
          fill: '#fff',
        }),
        textAt(RIGHT - 8, boxTop + 15.8, words.card.filterChange, {
          size: SIZE.name,
          bold: true,
          anchor: 'end',
          fill: '#fff',
        }),
        textWithin(LEFT + 8, y, meta, WIDTH - 16, SMALL),
      ];
      y += 18;
      steps.forEach(({ step, lines }, i) => {
        svg.push(tickBox(LEFT + 8, y, 12), textAt(LEFT + 25, y, String(i + 1), { size: SIZE.clock }));
        if (step.kind === 'dial' && step.control !== 'filter') {
          svg.push(dialLine(step, LEFT + INDENT, y, textRoom, words));
        } else {
          lines.forEach((text, k) => {
            svg.push(textAt(LEFT + INDENT, y + 19 * k, text, { size: SIZE.name, bold: true }));
          });
        }
        y += 19 * lines.length;
      });
      y -= 3.5;
      for (const text of cost) {
        svg.push(textAt(LEFT + 8, y, text, { size: SIZE.small, bold: true }));
        y += 11.5;
      }
      for (const text of setting) {
        svg.push(textAt(LEFT + 8, y, text, SMALL));
        y += 11.5;
      }
      return svg.join('');
    },
  };
}

function stepLines(step: CueStep, width: number, words: Words): string[] {
  if (step.kind === 'dial') {
    if (step.control !== 'filter') return [''];
    return wrapText(`${step.from} → ${step.to}`, width, SIZE.name, true);
  }
  const names = step.names.join(' + ');
  const text = step.kind === 'filter-off' ? words.card.takeOff(names) : words.card.putOn(names);
  return wrapText(text, width, SIZE.name, true);
}
