// Texts whose letters stand side by side, each as it is: a glyph for each character.

import type { Font } from './pdf-font.js';

/** One glyph of a line; lengths in thousandths of the type size. */
export interface Glyph {
  readonly id: number;
  readonly text: string; // that it stands for
  readonly advance: number; // from it to the next
  readonly dx?: number; // where it is drawn, from where it stands
  readonly dy?: number; // up
}

/** Scripts whose letters do not join, their marks among the letters. */
const PLAIN = /^[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}]*$/u;

export const isPlain = (text: string): boolean => PLAIN.test(text) && !/\p{Bidi_Control}/u.test(text);

/**
 * Its glyphs as they stand. Letters keep their own widths, by which card and chart measured: none moves closer to another,
 * and none melts into the next.
 */
export function plainGlyphs(text: string, font: Font): Glyph[] {
  return [...text.replace(/\p{Default_Ignorable_Code_Point}/gu, '')].map((character) => {
    const id = font.glyphOf(character);
    return { id, text: character, advance: font.widthOf(id) };
  });
}
