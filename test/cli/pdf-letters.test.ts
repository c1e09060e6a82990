// The fonts of a PDF, with and without their rules for joining letters.

import { describe, expect, test } from 'vitest';
import { documentOf } from '../../packages/cli/src/pdf.js';
import { lettersFor } from '../../packages/cli/src/pdf-letters.js';

const FORM = { widthMm: 90, heightMm: 60, title: '', language: 'en', madeAt: new Date(0) };

/** Width at a size of 1000 units of the em, and the number of glyphs. */
function set(text: string) {
  const doc = documentOf(FORM, lettersFor([text]));
  doc.addPage().font('regular').fontSize(1000);
  const { _font } = doc as unknown as { _font: { encode(text: string): readonly [string[], unknown[]] } };
  return { width: doc.widthOfString(text), glyphs: _font.encode(text)[0].length };
}

// The advance of "A" as the file's own table of horizontal metrics has it, 1401 of 2048 units: DejaVu Sans 2.37, tables
// "cmap" and "hmtx" read by hand.
describe('letters that stand side by side', () => {
  test('keep their own widths: nothing moves closer', () => {
    const apart = set('A').width + set('V').width;
    expect(set('AV').width).toBeCloseTo(apart, 6);
    expect(set('A').width).toBeCloseTo((1401 / 2048) * 1000, 3);
    // With its rules the font moves them closer.
    expect(set('AVא').width).toBeLessThan(apart + set('א').width - 1);
  });

  test('are a glyph each: no ligature is made of them', () => {
    expect(set('office').glyphs).toBe(6);
    expect(set('officeא').glyphs).toBeLessThan(7);
  });
});

test('Arabic letters join, in the forms of their places', () => {
  // ARABIC LETTER BEH alone and at the beginning are other glyphs: other widths (The Unicode Standard, 9.2).
  expect(set('ببب').width).not.toBeCloseTo(3 * set('ب').width, 0);
});
