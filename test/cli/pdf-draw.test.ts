// Marks of a picture as they come out on a page, and what is refused.

import { describe, expect, test } from 'vitest';
import { pdfOf } from '../../packages/cli/src/pdf.js';
import { PDF_READERS, partsRead, rendered } from './pdf-readers.js';

// A hundred units to a hundred points.
const SIDE_MM = (100 / 72) * 25.4;
const FORM = { widthMm: SIDE_MM, heightMm: SIDE_MM, title: '', language: 'en', madeAt: new Date(0) };
const svg = (...marks: readonly string[]) => `<svg viewBox="0 0 100 100">${marks.join('')}</svg>`;

async function made(
  page: string,
  form: Partial<typeof FORM & { marginMm: number; background: string }> = {},
) {
  return (await pdfOf([page], { ...FORM, ...form })).content;
}

/** Greys at a picture's points, 255 white: the middle of each unit, at four dots a unit. */
async function greys(page: string, points: readonly (readonly [number, number])[], form = {}) {
  const [picture] = rendered(await made(page, form), 288);
  return (
    picture &&
    points.map(([x, y]) => picture.grey[Math.round(4 * y + 2) * picture.width + Math.round(4 * x + 2)])
  );
}

const HALF = '<path d="M0,0L100,0L100,100L0,100Z" fill="#000000" fill-opacity="0.6"/>';

describe('is drawn', () => {
  test.each<[string, string, readonly (readonly [number, number])[], readonly number[]]>([
    [
      'a rectangle, from the corner where nothing is said',
      '<rect width="20" height="10"/>',
      [
        [0, 0],
        [18, 8],
        [22, 8],
        [18, 12],
      ],
      [0, 0, 255, 255],
    ],
    [
      'a frame, which leaves its inside',
      '<rect x="10" y="10" width="40" height="40" fill="none" stroke="#000000" stroke-width="4"/>',
      [
        [10, 30],
        [30, 30],
        [50, 20],
      ],
      [0, 255, 0],
    ],
    [
      'both, the line on top',
      '<rect x="10" y="10" width="40" height="40" fill="#ffffff" stroke="#000000" stroke-width="4"/>',
      [
        [9, 30],
        [11, 30],
        [30, 30],
      ],
      [0, 0, 255],
    ],
    [
      'a line, which fills nothing',
      '<line x1="10" y1="20.5" x2="90" y2="20.5" stroke="#000000" stroke-width="2"/>',
      [
        [9, 20],
        [11, 20],
        [88, 20],
        [92, 20],
      ],
      [255, 0, 0, 255],
    ],
    [
      'dashes',
      '<line x1="0" y1="20.5" x2="90" y2="20.5" stroke="#000000" stroke-width="2" stroke-dasharray="10 20"/>',
      [
        [5, 20],
        [15, 20],
        [25, 20],
        [35, 20],
      ],
      [0, 255, 255, 0],
    ],
    [
      'no dashes after them',
      '<line x1="0" y1="5" x2="9" y2="5" stroke="#000000" stroke-dasharray="1 2"/><line x1="0" y1="20.5" x2="90" y2="20.5" stroke="#000000" stroke-width="2"/>',
      [
        [5, 20],
        [15, 20],
        [25, 20],
      ],
      [0, 0, 0],
    ],
    [
      'a circle, round',
      '<circle cx="50" cy="50" r="30" fill="#000"/>',
      [
        [21, 50],
        [78, 50],
        [50, 21],
        [50, 78],
        [70, 70],
        [72, 72],
        [18, 50],
      ],
      [0, 0, 0, 0, 0, 255, 255],
    ],
    [
      'a path of corners',
      '<path d="M10,10L90,10L10,90Z" fill="#000000"/>',
      [
        [12, 12],
        [80, 12],
        [60, 60],
      ],
      [0, 0, 255],
    ],
    ['colours that let what is under them through', HALF, [[50, 50]], [102]],
    [
      'letters that do not, after them',
      `${HALF}<text x="0" y="90" font-size="120" fill="#000000">█</text>`,
      [[30, 50]],
      [0],
    ],
    [
      'cards where they are placed, in inks of their own',
      '<rect x="90" width="1" height="1" fill="#ffffff"/><g transform="translate(50 20)"><rect width="10" height="10" fill="#ffffff"/><rect y="20" width="10" height="10" fill="#000000"/></g><rect width="10" height="10" fill="#000000"/><g transform="translate(0 60)"><rect width="10" height="10" fill="#000000"/></g>',
      [
        [55, 25],
        [55, 45],
        [5, 5],
        [5, 65],
        [55, 65],
      ],
      [255, 0, 0, 0, 255],
    ],
    [
      'a sharp corner cut off',
      '<path d="M10,50L60,41.5L60,58.5Z" fill="none" stroke="#000000" stroke-width="8"/>',
      [
        [3, 50],
        [58, 42],
      ],
      [255, 0],
    ],
  ])('%s', async (_name, marks, points, expected) => {
    const found = await greys(svg(marks), points);
    if (found !== undefined) expect(found).toEqual(expected);
  });

  test('in the middle of the page, on its background', async () => {
    const black = '<svg viewBox="0 0 100 50"><rect width="100" height="50" fill="#000000"/></svg>';
    const form = { marginMm: SIDE_MM / 10, background: '#808080' };
    const found = await greys(
      black,
      [
        [5, 50],
        [12, 50],
        [88, 50],
        [95, 50],
        [50, 28],
        [50, 32],
        [50, 68],
        [50, 72],
      ],
      form,
    );
    if (found !== undefined) expect(found).toEqual([128, 0, 0, 128, 128, 0, 0, 128]);
  });

  test.each([
    ['', '', [50, 100]],
    [' text-anchor="end"', '', [0, 50]],
    [' text-anchor="middle"', '', [25, 75]],
    [' direction="rtl"', 'ערב', [0, 50]],
    [' direction="rtl" text-anchor="end"', 'ערב', [50, 100]],
  ])('text anchored as asked: %s %s', async (anchor, text, [from, to]) => {
    const page = svg(`<text x="50" y="60" font-size="10"${anchor} fill="#000000">${text || 'HHH'}</text>`);
    const [picture] = rendered(await made(page), 72);
    if (picture === undefined) return;
    const dark = [...picture.grey.keys()].filter((i) => picture.grey[i]! < 128).map((i) => i % picture.width);
    expect(Math.min(...dark)).toBeGreaterThanOrEqual(from! - 1);
    expect(Math.max(...dark)).toBeLessThanOrEqual(to! + 1);
    expect(Math.max(...dark) - Math.min(...dark)).toBeGreaterThan(10);
  });
});

// A mark left out without a word would make a wrong card.
test.each([
  '<ellipse cx="1" cy="1" rx="1" ry="2"/>',
  '<rect width="1" height="1" opacity="0.5"/>',
  '<rect width="1" height="1" style="fill: red"/>',
  '<rect width="1" height="1" fill="red"/>',
  '<rect width="1" height="1" fill="#12345g"/>',
  '<rect width="1"/>',
  '<rect width="NaN" height="1"/>',
  '<rect width="1" height=""/>',
  '<rect width="1" height="1">text</rect>',
  '<rect width="1" height="1"><title>about</title></rect>',
  '<path d="M0,0C1,1,2,2,3,3" fill="#000000"/>',
  '<path d="M0,0l1,1" fill="#000000"/>',
  '<line x1="0" y1="0" x2="1" y2="1" stroke="#000000" stroke-dasharray="4 x"/>',
  '<line x1="0" y1="0" x2="1" y2="1" stroke="#000000" stroke-linejoin="bevel"/>',
  '<line x1="0" y1="0" x2="1" y2="1" stroke="#000000" stroke-linecap="round"/>',
  '<text x="1" y="1" font-size="9" font-weight="600">a</text>',
  '<text x="1" y="1" font-size="9" text-anchor="left">a</text>',
  '<text x="1" y="1" font-size="9" direction="up">a</text>',
  '<text x="1" y="1" font-size="9">a<tspan>b</tspan></text>',
  '<text x="1" y="" font-size="9">a</text>',
  '<g transform="rotate(90)"></g>',
  '<g role="list"></g>',
  '<g role="paragraph"><g role="paragraph"></g></g>',
  '<g role="paragraph">',
  'text',
  '<!-- a comment -->',
])('refused: %s', async (mark) => {
  await expect(made(svg(mark))).rejects.toThrow('page cannot be drawn as PDF: ');
});

test.each([
  '',
  'text',
  '<svg viewBox="0 0 1 1"></svg><svg viewBox="0 0 1 1"></svg>',
  '<svg></svg>',
  '<svg viewBox="5 0 9 9"></svg>',
])('refused: "%s" for a picture', async (page) => {
  await expect(made(page)).rejects.toThrow('page cannot be drawn as PDF: ');
});

test('the same picture gives the same bytes; another another', async () => {
  const page = (text: string) => svg(`<text x="1" y="20" font-size="9">${text}</text>`);
  expect(await made(page('Quay'))).toEqual(await made(page('Quay')));
  expect(await made(page('Quay'))).not.toEqual(await made(page('Quai')));
});

describe.each(PDF_READERS)('opened by $name', ({ open }) => {
  test.each(['(a) b\\', ') (', 'Größe', '港 🌅'])('a title is what it was: %s', async (title) => {
    expect((await open(await made(svg(HALF), { title }))).title).toBe(title);
  });
});

test('what is read has its own signs, and the dot of a list is not read', async () => {
  const text = (content: string, x: number) => `<text x="${x}" y="20" font-size="9">${content}</text>`;
  const page = svg(
    '<title>sheet</title>',
    `<g role="heading" aria-level="1">${text('A &amp; &lt;B&gt;', 1)}${text('&quot;&#39;', 50)}</g>`,
    text('not read', 1),
    `<g role="paragraph">${text('·', 1)}${text('one', 9)}</g>`,
    `<g role="img" aria-label="one &amp; all"><rect width="1" height="1"/></g>`,
  );
  expect(await partsRead(await made(page))).toEqual([
    [
      { type: 'H1', text: 'A & <B> "\'' },
      { type: 'P', text: 'one' },
      { type: 'Figure', text: 'one & all' },
    ],
  ]);
});
