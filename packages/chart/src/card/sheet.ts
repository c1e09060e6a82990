// Pages of the card on sheets of paper: one a sheet, or four with the marks to cut them apart by.

import type { Ink } from '../svg/ink.js';
import { coordinate, element, escapeXml, svgRoot } from '../svg/svg.js';
import { type PageForm, sheetMm } from './paper.js';

interface Page {
  readonly title: string;
  readonly svg: string;
}

/** Every sheet as one SVG of the paper's size. */
export function sheets(pages: readonly Page[], form: PageForm, ink: Ink): string[] {
  const { paper, across } = form;
  const { widthMm, heightMm } = sheetMm(paper);
  const each = across * across;
  const width = form.width * across;
  const height = form.height * across;
  const frame = {
    width: `${coordinate(widthMm)}mm`,
    height: `${coordinate(heightMm)}mm`,
    viewBox: `0 0 ${width.toFixed(2)} ${height.toFixed(2)}`,
  };
  const sheetCount = Math.ceil(pages.length / each);
  return Array.from({ length: sheetCount }, (_, s) => {
    const here = pages.slice(s * each, (s + 1) * each);
    const title = element('title', {}, [escapeXml(here.map((page) => page.title).join('; '))]);
    if (each === 1) return svgRoot(frame, [title, here[0]!.svg]);
    const placed = here.map(({ svg }, i) => {
      const [x, y] = [(i % across) * form.width, Math.floor(i / across) * form.height];
      return element('g', { transform: `translate(${coordinate(x)} ${coordinate(y)})` }, [svg]);
    });
    const paperRect = element('rect', { width, height, fill: ink.paper });
    return svgRoot(frame, [title, paperRect, ...placed, cutMarks(width, height, ink)]);
  });
}

const MARK = 34; // points, 12 mm: the outer 4 mm of a sheet may not print
const CROSS = 11;

// Half-way along each edge, and a cross where the cuts meet. Pages leave more than a centimetre white there.
function cutMarks(width: number, height: number, { frame }: Ink): string {
  const [x, y] = [width / 2, height / 2];
  const mark = (x1: number, y1: number, x2: number, y2: number) =>
    element('line', { x1, y1, x2, y2, stroke: frame, 'stroke-width': 0.9 });
  return [
    mark(x, 0, x, MARK),
    mark(x, height - MARK, x, height),
    mark(0, y, MARK, y),
    mark(width - MARK, y, width, y),
    mark(x - CROSS, y, x + CROSS, y),
    mark(x, y - CROSS, x, y + CROSS),
  ].join('');
}
