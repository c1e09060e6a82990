// How a line of a PDF is set: widths, letters that join, and the order of a line that reads from the right.

import PDFDocument from 'pdfkit';
import { expect, test, vi } from 'vitest';
import { lettersFor } from '../../packages/cli/src/pdf-letters.js';

type Call = [text: string, x: number, y: number, options: PDFKit.Mixins.TextOptions];

/** The runs of a line at a size of 1000 units, anchored at 0, as they are set, with the ends of each. */
function set(text: string, { rightToLeft = false, beside = '', anchor = 'start' } = {}) {
  const doc = new PDFDocument({ font: '', margin: 0 });
  const letters = lettersFor(doc, [text, beside]);
  const texts = vi.spyOn(doc, 'text');
  letters.set({ text, x: 0, y: 100, size: 1000, bold: false, anchor, rightToLeft });
  const runs = (texts.mock.calls as unknown as Call[]).map(([run, x, , options]) => {
    const width = doc.widthOfString(run, options);
    return { run, left: x, right: x + width };
  });
  const { _font } = doc as unknown as { _font: { encode(text: string): readonly [string[], unknown[]] } };
  const glyphs = runs.flatMap(({ run }) => _font.encode(run)[0]);
  const [left, right] = [runs[0]!.left, runs.at(-1)!.right];
  return { runs, left, right, width: right - left, glyphs, unshown: [...letters.unshown] };
}

// The advance of "A" as the file's own table of horizontal metrics has it, 1401 of 2048 units: DejaVu Sans 2.37, tables
// "cmap" and "hmtx" read by hand.
test.each(['', 'ערב'])('letters keep their own widths: nothing moves closer (beside "%s")', (beside) => {
  const [a, v, both] = ['A', 'V', 'AV'].map((text) => set(text, { beside }).width);
  expect(a).toBeCloseTo((1401 / 2048) * 1000, 3);
  expect(both).toBeCloseTo(a! + v!, 6);
});

test.each(['', 'ערב'])('letters are a glyph each: no ligature is made of them (beside "%s")', (beside) => {
  expect(set('office', { beside }).glyphs).toHaveLength(6);
});

test('Arabic letters join, in the forms of their places', () => {
  // ARABIC LETTER BEH alone and at the beginning are other glyphs: other widths (The Unicode Standard, 9.2).
  expect(set('ببب').width).not.toBeCloseTo(3 * set('ب').width, 0);
});

test('an accent of its own stands over its letter, which stays as wide', () => {
  const accented = set('e\u0301');
  expect(accented.width).toBeCloseTo(set('é').width, 6);
  expect(accented.unshown).toEqual([]);
});

test('in a line that reads from the right, words of another script stand at its left', () => {
  const [first, second] = set('ערב Quay', { rightToLeft: true }).runs;
  expect([first!.run, second!.run.trim()]).toEqual(['Quay', 'ערב']);
  expect(second!.left).toBeCloseTo(first!.right, 6);
  // Its start is its right end.
  expect(second!.right).toBeCloseTo(0, 6);
});

test('in a line that reads from the left they stand in the order of reading', () => {
  const [first, second] = set('Quay ערב').runs;
  expect([first!.run.trim(), second!.run]).toEqual(['Quay', 'ערב']);
  expect(first!.left).toBeCloseTo(0, 6);
});

test('numbers keep their order, brackets face the other way', () => {
  // UAX #9, rules L1 to L4.
  const { runs } = set('ערב (2) 18:30', { rightToLeft: true });
  expect(runs.slice(0, 3).map(({ run }) => run.trim())).toEqual(['18:30', '(', '2']);
  expect(runs[3]!.run).toContain('ערב');
  expect(runs.map(({ left }) => left)).toEqual(runs.map(({ left }) => left).sort((a, b) => a - b));
});

test.each([
  ['start', false, 0],
  ['middle', false, 0.5],
  ['end', false, 1],
  ['end', true, 0],
  ['middle', true, 0.5],
  ['start', true, 1],
])('anchored at its %s, from the right %s', (anchor, rightToLeft, share) => {
  for (const text of rightToLeft ? ['ערב & לילה', 'ערב'] : ['Quay', 'Quay ערב']) {
    const { left, right } = set(text, { anchor, rightToLeft });
    expect(left + share * (right - left), text).toBeCloseTo(0, 6);
  }
});
