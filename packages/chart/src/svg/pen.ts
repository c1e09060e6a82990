// Draws on a page of the card in its two tones: ink on paper, or light on the dark of a screen.

import type { Ink } from './ink.js';
import { type Box, element, rectOf, type TextStyle, textAt } from './svg.js';
import { fitText } from './text-width.js';

/** A text style without a colour; `inBar` is for text on a filled bar. */
export interface PenStyle extends Omit<TextStyle, 'fill'> {
  readonly inBar?: boolean;
}

export interface Pen {
  readonly ink: Ink;
  readonly text: (x: number, y: number, text: string, style: PenStyle) => string;
  /** The same, shortened with … to `width`. */
  readonly within: (x: number, y: number, text: string, width: number, style: PenStyle) => string;
  readonly line: (x1: number, y1: number, x2: number, y2: number, weight?: number) => string;
  readonly frame: (box: Box, weight?: number) => string;
  readonly bar: (box: Box) => string;
  /** A box to tick in pencil; `y` is the baseline of the text it stands beside. */
  readonly tick: (x: number, y: number, size: number) => string;
}

/** Lines of the card are at least so heavy, points: thinner ones are lost by a dim red lamp. */
const LIGHTEST = 0.9;

export function penOf(ink: Ink): Pen {
  const text: Pen['text'] = (x, y, content, { inBar = false, ...style }) =>
    textAt(x, y, content, { ...style, fill: inBar ? ink.paper : ink.text });
  const frame: Pen['frame'] = (box, weight = LIGHTEST) =>
    element('rect', { ...rectOf(box), fill: 'none', stroke: ink.frame, 'stroke-width': weight });
  return {
    ink,
    text,
    within: (x, y, content, width, style) =>
      text(x, y, fitText(content, width, style.size, style.bold), style),
    line: (x1, y1, x2, y2, weight = LIGHTEST) =>
      element('line', { x1, x2, y1, y2, stroke: ink.frame, 'stroke-width': weight }),
    frame,
    bar: (box) => element('rect', { ...rectOf(box), fill: ink.text }),
    tick: (x, y, size) => {
      const top = y - size + 1.5;
      return frame({ left: x, top, right: x + size, bottom: top + size }, 1.1);
    },
  };
}
