// SVG pages, as card and chart draw them, to one PDF: vector, with the letters it needs embedded, and tagged, so that it is
// read aloud in its order.

import PDFDocument from 'pdfkit';
import SVGtoPDF from 'svg-to-pdfkit';
import { type Letters, lettersFor } from './pdf-letters.js';
import { cardsOf } from './pdf-parts.js';
import { withoutRightToLeft } from './pdf-right-to-left.js';
import { withStandIns } from './unshown.js';

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

/** An empty document with its letters at hand, as "regular" and "bold". */
export function documentOf(
  { widthMm, heightMm, title, language, madeAt }: PdfForm,
  { regular, bold }: Letters,
): PDFKit.PDFDocument {
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
  doc.registerFont('regular', regular as Buffer);
  doc.registerFont('bold', bold as Buffer);
  return doc;
}

/**
 * One page an SVG, each scaled to fill its page. The same pages and form give the same bytes. `unshown` are characters
 * that the letters at hand do not have: a question mark stands for each.
 *
 * @throws Error where an SVG holds what PDF cannot show
 */
export function pdfOf(
  pages: readonly string[],
  form: PdfForm,
): Promise<{ readonly content: Uint8Array; readonly unshown: readonly string[] }> {
  const [width, height] = [form.widthMm * POINTS_PER_MM, form.heightMm * POINTS_PER_MM];
  const margin = (form.marginMm ?? 0) * POINTS_PER_MM;
  const { background } = form;
  const letters = lettersFor(pages);
  const doc = documentOf(form, letters);
  const unused = documentOf(form, letters); // nothing is drawn on it
  const unshown = new Set<string>();
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve({ content: Buffer.concat(chunks), unshown: [...unshown] }));
    doc.on('error', reject);
    const whole = doc.struct('Document');
    doc.addStructure(whole);
    for (const page of pages) {
      doc.addPage();
      if (background !== undefined) {
        doc.markContent('Artifact').rect(0, 0, width, height).fill(background).endMarkedContent();
      }
      for (const card of cardsOf(page)) {
        const parts: PDFKit.PDFStructureElement[] = [];
        for (const { read, svg } of card) {
          if (read === undefined) doc.markContent('Artifact');
          else {
            const { tag, text } = read;
            const content = doc.markStructureContent(tag);
            parts.push(doc.struct(tag, tag === 'Figure' ? { alt: text } : { actual: text }, [content]));
          }
          draw(svg);
          doc.endMarkedContent();
        }
        if (parts.length > 0) whole.add(doc.struct('Sect', {}, parts));
      }
    }
    doc.end();

    function draw(svg: string): void {
      const box = { x: margin, y: margin, width: width - 2 * margin, height: height - 2 * margin };
      const shown = withStandIns(svg, unused);
      for (const character of shown.unshown) unshown.add(character);
      // The library would set what reads from the right in the wrong order.
      const { rest, draw: drawRest } = withoutRightToLeft(shown.svg, box);
      SVGtoPDF(doc, rest, box.x, box.y, {
        width: box.width,
        height: box.height,
        preserveAspectRatio: 'xMidYMid meet',
        fontCallback: (_family, bold) => (bold ? 'bold' : 'regular'),
        // A mark left out without a word would make a wrong card.
        warningCallback: (text) => reject(new Error(`page cannot be drawn as PDF: ${text}`)),
      });
      drawRest(doc);
    }
  });
}
