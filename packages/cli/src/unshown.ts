// Characters that a PDF cannot show, because the letters it embeds have none for them.

/** What a font of pdfkit knows of itself. */
interface WithFont {
  readonly _font: { readonly font: { hasGlyphForCodePoint(codePoint: number): boolean } };
}

/** Marks that change how others are joined, and spaces: nothing is drawn for them. */
const UNDRAWN = /^(?:[\p{Cf}\p{Cc}\p{Z}]|\p{Variation_Selector})$/u;

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Each once, in the order in which they stand on the pages. */
export function unshownIn(pages: readonly string[], doc: PDFKit.PDFDocument): string[] {
  const { font } = (doc.font('regular') as unknown as WithFont)._font;
  const texts = pages.flatMap((page) =>
    [...page.matchAll(/<text\b[^>]*>([\s\S]*?)<\/text>/g)].map(([, text]) => text!),
  );
  const characters = new Set(texts.flatMap((text) => [...plainText(text)]));
  return [...characters].filter(
    (character) => !UNDRAWN.test(character) && !font.hasGlyphForCodePoint(character.codePointAt(0)!),
  );
}

function plainText(markup: string): string {
  return markup
    .replaceAll(/<[^>]*>/g, '')
    .replaceAll(/&(?:#(\d+)|#x([0-9a-f]+)|(\w+));/gi, (whole, decimal, hex, name) => {
      if (name !== undefined) return NAMED[name] ?? whole;
      return String.fromCodePoint(decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal));
    });
}
