// How a line of a PDF is set: widths, letters that join, and the order of a line that reads from the right.

import { expect, test } from 'vitest';
import { lettersFor } from '../../packages/cli/src/pdf-letters.js';

/** A line at a size of 1000 units; `shown` is what stands on paper from left to right. */
async function set(text: string, { rightToLeft = false, beside = '' } = {}) {
  const letters = await lettersFor([text, beside]);
  const { width, stretches } = letters.line(text, letters.regular, rightToLeft);
  const glyphs = stretches.flatMap((stretch) => stretch.glyphs);
  const shown = glyphs.map((glyph) => letters.regular.used.get(glyph)).join('');
  return { width, glyphs, shown, starts: stretches.map(({ x }) => x) };
}

// The advance of "A" as the file's own table of horizontal metrics has it, 1401 of 2048 units: DejaVu Sans 2.37, tables
// "cmap" and "hmtx" read by hand.
test.each(['', 'ערב'])(
  'letters keep their own widths: nothing moves closer (beside "%s")',
  async (beside) => {
    const [a, v, both] = await Promise.all(['A', 'V', 'AV'].map((text) => set(text, { beside })));
    expect(a!.width).toBeCloseTo((1401 / 2048) * 1000, 6);
    expect(both!.width).toBeCloseTo(a!.width + v!.width, 6);
  },
);

test('letters are a glyph each: no ligature is made of them', async () => {
  expect((await set('office')).glyphs).toHaveLength(6);
  expect((await set('office', { beside: 'ערב' })).glyphs).toHaveLength(6);
});

test('what is never seen takes no room', async () => {
  // SOFT HYPHEN and ZERO WIDTH SPACE are default ignorable (Unicode's character database).
  expect((await set('a\u00ad\u200bb')).width).toBeCloseTo((await set('ab')).width, 6);
});

test('Arabic letters join, in the forms of their places', async () => {
  // ARABIC LETTER BEH alone and at the beginning are other glyphs: other widths (The Unicode Standard, 9.2).
  expect((await set('ببب')).width).not.toBeCloseTo(3 * (await set('ب')).width, 0);
});

test('an accent of its own stands over its letter, which stays as wide', async () => {
  const accented = await set('e\u0301');
  expect(accented.width).toBeCloseTo((await set('é')).width, 6);
  expect(accented.glyphs).not.toEqual((await set('e')).glyphs);
});

test.each([
  // Words of another script stand at the left of what reads from the right.
  ['ערב Quay', true, 'Quay ברע'],
  ['Quay ערב', false, 'Quay ברע'],
  // Numbers keep their order, brackets face the other way (UAX #9, rules L1 to L4).
  ['ערב (2) 18:30', true, '18:30 (2) ברע'],
  ['Abend ערב (2) 18:30', false, 'Abend 18:30 (2) ברע'],
])('%s, from the right %s, stands as %s', async (text, rightToLeft, shown) => {
  const line = await set(text, { rightToLeft });
  expect(line.shown).toBe(shown);
  expect(line.starts).toEqual([...line.starts].sort((a, b) => a - b));
});
