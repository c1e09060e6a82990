// The letters that a PDF is set in.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

export interface Letters {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** Scripts whose letters stand side by side as they are, their marks among the letters. */
const PLAIN = /^[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}]*$/u;

/** Tables of OpenType that say how letters join, turn into others and move closer. */
const JOINING = new Set(['GSUB', 'GPOS', 'GDEF', 'kern']);

/**
 * The letters for some pages. Where no script of theirs needs it the fonts come without their rules for joining letters:
 * those take half of the time of a card, and what they move closer is then not as wide as it was measured.
 */
export function lettersFor(pages: readonly string[]): Letters {
  const require = createRequire(import.meta.url);
  const plain = pages.every((page) => PLAIN.test(page));
  const read = (path: string) => {
    const font = readFileSync(path);
    return plain ? withoutJoining(font) : font;
  };
  return {
    regular: read(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf')),
    bold: read(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf')),
  };
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
