// The letters that a PDF is set in.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { hasRightToLeft, visualRuns } from './bidi.js';
import { withStandIns } from './unshown.js';

/** A line of text to be set, at the point where it is anchored. */
export interface Line {
  readonly text: string;
  readonly x: number;
  readonly y: number; // of its baseline
  readonly size: number;
  readonly bold: boolean;
  readonly anchor: string; // start, middle or end, in the direction of reading
  readonly rightToLeft: boolean;
}

export interface Letters {
  /** Characters that there is no letter for, in the order in which they came. */
  readonly unshown: ReadonlySet<string>;
  /** Sets a line in the colour that is in force. */
  readonly set: (line: Line) => void;
}

/** What a font of pdfkit knows of itself. */
interface WithFont {
  readonly _font: { readonly font: { hasGlyphForCodePoint(codePoint: number): boolean } };
}

/** Scripts whose letters stand side by side as they are, their marks among the letters. */
const PLAIN = /^[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}]*$/u;

const isPlain = (text: string) => PLAIN.test(text) && !/\p{Bidi_Control}/u.test(text);

/** Tables of OpenType that say how letters join, turn into others and move closer. */
const JOINING = new Set(['GSUB', 'GPOS', 'GDEF', 'kern']);

/**
 * The letters of a document. Texts that need no rules for joining letters are set without them: what they move closer is not as
 * wide as it was measured, and they take half of the time of a card.
 */
export function lettersFor(doc: PDFKit.PDFDocument, pages: readonly string[]): Letters {
  const require = createRequire(import.meta.url);
  const allPlain = pages.every(isPlain);
  for (const [name, path] of [
    ['regular', require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf')],
    ['bold', require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf')],
  ] as const) {
    const file = readFileSync(path);
    if (!allPlain) doc.registerFont(`${name} joining`, Buffer.from(file) as Buffer);
    doc.registerFont(name, withoutJoining(file));
  }
  const unshown = new Set<string>();
  const hasGlyph = (character: string) =>
    (doc as unknown as WithFont)._font.font.hasGlyphForCodePoint(character.codePointAt(0)!);
  return {
    unshown,
    set({ text, x, y, size, bold, anchor, rightToLeft }) {
      const plain = isPlain(text);
      doc.font(`${bold ? 'bold' : 'regular'}${plain ? '' : ' joining'}`, size);
      const shown = withStandIns(text, hasGlyph, unshown);
      // Features, even none, make a run be shaped whole, spaces in their places.
      const options = {
        lineBreak: false,
        baseline: 'alphabetic',
        ...(plain ? {} : { features: [] }),
      } as const;
      const runs = plain ? [shown] : runsOf(shown, rightToLeft);
      // Of a line from the right, its start is its right end.
      const share = anchor === 'middle' ? 0.5 : (anchor === 'end') === rightToLeft ? 0 : 1;
      const widths =
        share === 0 && runs.length === 1 ? [0] : runs.map((run) => doc.widthOfString(run, options));
      let left = x - share * widths.reduce((sum, width) => sum + width, 0);
      runs.forEach((run, i) => {
        doc.text(run, left, y, options);
        left += widths[i]!;
      });
    },
  };
}

/** The runs of one direction, as they stand from left to right. */
function runsOf(text: string, rightToLeft: boolean): string[] {
  if (!hasRightToLeft(text)) return [text];
  return visualRuns(text, rightToLeft).map((run) => {
    // The font turns letters of such a script round by itself, signs alone it leaves as they stand.
    const turned = run.rightToLeft && !hasRightToLeft(run.text);
    return turned ? [...run.text].reverse().join('') : run.text;
  });
}

/** A font whose joining tables nobody finds. Its table directory: OpenType 1.9, "Organization of an OpenType Font". */
function withoutJoining(font: Buffer): Buffer {
  const count = font.readUInt16BE(4);
  for (let i = 0; i < count; i++) {
    const at = 12 + 16 * i;
    if (JOINING.has(font.toString('latin1', at, at + 4))) font.write('none', at, 'latin1');
  }
  return font;
}
