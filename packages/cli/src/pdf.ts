// Card pages, SVG text, to one PDF: vector, with the letters it needs embedded.

import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import SVGtoPDF from 'svg-to-pdfkit';

/** A6 upright, 105 by 148 mm, in points of 1/72 inch. */
const WIDTH_PT = (105 / 25.4) * 72;
const HEIGHT_PT = (148 / 25.4) * 72;

/**
 * One page an SVG, each scaled to fill A6. The same pages and date give the same bytes.
 *
 * @param madeAt date the document bears
 * @throws Error where an SVG holds what PDF cannot show
 */
export function pdfOf(pages: readonly string[], title: string, madeAt: Date): Promise<Uint8Array> {
  const require = createRequire(import.meta.url);
  const doc = new PDFDocument({
    autoFirstPage: false,
    size: [WIDTH_PT, HEIGHT_PT],
    margin: 0,
    lang: 'en',
    displayTitle: true,
    info: { Title: title, Creator: 'Evenfall', CreationDate: madeAt },
  });
  doc.registerFont('regular', require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'));
  doc.registerFont('bold', require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'));

  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
    for (const page of pages) {
      doc.addPage();
      SVGtoPDF(doc, page, 0, 0, {
        width: WIDTH_PT,
        height: HEIGHT_PT,
        preserveAspectRatio: 'xMidYMid meet',
        fontCallback: (_family, bold) => (bold ? 'bold' : 'regular'),
        // A mark left out without a word would make a wrong card.
        warningCallback: (text) => reject(new Error(`card page cannot be drawn as PDF: ${text}`)),
      });
    }
    doc.end();
  });
}
