// A font as it is read and made smaller, against another reader of fonts.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create } from 'fontkit';
import { expect, test } from 'vitest';
import { fontOf } from '../../packages/cli/src/pdf-font.js';

interface Outlined {
  readonly advanceWidth: number;
  readonly path: { toSVG(): string };
}

interface Reader {
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly numGlyphs: number;
  readonly bbox: Readonly<Record<'minX' | 'minY' | 'maxX' | 'maxY', number>>;
  glyphForCodePoint(code: number): { readonly id: number };
  getGlyph(id: number): Outlined;
}

const opened = (bytes: Uint8Array) => create(Buffer.from(bytes)) as unknown as Reader;

function both(name: string) {
  const file = readFileSync(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
  return { font: fontOf(name, file), reader: opened(file) };
}

const FONTS = ['DejaVuSans', 'DejaVuSans-Bold'];

test.each(FONTS)('%s: glyphs, widths and measures as another reader has them', (name) => {
  const { font, reader } = both(name);
  const scale = 1000 / reader.unitsPerEm;
  const { minX, minY, maxX, maxY } = reader.bbox;
  expect([font.ascent, font.descent, ...font.box]).toEqual(
    [reader.ascent, reader.descent, minX, minY, maxX, maxY].map((units) => scale * units),
  );
  for (let code = 1; code < 0x20000; code++) {
    if (code >= 0xd800 && code < 0xe000) continue;
    const glyph = font.glyphOf(String.fromCodePoint(code));
    const { id } = reader.glyphForCodePoint(code);
    if (glyph !== id) throw new Error(`U+${code.toString(16)}: glyph ${glyph}, not ${id}`);
  }
  for (let glyph = 0; glyph < reader.numGlyphs; glyph++) {
    expect(font.widthOf(glyph)).toBe(scale * reader.getGlyph(glyph).advanceWidth);
  }
});

test.each(FONTS)('%s: a part of it draws its glyphs, and those that they are put together from', (name) => {
  const { font, reader } = both(name);
  // Letters put together from others and plain ones, a sign with a high number, and a space, which draws nothing.
  const glyphs = [...'éÅǻ⅓½ A→g1'].map(font.glyphOf);
  expect(Math.min(...glyphs)).toBeGreaterThan(0);
  const bytes = font.subset(glyphs);
  const part = opened(bytes);
  for (const glyph of glyphs) {
    expect(part.getGlyph(glyph).path.toSVG()).toBe(reader.getGlyph(glyph).path.toSVG());
    expect(part.getGlyph(glyph).advanceWidth).toBe(reader.getGlyph(glyph).advanceWidth);
  }
  expect(part.getGlyph(font.glyphOf('B')).path.toSVG()).toBe('');
  expect(bytes.length).toBeLessThan(60_000);
});
