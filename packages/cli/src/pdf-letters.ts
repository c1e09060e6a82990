// The letters that a PDF is set in: a line of text as glyphs in their places.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename } from 'node:path';
import { type Font, fontOf } from './pdf-font.js';
import { type Glyph, isPlain, plainGlyphs } from './pdf-plain.js';
import { withStandIns } from './unshown.js';

/** A stretch of glyphs that stand side by side, each after its own width. */
export interface Stretch {
  readonly x: number; // from the line's left end
  readonly y: number; // above its baseline
  readonly glyphs: readonly number[];
}

export interface Line {
  readonly width: number;
  readonly stretches: readonly Stretch[];
}

/** One face, and the glyphs of it that were set, each with what it stands for. */
export interface Face {
  readonly font: Font;
  readonly used: Map<number, string>;
}

export interface Letters {
  readonly regular: Face;
  readonly bold: Face;
  /** Characters that there is no letter for, in the order in which they came. */
  readonly unshown: Set<string>;
  readonly line: (text: string, face: Face, rightToLeft: boolean) => Line;
}

/**
 * The letters for some pages. What joins letters and turns round what reads from the right takes longer to load than a card
 * takes to be made, so that it comes only where a text needs it.
 */
export async function lettersFor(pages: readonly string[]): Promise<Letters> {
  const require = createRequire(import.meta.url);
  const face = (path: string): Face => ({
    font: fontOf(basename(path, '.ttf'), readFileSync(path)),
    used: new Map(),
  });
  const glyphsOf = pages.every(isPlain) ? plainGlyphs : (await import('./pdf-shape.js')).shapedGlyphs;
  const unshown = new Set<string>();
  return {
    regular: face(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf')),
    bold: face(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf')),
    unshown,
    line(text, { font, used }, rightToLeft) {
      const shown = withStandIns(text, (character) => font.glyphOf(character) > 0, unshown);
      const glyphs = glyphsOf(shown, font, rightToLeft);
      for (const { id, text: of } of glyphs) if (!used.has(id)) used.set(id, of);
      return lineOf(glyphs, font);
    },
  };
}

function lineOf(glyphs: readonly Glyph[], font: Font): Line {
  const stretches: { readonly x: number; readonly y: number; readonly glyphs: number[] }[] = [];
  let [width, end] = [0, 0];
  for (const { id, advance, dx = 0, dy = 0 } of glyphs) {
    const last = stretches.at(-1);
    if (last?.y === dy && Math.abs(width + dx - end) < 0.01) last.glyphs.push(id);
    else stretches.push({ x: width + dx, y: dy, glyphs: [id] });
    end = width + dx + font.widthOf(id);
    width += advance;
  }
  return { width, stretches };
}
