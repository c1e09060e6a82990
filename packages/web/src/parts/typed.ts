// What people type, and showing it back without taking the next keystroke out of their hands.

import { nothing } from 'lit-html';
import { Directive, directive, type ElementPart, type PartInfo, PartType } from 'lit-html/directive.js';
import { words } from '../words/words.js';
import { readNumber } from './read-number.js';

/** A number where the text is one; else the text itself, for a message to quote. */
export function numberOr(text: string): number | string | undefined {
  const trimmed = text.trim();
  return trimmed === '' ? undefined : (readNumber(trimmed) ?? trimmed);
}

/** The language's own: "." or ",". */
const decimalMark = () => words().number(0.5, 1).charAt(1);

class Typed extends Directive {
  #mark = '';

  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.ELEMENT) throw new Error('typed stands on an element');
  }
  render(_value: unknown, _read: (text: string) => unknown) {
    return nothing;
  }
  override update(part: ElementPart, [value, read]: [unknown, (text: string) => unknown]) {
    const input = part.element as HTMLInputElement;
    const mark = decimalMark();
    // "1." reads as 1 already: writing it back would eat the point. Another language writes it its own way.
    if (read(input.value) !== value || mark !== this.#mark) {
      const text = value === undefined ? '' : String(value);
      input.value = typeof value === 'number' ? text.replace('.', mark) : text;
    }
    this.#mark = mark;
    return nothing;
  }
}

/** Shows a value in a text input, unless what stands there already means it. */
export const typed = directive(Typed);
