// Advance widths read from the font file itself (cmap format 4 or 12, hmtx), so that boxes in these tests
// do not rest on the table under test. Tables as in the OpenType specification.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const resolve = createRequire(new URL('../../packages/cli/package.json', import.meta.url)).resolve;

/** Advance of a character in ems, or undefined where the font has no glyph for it. */
export type Advance = (char: string) => number | undefined;

export function fontAdvance(file: 'DejaVuSans' | 'DejaVuSans-Bold'): Advance {
  const font = readFileSync(resolve(`dejavu-fonts-ttf/ttf/${file}.ttf`));
  const tables = new Map<string, number>();
  for (let i = 0; i < font.readUInt16BE(4); i++) {
    const entry = 12 + 16 * i;
    tables.set(font.toString('latin1', entry, entry + 4), font.readUInt32BE(entry + 8));
  }
  const unitsPerEm = font.readUInt16BE(tables.get('head')! + 18);
  const metricCount = font.readUInt16BE(tables.get('hhea')! + 34);
  const hmtx = tables.get('hmtx')!;
  const glyphs = glyphTable(font, tables.get('cmap')!);
  return (char) => {
    const glyph = glyphs(char.codePointAt(0)!);
    if (glyph === 0) return undefined;
    return font.readUInt16BE(hmtx + 4 * Math.min(glyph, metricCount - 1)) / unitsPerEm;
  };
}

function glyphTable(font: Buffer, cmap: number): (code: number) => number {
  for (let i = 0; i < font.readUInt16BE(cmap + 2); i++) {
    const table = cmap + font.readUInt32BE(cmap + 8 + 8 * i);
    if (font.readUInt16BE(table) === 12) return (code) => groupGlyph(font, table, code);
  }
  throw new Error('the font has no cmap of format 12');
}

function groupGlyph(font: Buffer, table: number, code: number): number {
  for (let i = 0; i < font.readUInt32BE(table + 12); i++) {
    const group = table + 16 + 12 * i;
    const first = font.readUInt32BE(group);
    if (code >= first && code <= font.readUInt32BE(group + 4)) {
      return font.readUInt32BE(group + 8) + code - first;
    }
  }
  return 0;
}

const REGULAR = fontAdvance('DejaVuSans');
const BOLD = fontAdvance('DejaVuSans-Bold');

/** Width of a text as the font sets it without kerning; letters the font lacks count as one em. */
export function measured(text: string, size: number, bold: boolean): number {
  let ems = 0;
  for (const char of text) ems += (bold ? BOLD : REGULAR)(char) ?? 1;
  return ems * size;
}
