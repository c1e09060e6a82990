// Glyphs of any text: letters that join, bear marks or are written from the right.

import { create, type OpenFont } from 'fontkit';
import { hasRightToLeft, visualRuns } from './bidi.js';
import type { Font } from './pdf-font.js';
import { type Glyph, isPlain, plainGlyphs } from './pdf-plain.js';

const opened = new WeakMap<Font, OpenFont>();

/** The glyphs as they stand from left to right. */
export function shapedGlyphs(text: string, font: Font, rightToLeft: boolean): Glyph[] {
  if (isPlain(text)) return plainGlyphs(text, font);
  if (!hasRightToLeft(text)) return joined(text, font);
  return visualRuns(text, rightToLeft).flatMap((run) => {
    // The font turns letters of such a script round by itself, signs alone it leaves as they stand.
    const turned = run.rightToLeft && !hasRightToLeft(run.text);
    const shown = turned ? [...run.text].reverse().join('') : run.text;
    return isPlain(shown) ? plainGlyphs(shown, font) : joined(shown, font);
  });
}

function joined(text: string, font: Font): Glyph[] {
  const file = opened.get(font) ?? create(font.file);
  opened.set(font, file);
  const { glyphs, positions } = file.layout(text);
  const scale = 1000 / file.unitsPerEm;
  return glyphs.map(({ id, codePoints }, i) => {
    const { xAdvance, xOffset, yOffset } = positions[i]!;
    return {
      id,
      text: String.fromCodePoint(...codePoints),
      advance: scale * xAdvance,
      dx: scale * xOffset,
      dy: scale * yOffset,
    };
  });
}
