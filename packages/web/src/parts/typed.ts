// What people type, and showing it back without taking the next keystroke out of their hands.

import { nothing } from 'lit-html';
import { Directive, directive, type ElementPart, type PartInfo, PartType } from 'lit-html/directive.js';

/** A number where the text is one, with point or comma; else the text itself, for a message to quote. */
export function numberOr(text: string): number | string | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return undefined;
  const value = Number(trimmed.replace(',', '.').replace('−', '-'));
  return Number.isFinite(value) ? value : trimmed;
}

class Typed extends Directive {
  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.ELEMENT) throw new Error('typed stands on an element');
  }
  render(_value: unknown, _read: (text: string) => unknown) {
    return nothing;
  }
  override update(part: ElementPart, [value, read]: [unknown, (text: string) => unknown]) {
    const input = part.element as HTMLInputElement;
    // "1." reads as 1 already: writing it back would eat the point.
    if (read(input.value) !== value) input.value = value === undefined ? '' : String(value);
    return nothing;
  }
}

/** Shows a value in a text input, unless what stands there already means it. */
export const typed = directive(Typed);
