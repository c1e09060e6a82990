// A TrueType font: its glyphs, how wide they are, and the smaller font that holds some of them.
// Source: docs/sources.md#truetype.

export interface Font {
  readonly name: string;
  readonly file: Uint8Array;
  readonly ascent: number; // these three in thousandths of the type size, as all widths
  readonly descent: number; // below 0
  readonly box: readonly number[]; // that every glyph lies in: left, bottom, right, top
  /** Number of a character's glyph; 0 where there is none. */
  readonly glyphOf: (character: string) => number;
  readonly widthOf: (glyph: number) => number;
  /** A font of these glyphs alone, which keep their numbers. */
  readonly subset: (glyphs: Iterable<number>) => Uint8Array;
}

/** @throws Error where the file has no table of all characters, as every font with more than 65,536 of them has */
export function fontOf(name: string, file: Buffer): Font {
  const tables = new Map(
    Array.from({ length: file.readUInt16BE(4) }, (_, i) => {
      const [at, length] = [file.readUInt32BE(20 + 16 * i), file.readUInt32BE(24 + 16 * i)];
      return [file.toString('latin1', 12 + 16 * i, 16 + 16 * i), file.subarray(at, at + length)] as const;
    }),
  );
  const table = (tag: string): Buffer => {
    const found = tables.get(tag);
    if (found === undefined) throw new Error(`font ${name} has no table "${tag}"`);
    return found;
  };
  const [head, hhea, hmtx, loca, glyf] = ['head', 'hhea', 'hmtx', 'loca', 'glyf'].map(table) as [
    Buffer,
    Buffer,
    Buffer,
    Buffer,
    Buffer,
  ];
  const scaled = (units: number) => (1000 * units) / head.readUInt16BE(18);
  const glyphBy = glyphsBy(table('cmap'), name);
  const glyphs = new Map<string, number>();
  const widths = new Map<number, number>();
  const metrics = hhea.readUInt16BE(34);
  const startOf = (glyph: number) =>
    head.readInt16BE(50) === 1 ? loca.readUInt32BE(4 * glyph) : 2 * loca.readUInt16BE(2 * glyph);
  const outlineOf = (glyph: number) => glyf.subarray(startOf(glyph), startOf(glyph + 1));
  // The last glyphs share the width of the one before them.
  const advanceOf = (glyph: number) => hmtx.readUInt16BE(4 * Math.min(glyph, metrics - 1));
  const bearingOf = (glyph: number) =>
    hmtx.readInt16BE(glyph < metrics ? 4 * glyph + 2 : 4 * metrics + 2 * (glyph - metrics));

  return {
    name,
    file,
    ascent: scaled(hhea.readInt16BE(4)),
    descent: scaled(hhea.readInt16BE(6)),
    box: [36, 38, 40, 42].map((at) => scaled(head.readInt16BE(at))),
    glyphOf(character) {
      const glyph = glyphs.get(character) ?? glyphBy(character.codePointAt(0)!);
      glyphs.set(character, glyph);
      return glyph;
    },
    widthOf(glyph) {
      const width = widths.get(glyph) ?? scaled(advanceOf(glyph));
      widths.set(glyph, width);
      return width;
    },
    subset(asked) {
      const kept = new Set([0, ...asked]);
      // Parts join the set while it is walked, and are walked too.
      for (const glyph of kept) for (const part of partsOf(outlineOf(glyph))) kept.add(part);
      const count = Math.max(...kept) + 1;
      const metricsOfPart = Buffer.alloc(4 * count);
      const starts = Buffer.alloc(4 * (count + 1));
      const outlines: Buffer[] = [];
      const end = Buffer.alloc(4);
      for (const glyph of [...kept].sort((a, b) => a - b)) {
        const outline = outlineOf(glyph);
        outlines.push(outline);
        metricsOfPart.writeUInt16BE(advanceOf(glyph), 4 * glyph);
        metricsOfPart.writeInt16BE(bearingOf(glyph), 4 * glyph + 2);
        // Whatever follows is empty until the next that is kept.
        end.writeUInt32BE(end.readUInt32BE() + outline.length);
        starts.fill(end, 4 * (glyph + 1));
      }
      return fontFile({
        'cvt ': table('cvt '),
        fpgm: table('fpgm'),
        glyf: Buffer.concat(outlines),
        head: changed(head, 50, 1),
        hhea: changed(hhea, 34, count),
        hmtx: metricsOfPart,
        loca: starts,
        maxp: changed(table('maxp'), 4, count),
        prep: table('prep'),
      });
    },
  };
}

/** The glyph of a code point, or 0. Subtable format 12: runs of characters whose glyphs follow each other, in order. */
function glyphsBy(cmap: Buffer, name: string): (code: number) => number {
  const tables = Array.from({ length: cmap.readUInt16BE(2) }, (_, i) => cmap.readUInt32BE(8 + 8 * i));
  const at = tables.find((start) => cmap.readUInt16BE(start) === 12);
  if (at === undefined) throw new Error(`font ${name} has no table of all its characters`);
  const count = cmap.readUInt32BE(at + 12);
  const field = (run: number, offset: number) => cmap.readUInt32BE(at + 16 + 12 * run + offset);
  return (code) => {
    let [low, high] = [0, count];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (field(middle, 4) < code) low = middle + 1;
      else high = middle;
    }
    if (low === count || code < field(low, 0)) return 0;
    return field(low, 8) + code - field(low, 0);
  };
}

/** Glyphs that a glyph is put together from, as "é" is. */
function partsOf(outline: Buffer): number[] {
  if (outline.length === 0 || outline.readInt16BE(0) >= 0) return [];
  const parts: number[] = [];
  for (let at = 10, more = true; more; ) {
    const flags = outline.readUInt16BE(at);
    parts.push(outline.readUInt16BE(at + 2));
    const places = flags & 0x1 ? 4 : 2;
    const scales = flags & 0x8 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0;
    at += 4 + places + scales;
    more = (flags & 0x20) !== 0;
  }
  return parts;
}

function changed(table: Buffer, at: number, value: number): Buffer {
  const copy = Buffer.from(table);
  copy.writeUInt16BE(value, at);
  return copy;
}

/** A font file of these tables, named in their order. No reader of a PDF asks for its checksums. */
function fontFile(tables: Readonly<Record<string, Buffer>>): Uint8Array {
  const entries = Object.entries(tables);
  const power = Math.floor(Math.log2(entries.length));
  const head = Buffer.alloc(12 + 16 * entries.length);
  head.writeUInt32BE(0x10000, 0);
  head.writeUInt16BE(entries.length, 4);
  head.writeUInt16BE(16 * 2 ** power, 6);
  head.writeUInt16BE(power, 8);
  head.writeUInt16BE(16 * (entries.length - 2 ** power), 10);
  const chunks: Uint8Array[] = [head];
  let at = head.length;
  entries.forEach(([tag, table], i) => {
    const entry = 12 + 16 * i;
    head.write(tag, entry, 'latin1');
    head.writeUInt32BE(at, entry + 8);
    head.writeUInt32BE(table.length, entry + 12);
    const padding = Buffer.alloc(-table.length & 3);
    chunks.push(table, padding);
    at += table.length + padding.length;
  });
  return Buffer.concat(chunks);
}
