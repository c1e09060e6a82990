// Texts with letters written from the right, drawn run by run where they belong on the page.

import { hasRightToLeft, visualRuns } from './bidi.js';
import { unescaped } from './pdf-parts.js';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

type Placed = Readonly<Record<string, string>> & { readonly text: string };

// The only elements that matter here, as our own pictures write them: no text inside a text, one transform at most.
const PARTS =
  /<g transform="translate\(([-\d.]+) ([-\d.]+)\)">|<text((?: [a-z-]+="[^"]*")*)>([^<]*)<\/text>/g;

/**
 * Takes such texts out of a picture, or one part of it, that fills `box`, and has them drawn when the page is.
 *
 * @returns the picture without them, and what draws them on top of it
 */
export function withoutRightToLeft(svg: string, box: Box) {
  const placed: { readonly text: Placed; readonly dx: number; readonly dy: number }[] = [];
  let [dx, dy] = [0, 0];
  const rest = svg.replace(PARTS, (whole, x?: string, y?: string, attributes?: string, content?: string) => {
    if (x !== undefined) [dx, dy] = [Number(x), Number(y)];
    else if (content !== undefined && hasRightToLeft(content)) {
      const text = unescaped(content);
      const named = [...attributes!.matchAll(/ ([a-z-]+)="([^"]*)"/g)].map(([, key, value]) => [key, value]);
      placed.push({ text: { ...Object.fromEntries(named), text }, dx, dy });
      return '';
    }
    return whole;
  });
  const [, , width = 1, height = 1] = (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
  const scale = Math.min(box.width / width, box.height / height);
  const left = box.x + (box.width - scale * width) / 2;
  const top = box.y + (box.height - scale * height) / 2;
  return {
    rest,
    draw(doc: PDFKit.PDFDocument): void {
      for (const { text, dx, dy } of placed) {
        doc.save().transform(scale, 0, 0, scale, left + scale * dx, top + scale * dy);
        drawText(doc, text);
        doc.restore();
      }
    },
  };
}

function drawText(doc: PDFKit.PDFDocument, placed: Placed): void {
  const rightToLeft = placed.direction === 'rtl';
  doc
    .font(placed['font-weight'] === 'bold' ? 'bold' : 'regular')
    .fontSize(Number(placed['font-size']))
    .fillColor(placed.fill ?? '#000000');
  // Features, even none, make a run be shaped whole, spaces in their places.
  const options: PDFKit.Mixins.TextOptions = { lineBreak: false, baseline: 'alphabetic', features: [] };
  const runs = visualRuns(placed.text, rightToLeft).map((run) => {
    // The font turns letters of such a script round by itself, signs alone it leaves as they stand.
    const turned = run.rightToLeft && !hasRightToLeft(run.text);
    const text = turned ? [...run.text].reverse().join('') : run.text;
    return { text, width: doc.widthOfString(text, options) };
  });
  const width = runs.reduce((sum, run) => sum + run.width, 0);
  const anchor = placed['text-anchor'] ?? 'start';
  const share = anchor === 'middle' ? 0.5 : (anchor === 'end') === rightToLeft ? 0 : 1;
  let x = Number(placed.x) - share * width;
  for (const run of runs) {
    doc.text(run.text, x, Number(placed.y), options);
    x += run.width;
  }
}
