// Writes the table by which chart and card know how wide a text will be, from the font itself.
//
//   node packages/tools/text-widths.mjs

import { writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { openSync } from 'fontkit';
import { root } from './ready.mjs';

const FILE = `${root}/packages/chart/src/svg/widths.ts`;

/** @type {(from: number, to: number) => string[]} */
const range = (from, to) => Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i));

/** Letters of the scripts that people title their shoots in, and the signs of chart and card. */
const CHARS = [
  ...range(0x20, 0x7e),
  ...range(0xa1, 0x17f), // Latin
  ...range(0x370, 0x3ff), // Greek
  ...range(0x400, 0x45f), // Cyrillic
  ...'–—‘’“”…→←−≤≥≈½⅓⅔¼¾′″',
];

/** The file's text. */
export function widthsFile() {
  return `// Advance widths of DejaVu Sans in thousandths of the type size: the characters of each width. Written by
// packages/tools/text-widths.mjs from the font itself; a letter with an accent that is as wide without it is left out.
// Source: docs/sources.md#dejavu.

export const REGULAR = ${table('DejaVuSans')};

export const BOLD = ${table('DejaVuSans-Bold')};
`;
}

/** @param {string} name */
function table(name) {
  const font = openSync(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
  const widthOf = (/** @type {string} */ char) => {
    const code = /** @type {number} */ (char.codePointAt(0));
    if (!font.hasGlyphForCodePoint(code)) return undefined;
    return Math.round((1000 * font.glyphForCodePoint(code).advanceWidth) / font.unitsPerEm);
  };
  /** @type {Map<number, string>} */
  const groups = new Map();
  for (const char of CHARS) {
    const width = widthOf(char);
    if (width === undefined) continue;
    const [bare = char] = char.normalize('NFD');
    if (bare !== char && widthOf(bare) === width) continue;
    groups.set(width, (groups.get(width) ?? '') + char);
  }
  const lines = [...groups]
    .sort(([a], [b]) => a - b)
    .map(
      ([width, chars]) =>
        `  ${width}: ${chars.includes("'") ? JSON.stringify(chars) : `'${chars.replaceAll('\\', '\\\\')}'`},`,
    );
  return `{\n${lines.join('\n')}\n}`;
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(FILE, widthsFile());
  console.log('wrote packages/chart/src/svg/widths.ts');
}
