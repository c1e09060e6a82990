// SVG pages, as card and chart draw them, to one PDF: vector, with the letters it needs embedded, and tagged, so that it is
// read aloud in its order.

import PDFDocument from 'pdfkit';
import { drawPicture } from './pdf-draw.js';
import { lettersFor } from './pdf-letters.js';

const POINTS_PER_MM = 72 / 25.4;

export interface PdfForm {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marginMm?: number; // between the picture and every edge of the page
  readonly background?: string; // of the margin, #rrggbb
  readonly title: string;
  readonly language: string;
  readonly madeAt: Date; // date the document bears
}

/**
 * One page an SVG, each scaled to fill its page. The same pages and form give the same bytes. `unshown` are characters
 * that the letters at hand do not have: a question mark stands for each.
 *
 * @throws Error where an SVG holds what card and chart do not draw
 */
export async function pdfOf(
  pages: readonly string[],
  { widthMm, heightMm, marginMm = 0, background, title, language, madeAt }: PdfForm,
): Promise<{ readonly content: Uint8Array; readonly unshown: readonly string[] }> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    size: [widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM],
    margin: 0,
    lang: language,
    tagged: true,
    pdfVersion: '1.4', // the first in which a part has a text of its own to be read
    displayTitle: true,
    font: '', // none but ours: the standard ones would be read from disk
    info: { Title: title, Creator: 'Evenfall', CreationDate: madeAt },
  });
  const chunks: Uint8Array[] = [];
  doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise((resolve, reject) => doc.on('end', resolve).on('error', reject));
  const letters = lettersFor(doc, pages);
  const whole = doc.struct('Document');
  doc.addStructure(whole);
  for (const page of pages) {
    doc.addPage();
    for (const parts of drawPicture(page, doc, letters, { marginPt: marginMm * POINTS_PER_MM, background })) {
      whole.add(doc.struct('Sect', {}, parts));
    }
  }
  doc.end();
  await ended;
  return { content: Buffer.concat(chunks), unshown: [...letters.unshown] };
}
