// What the letters that a PDF embeds cannot show. A stand-in is drawn there, never the empty box of a font.

import { escaped, unescaped } from './pdf-parts.js';

/** What a font of pdfkit knows of itself. */
interface WithFont {
  readonly _font: { readonly font: { hasGlyphForCodePoint(codePoint: number): boolean } };
}

/** Marks that change how others are joined, and spaces: nothing is drawn for them. */
const UNDRAWN = /^(?:[\p{Cf}\p{Cc}\p{Z}]|\p{Variation_Selector})$/u;

const STAND_IN = '?';

/** A page as its letters can show it, and the characters for which a stand-in is drawn, each once, in their order. */
export function withStandIns(page: string, doc: PDFKit.PDFDocument) {
  const has = {
    regular: glyphsOf(doc, 'regular'),
    bold: glyphsOf(doc, 'bold'),
  };
  const unshown = new Set<string>();
  const svg = page.replaceAll(/(<text\b[^>]*>)([^<]*)(?=<\/text>)/g, (_whole, open: string, text: string) => {
    const hasGlyph = open.includes('font-weight="bold"') ? has.bold : has.regular;
    // What is seen as one sign, as a flag of two letters, has one stand-in.
    const signs = [...new Intl.Segmenter().segment(unescaped(text))].map(({ segment }) => {
      const lacking = [...segment].filter((character) => !hasGlyph(character));
      const drawn = lacking.filter((character) => !UNDRAWN.test(character));
      for (const character of drawn) unshown.add(character);
      if (drawn.length > 0) return STAND_IN;
      return lacking.reduce((rest, each) => rest.replace(each, /\p{Z}/u.test(each) ? ' ' : ''), segment);
    });
    return open + escaped(signs.join(''));
  });
  return { svg, unshown: [...unshown] };
}

function glyphsOf(doc: PDFKit.PDFDocument, name: string): (character: string) => boolean {
  const { font } = (doc.font(name) as unknown as WithFont)._font;
  return (character) => font.hasGlyphForCodePoint(character.codePointAt(0)!);
}
