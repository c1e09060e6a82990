// How wide a text will be, without a screen to try it on. Chart and card place every label by it.

import * as widthsOf from './widths.js';

const REGULAR = widths(widthsOf.REGULAR);
const BOLD = widths(widthsOf.BOLD);

function widths(groups: Readonly<Record<number, string>>): ReadonlyMap<string, number> {
  return new Map(
    Object.entries(groups).flatMap(([width, chars]) => [...chars].map((c) => [c, Number(width)])),
  );
}

// Widest letters of scripts the table leaves out, so that a guess is never too narrow.
const LETTER_WIDTH = 1200;
const WIDE_LETTER_WIDTH = 1420;
const HEBREW_LETTER_WIDTH = 800;
const ROUND_CJK =
  /[\u1100-\u11ff\u2e80-\u9fff\uac00-\ud7af\uf900-\ufaff\uff00-\uff60]|[\u{1f000}-\u{3ffff}]/u;

/**
 * Width of one line of text in the units of `size`: exact for Latin, Greek and Cyrillic letters, digits and the signs of
 * chart and card, kerning left out; a safe upper guess elsewhere. `textWidth('1/60', 10)` is 22.45.
 */
export function textWidth(text: string, size: number, bold = false): number {
  const table = bold ? BOLD : REGULAR;
  let sum = 0;
  for (const char of text.normalize('NFC')) {
    if (/\p{Mn}|\p{Cf}/u.test(char)) continue;
    // An accent leaves most letters as wide as they are; the table holds those it widens.
    sum += table.get(char) ?? table.get(char.normalize('NFD')[0]!) ?? guess(char);
  }
  return (sum * size) / 1000;
}

function guess(char: string): number {
  if (/\p{Script=Hebrew}/u.test(char)) return HEBREW_LETTER_WIDTH;
  return /\p{Script=Arabic}|\p{Script=Cyrillic}/u.test(char) || ROUND_CJK.test(char)
    ? WIDE_LETTER_WIDTH
    : LETTER_WIDTH;
}

/** The text, shortened with … where it is wider than `width`. */
export function fitText(text: string, width: number, size: number, bold = false): string {
  if (textWidth(text, size, bold) <= width) return text;
  const chars = [...text];
  while (chars.length > 0 && textWidth(`${chars.join('')}…`, size, bold) > width) chars.pop();
  return `${chars.join('').trimEnd()}…`;
}

/** The text broken at spaces into lines no wider than `width`; a word wider than that is shortened. */
export function wrapText(text: string, width: number, size: number, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size, bold) > width) {
      lines.push(fitText(line, width, size, bold));
      line = word;
    } else line = longer;
  }
  return [...lines, fitText(line, width, size, bold)];
}
