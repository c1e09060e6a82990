// SVG pages, as card and chart draw them, to one PDF: vector, with the letters it needs embedded, and tagged, so that it is
// read aloud in its order. Source: docs/sources.md#pdf.

import { alphaName, drawn, type Part } from './pdf-draw.js';
import {
  array,
  bytePairs,
  decimal,
  dictionary,
  type PdfObjects,
  pdfObjects,
  type Ref,
  textString,
  utf16,
} from './pdf-file.js';
import { type Face, lettersFor } from './pdf-letters.js';

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
  form: PdfForm,
): Promise<{ readonly content: Uint8Array; readonly unshown: readonly string[] }> {
  const sheet = {
    width: form.widthMm * POINTS_PER_MM,
    height: form.heightMm * POINTS_PER_MM,
    margin: (form.marginMm ?? 0) * POINTS_PER_MM,
    background: form.background,
  };
  const letters = await lettersFor(pages);
  const objects = pdfObjects();
  const [tree, whole, structure, resources] = [1, 2, 3, 4].map(objects.later) as [Ref, Ref, Ref, Ref];
  const alphas = new Set<string>();
  const sections: Ref[] = [];
  const partsOfPages: string[] = [];
  const leaves = pages.map((svg, number) => {
    const leaf = objects.later();
    const { content, cards, alphas: shares } = drawn(svg, sheet, letters);
    for (const share of shares) alphas.add(share);
    const parts: Ref[] = [];
    for (const card of cards) {
      const section = objects.later();
      const inside = card.map((part) => objects.add(partOf(part, section, leaf)));
      parts.push(...inside);
      sections.push(objects.fill(section, element('Sect', whole, { K: array(inside) })));
    }
    partsOfPages.push(`${number} ${array(parts)}`);
    const page = {
      Type: '/Page',
      Parent: tree,
      MediaBox: array([0, 0, decimal(sheet.width), decimal(sheet.height)]),
      Resources: resources,
      Contents: objects.stream(content),
      StructParents: number,
      Tabs: '/S',
    };
    return objects.fill(leaf, dictionary(page));
  });
  objects.fill(tree, dictionary({ Type: '/Pages', Count: leaves.length, Kids: array(leaves) }));
  objects.fill(whole, element('Document', structure, { K: array(sections) }));
  objects.fill(
    structure,
    dictionary({
      Type: '/StructTreeRoot',
      K: array([whole]),
      ParentTree: dictionary({ Nums: array(partsOfPages) }),
      ParentTreeNextKey: pages.length,
    }),
  );
  const faces = [letters.regular, letters.bold].filter(({ used }) => used.size > 0);
  objects.fill(
    resources,
    dictionary({
      Font: dictionary(Object.fromEntries(faces.map((face) => [face.font.name, fontIn(objects, face)]))),
      ExtGState: dictionary(
        Object.fromEntries(
          [...alphas].map((share) => [alphaName(share), dictionary({ ca: decimal(Number(share)) })]),
        ),
      ),
    }),
  );
  const root = objects.add(
    dictionary({
      Type: '/Catalog',
      Pages: tree,
      Lang: textString(form.language),
      MarkInfo: dictionary({ Marked: 'true' }),
      StructTreeRoot: structure,
      ViewerPreferences: dictionary({ DisplayDocTitle: 'true' }),
    }),
  );
  const info = objects.add(
    dictionary({
      Title: textString(form.title),
      Creator: textString('Evenfall'),
      CreationDate: textString(`D:${form.madeAt.toISOString().replace(/[-:T]|\..*/g, '')}Z`),
    }),
  );
  return { content: objects.file(root, info), unshown: [...letters.unshown] };
}

/** A node of the tree that a screen reader follows. */
function element(type: string, parent: Ref, entries: Readonly<Record<string, string | number>>): string {
  return dictionary({ Type: '/StructElem', S: `/${type}`, P: parent, ...entries });
}

function partOf({ tag, text, id }: Part, section: Ref, page: Ref): string {
  return element(tag, section, {
    Pg: page,
    K: id,
    [tag === 'Figure' ? 'Alt' : 'ActualText']: textString(text),
  });
}

/** Those glyphs of a face that were set, by their numbers in it. */
function fontIn(objects: PdfObjects, { font, used }: Face): Ref {
  const glyphs = [...used].sort(([a], [b]) => a - b);
  const name = `/EVENFL+${font.name}`; // six letters before it say that it is a part of the font
  const descriptor = objects.add(
    dictionary({
      Type: '/FontDescriptor',
      FontName: name,
      Flags: 4, // that it holds signs beyond those of a standard set
      FontBBox: array(font.box.map(decimal)),
      ItalicAngle: 0,
      Ascent: decimal(font.ascent),
      Descent: decimal(font.descent),
      CapHeight: decimal(font.ascent), // the font tells none of its own
      StemV: 0,
      FontFile2: objects.stream(font.subset(used.keys())),
    }),
  );
  const descendant = objects.add(
    dictionary({
      Type: '/Font',
      Subtype: '/CIDFontType2',
      BaseFont: name,
      CIDSystemInfo: '<</Registry (Adobe) /Ordering (Identity) /Supplement 0>>',
      FontDescriptor: descriptor,
      W: array(glyphs.map(([id]) => `${id} ${array([decimal(font.widthOf(id))])}`)),
      CIDToGIDMap: '/Identity',
    }),
  );
  return objects.add(
    dictionary({
      Type: '/Font',
      Subtype: '/Type0',
      BaseFont: name,
      Encoding: '/Identity-H',
      DescendantFonts: array([descendant]),
      ToUnicode: objects.stream(textOfGlyphs(glyphs)),
    }),
  );
}

/** What the glyphs stand for, for those who copy and search; a table of PDF names at most a hundred at once. */
function textOfGlyphs(glyphs: readonly (readonly [number, string])[]): string {
  const rows = glyphs.map(([id, text]) => `${bytePairs([id])} ${utf16(text)}`);
  const tables = Array.from({ length: Math.ceil(rows.length / 100) }, (_, i) =>
    rows.slice(100 * i, 100 * (i + 1)),
  );
  return [
    '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
    '/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def',
    '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
    '1 begincodespacerange <0000> <ffff> endcodespacerange',
    ...tables.flatMap((table) => [`${table.length} beginbfchar`, ...table, 'endbfchar']),
    'endcmap CMapName currentdict /CMap defineresource pop end end',
  ].join('\n');
}
