import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitText, textWidth, wrapText } from '../../../packages/chart/src/svg/text-width.js';
import { widthsFile } from '../../../packages/tools/text-widths.mjs';
import { fontAdvance, measured } from '../font-advance.js';

const FONTS = [
  { bold: false, advance: fontAdvance('DejaVuSans') },
  { bold: true, advance: fontAdvance('DejaVuSans-Bold') },
];
const range = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i));

// Source: the font file, read by the test's own reader.
test.each(FONTS)(
  'letters, digits and signs of chart and card are as wide as the font says ($bold)',
  ({ bold, advance }) => {
    const chars = [
      ...range(0x20, 0x7e),
      ...'ÀÉÎÕÜÝàéîõüýñçåßæøłđœ·–—‘’“”…→←−≤≥×½⅓⅔¼¾°′″≈',
      ...'ΑΩαβγδλΩάЖЩжщыюя',
    ];
    expect(chars.length).toBeGreaterThan(130);
    for (const char of chars) {
      expect(textWidth(char, 1000, bold), char).toBeCloseTo(1000 * advance(char)!, -0.5);
    }
  },
);

test.each(FONTS)('no letter of another script is wider than the guess ($bold)', ({ bold, advance }) => {
  let seen = 0;
  const chars = [
    ...range(0x100, 0x17f),
    ...range(0x370, 0x4ff),
    ...range(0x5d0, 0x5ea),
    ...range(0x620, 0x64a),
  ];
  for (const char of chars) {
    const ems = advance(char);
    if (ems === undefined) continue;
    seen++;
    expect(textWidth(char, 1000, bold), char).toBeGreaterThanOrEqual(1000 * ems - 1);
  }
  expect(seen).toBeGreaterThan(400);
});

const words = fc
  .array(fc.string({ unit: 'grapheme-ascii', minLength: 1, maxLength: 12 }), { minLength: 1, maxLength: 12 })
  .map((list) => list.map((word) => word.replace(/\s/g, '-')).join(' '));
const seed = { seed: 11, numRuns: 300 };

test('a fitted text is never wider than its room, and is left alone where it fits', () => {
  let shortened = 0;
  fc.assert(
    fc.property(words, fc.double({ min: 20, max: 300, noNaN: true }), fc.boolean(), (text, room, bold) => {
      const fitted = fitText(text, room, 10, bold);
      expect(measured(fitted, 10, bold)).toBeLessThanOrEqual(room + 0.1);
      if (measured(text, 10, bold) < room - 0.1) expect(fitted).toBe(text);
      if (fitted !== text) shortened++;
    }),
    seed,
  );
  expect(shortened).toBeGreaterThan(50);
});

test('wrapped lines fit their width and, where no word is cut, hold every word in order', () => {
  fc.assert(
    fc.property(words, fc.double({ min: 120, max: 300, noNaN: true }), (text, room) => {
      const lines = wrapText(text, room, 9);
      for (const line of lines) expect(measured(line, 9, false)).toBeLessThanOrEqual(room + 0.1);
      expect(lines.join(' ')).toBe(text);
    }),
    seed,
  );
});

test('the table is what its tool writes from the font', () => {
  expect(readFileSync(new URL('../../../packages/chart/src/svg/widths.ts', import.meta.url), 'utf8')).toBe(
    widthsFile(),
  );
});
