// Cards and charts as PDF, opened by others: page sizes, fonts, text in reading order, nothing cut off.

import { type Paper, wordsFor } from '@evenfall/chart';
import type { PlanMade } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { cardMakers } from '../../packages/cli/src/card-files.js';
import { planChartMakers } from '../../packages/cli/src/chart-files.js';
import type { PrintOptions } from '../../packages/cli/src/print-options.js';
import { madePlan } from '../chart/made-plan.js';
import { PDF_READERS, partsRead, rendered, structureText } from './pdf-readers.js';

async function cardPdf(plan: PlanMade, options: PrintOptions = {}): Promise<Uint8Array> {
  const [file] = await cardMakers(options)['.pdf']!(plan, 'card.pdf');
  return file!.content as Uint8Array;
}

async function chartPdf(plan: PlanMade, options: PrintOptions = {}): Promise<Uint8Array> {
  const [file] = await planChartMakers(options)['.pdf']!(plan, 'chart.pdf');
  return file!.content as Uint8Array;
}

const points = (mm: number) => (mm / 25.4) * 72;
const clock = (at: string) => at.slice(11, 19);

// ISO 216 and ANSI/ASME Y14.1. Source: docs/sources.md#paper.
const SIZES_MM: Readonly<Record<Paper, readonly [number, number]>> = {
  a6: [105, 148],
  a5: [148, 210],
  a4: [210, 297],
  letter: [215.9, 279.4],
};
const PAPERS: readonly Paper[] = ['a6', 'a5', 'a4', 'letter'];

const LONG = 'The long way round the harbour, past the "Lamp & Anchor", to the end of the mole '
  .repeat(2)
  .trim();
const TITLES = [
  'Harbour wall',
  `Quay "one" & 'two' <three>`,
  LONG,
  'ערב בנמל',
  'مساء الميناء',
  'Abend ערב (2) 18:30',
];

describe.each(PDF_READERS)('opened by $name', ({ open }) => {
  test.each(
    [5, 40, 200].flatMap((cues, i) =>
      PAPERS.map((paper, k) => ({ cues, paper, title: TITLES[(4 * i + k) % TITLES.length]! })),
    ),
  )('$cues cues on $paper: "$title"', async ({ cues, paper, title }) => {
    const plan = madePlan({ cues, title });
    const pdf = await open(await cardPdf(plan, { paper }));
    const [widthMm, heightMm] = SIZES_MM[paper];
    for (const page of pdf.pages) {
      expect(page.widthPt).toBeCloseTo(points(widthMm), 1);
      expect(page.heightPt).toBeCloseTo(points(heightMm), 1);
    }
    expect(pdf.title).toBe(title);
    expect(pdf.fonts.map(({ name }) => name.replace(/^[A-Z]{6}\+/, '')).sort()).toEqual([
      'DejaVuSans',
      'DejaVuSans-Bold',
    ]);
    expect(pdf.fonts.every(({ embedded }) => embedded)).toBe(true);
    // In the order of reading: each cue's clock, then its frame, then the next cue's.
    const text = pdf.pages.map((page) => page.text).join(' ');
    let from = text.indexOf('Page starts from');
    expect(from).toBeGreaterThan(0);
    for (const cue of plan.cues) {
      const at = text.indexOf(clock(cue.at), from);
      const frame = text.indexOf(`frame ${cue.frame + 1}`, at);
      expect(at, clock(cue.at)).toBeGreaterThan(from);
      expect(frame).toBeGreaterThan(at);
      from = frame;
    }
    expect(text.indexOf('When a cue was missed')).toBeGreaterThan(from);
  });

  test.each(['ערב בנמל', 'مساء الميناء', 'לילה'])('a title read from the right reads: %s', async (title) => {
    const { pages } = await open(await cardPdf(madePlan({ cues: 5, title })));
    expect(pages.length).toBeGreaterThan(2);
    // Joined letters come back as letters of their own (Unicode's compatibility forms).
    for (const { laidOut } of pages) expect(laidOut.normalize('NFKC')).toContain(title);
  });

  test('the same in German, on a clock of twelve hours', async () => {
    const plan = madePlan({ cues: 12 });
    const { pages } = await open(await cardPdf(plan, { language: 'de', clock: '12' }));
    const text = pages.map((page) => page.text).join(' ');
    const words = wordsFor({ language: 'de', clock: 12 });
    for (const cue of plan.cues) expect(text).toContain(words.clock(cue.at, true));
    expect(text).toContain('FILTERWECHSEL');
    expect(text).toContain('Einsatz verpasst?');
  });

  test.each(PAPERS)('a chart fills a sheet of %s laid across', async (paper) => {
    const { pages, fonts } = await open(await chartPdf(madePlan(), { paper }));
    const [widthMm, heightMm] = SIZES_MM[paper];
    expect(pages).toHaveLength(1);
    expect(pages[0]!.widthPt).toBeCloseTo(points(heightMm), 1);
    expect(pages[0]!.heightPt).toBeCloseTo(points(widthMm), 1);
    expect(fonts.every(({ embedded }) => embedded)).toBe(true);
    expect(pages[0]!.text).toContain('civil twilight');
  });
});

// Ink must keep 12 pt from the edges, and 12 pt from where a sheet is cut but for the cut marks.
test.each(PAPERS.flatMap((paper) => TITLES.slice(2, 4).map((title) => ({ paper, title }))))(
  'nothing is cut off: $paper "$title"',
  async ({ paper, title }) => {
    const dpi = 150;
    const edge = Math.floor((12 / 72) * dpi);
    const bytes = await cardPdf(madePlan({ cues: 30, title }), { paper });
    const pictures = rendered(bytes, dpi);
    const { pages } = await PDF_READERS[0]!.open(bytes);
    expect(pages.length).toBeGreaterThan(1);
    for (const { width, height, grey } of pictures) {
      const across = paper === 'a4' || paper === 'letter' ? 2 : 1;
      let ink = 0;
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          if (grey[y * width + x]! > 160) continue;
          ink++;
          const [cardWidth, cardHeight] = [width / across, height / across];
          const [inX, inY] = [x % cardWidth, y % cardHeight];
          const nearEdge =
            inX < edge || inY < edge || inX > cardWidth - edge - 1 || inY > cardHeight - edge - 1;
          const onCut = across === 2 && (Math.abs(x - width / 2) < 3 || Math.abs(y - height / 2) < 3);
          if (nearEdge && !onCut) throw new Error(`ink at ${x}, ${y} of ${width} by ${height}`);
        }
      }
      expect(ink).toBeGreaterThan(5000);
    }
  },
);

test('in the dark nearly all of a page is black', async () => {
  for (const bytes of [
    await cardPdf(madePlan({ cues: 5 }), { dark: true }),
    await chartPdf(madePlan(), { dark: true }),
  ]) {
    for (const { grey, width, height } of rendered(bytes, 50)) {
      expect(grey.filter((value) => value < 90).length).toBeGreaterThan(0.95 * width * height);
    }
    expect(Buffer.from(bytes).toString('latin1')).toMatch(/^%PDF-/);
  }
});

// Types of ISO 32000-1, 14.8.4. Source: docs/sources.md#tagged-pdf.
describe('a screen reader is told', () => {
  test.each(PAPERS)('each page as a section, and its cues in order: %s', async (paper) => {
    const plan = madePlan({ cues: 30, title: LONG });
    const bytes = await cardPdf(plan, { paper });
    const sections = await partsRead(bytes);
    const headings = sections.map(([first]) => first!);
    expect(headings.map(({ type }) => type)).toEqual(sections.map((_, i) => (i === 0 ? 'H1' : 'H2')));
    headings.forEach(({ text }, i) => {
      expect(text).toMatch(new RegExp(`^The long way .* page ${i + 1} of ${sections.length}$`));
    });
    const parts = sections.flat();
    expect(parts.filter(({ type, text }) => text === '' || !/^(?:H1|H2|P|Figure)$/.test(type))).toEqual([]);
    const cues = parts.filter(({ text }) => /^\d\d:\d\d:\d\d /.test(text));
    expect(cues.map(({ text }) => text.slice(0, 8))).toEqual(plan.cues.map(({ at }) => clock(at)));
    cues.forEach(({ type, text }, i) => {
      expect(type).toBe('P');
      expect(text).toContain(`frame ${plan.cues[i]!.frame + 1}`);
    });
    expect(parts.map(({ text }) => text)).toContain('focus to manual');
    // What is drawn is what is read, but for the spaces.
    const drawn = structureText(bytes) ?? [];
    const bare = (text: string) => text.replaceAll(/[\s·"]/g, '');
    for (const { type, text } of parts.filter((part) => drawn.length > 0 && part.type !== 'Figure')) {
      const at = drawn.findIndex(
        (line, i) => line.trim() === `${type} (block)` && bare(drawn[i + 1]!) === bare(text),
      );
      expect(at, text).toBeGreaterThanOrEqual(0);
      drawn.splice(0, at + 1);
    }
  });

  test('the chart as a picture that says what it shows, and the language of all', async () => {
    const bytes = await chartPdf(madePlan({ title: 'Harbour wall' }), { language: 'de' });
    const [parts, ...more] = await partsRead(bytes);
    expect(more).toEqual([]);
    expect(parts).toMatchObject([{ type: 'Figure' }]);
    expect(parts![0]!.text).toMatch(/^Harbour wall\. .*Einsätze/);
    expect(Buffer.from(bytes).toString('latin1')).toContain('/Lang (de)');
  });
});
