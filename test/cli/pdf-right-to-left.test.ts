// Where the runs of a mixed line are set on the page.

import { expect, test, vi } from 'vitest';
import { documentOf } from '../../packages/cli/src/pdf.js';
import { lettersFor } from '../../packages/cli/src/pdf-letters.js';
import { withoutRightToLeft } from '../../packages/cli/src/pdf-right-to-left.js';

const BOX = { x: 10, y: 20, width: 200, height: 100 };

/** Runs as they are set, with the left end and the width of each, in the picture's own units. */
function setOn(svg: string) {
  const form = { widthMm: 90, heightMm: 60, title: '', language: 'en', madeAt: new Date(0) };
  const doc = documentOf(form, lettersFor([svg]));
  doc.addPage();
  const transforms = vi.spyOn(doc, 'transform');
  const text = vi.spyOn(doc, 'text');
  const { rest, draw } = withoutRightToLeft(svg, BOX);
  draw(doc);
  const runs = text.mock.calls.map(([run, x]) => {
    const width = doc.widthOfString(String(run), { features: [] });
    return { run: String(run), left: Number(x), right: Number(x) + width };
  });
  return { rest, runs, transforms: transforms.mock.calls };
}

const picture = (attributes: string, text: string) =>
  `<svg viewBox="0 0 100 50"><text x="50" y="9" font-size="10"${attributes}>${text}</text><text x="1" y="2" font-size="9">left alone</text></svg>`;

test('in a line that reads from the right, words of another script stand at its left', () => {
  const [first, second] = setOn(picture(' direction="rtl"', 'ערב Quay')).runs;
  expect([first!.run, second!.run.trim()]).toEqual(['Quay', 'ערב']);
  expect(second!.left).toBeCloseTo(first!.right, 6);
  // Its start is its right end.
  expect(second!.right).toBeCloseTo(50, 6);
});

test('in a line that reads from the left they stand in the order of reading', () => {
  const [first, second] = setOn(picture('', 'Quay ערב')).runs;
  expect([first!.run.trim(), second!.run]).toEqual(['Quay', 'ערב']);
  expect(first!.left).toBeCloseTo(50, 6);
});

test.each([
  [' direction="rtl" text-anchor="end"', 0],
  [' direction="rtl" text-anchor="middle"', 0.5],
  [' direction="rtl"', 1],
])('anchored as asked: %s', (attributes, share) => {
  const { runs } = setOn(picture(attributes, 'ערב &amp; לילה'));
  const [left, right] = [runs[0]!.left, runs.at(-1)!.right];
  expect(left + share * (right - left)).toBeCloseTo(50, 6);
  expect(runs.map(({ run }) => run).join('')).toContain('&');
});

test('pages on a sheet keep their places, and all other text stays in the picture', () => {
  const page = (x: number) =>
    `<g transform="translate(${x} 0)"><text x="5" y="9" font-size="10" direction="rtl">ערב</text></g>`;
  const { rest, transforms } = setOn(`<svg viewBox="0 0 100 50">${page(0)}${page(50)}</svg>`);
  // Two units on paper for one of the picture, from the box's corner.
  expect(transforms.map(([scale, , , , x, y]) => [scale, x, y]).filter(([scale]) => scale === 2)).toEqual([
    [2, 10, 20],
    [2, 110, 20],
  ]);
  expect(rest).not.toContain('ערב');
  expect(setOn(picture(' direction="rtl"', 'ערב')).rest).toContain('left alone');
});
