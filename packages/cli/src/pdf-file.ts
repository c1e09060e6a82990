// A PDF as a file: numbered objects, and the table that says where each begins. Source: docs/sources.md#pdf.

import { deflateSync } from 'node:zlib';

/** How an object is named by others: "12 0 R". */
export type Ref = string;

/** A value as PDF writes it. */
type Value = string | number;

export function dictionary(entries: Readonly<Record<string, Value>>): string {
  return `<<${Object.entries(entries)
    .map(([key, value]) => `/${key} ${value}`)
    .join('\n')}>>`;
}

export const array = (values: readonly Value[]): string => `[${values.join(' ')}]`;

/** A number as PDF writes it, without an exponent: a thousandth of a point is far below what any printer resolves. */
export function decimal(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number in a PDF must be finite, got ${value}`);
  return String(Math.round(1000 * value) / 1000 + 0);
}

/** Numbers of two bytes, as a string of bytes. */
export const bytePairs = (values: readonly number[]): string =>
  `<${values.map((value) => value.toString(16).padStart(4, '0')).join('')}>`;

/** Text in UTF-16. */
export const utf16 = (text: string): string =>
  bytePairs(Array.from({ length: text.length }, (_, i) => text.charCodeAt(i)));

/** Text that is read, not drawn, in any script. */
export function textString(text: string): string {
  // Where PDF's own signs of one byte are those of Latin 1.
  if (/^[\x20-\x7e\xa1-\xac\xae-\xff]*$/.test(text)) return `(${text.replace(/[\\()]/g, '\\$&')})`;
  return utf16(`\ufeff${text}`);
}

/** The objects of one file. */
export function pdfObjects() {
  const objects: Buffer[] = [];
  const numberOf = (ref: Ref) => Number.parseInt(ref, 10);
  const later = (): Ref => `${objects.push(Buffer.alloc(0))} 0 R`;
  const fill = (ref: Ref, ...body: readonly (string | Uint8Array)[]): Ref => {
    const parts = ['obj\n', ...body, '\nendobj\n'];
    objects[numberOf(ref) - 1] = Buffer.concat(
      parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : part)),
    );
    return ref;
  };
  return {
    /** A reference to what `fill` brings later: parts and wholes name each other. */
    later,
    fill,
    add: (body: string): Ref => fill(later(), body),
    /** Bytes, compressed. */
    stream(content: string | Uint8Array, entries: Readonly<Record<string, Value>> = {}): Ref {
      const bytes = deflateSync(content);
      const head = dictionary({ ...entries, Length: bytes.length, Filter: '/FlateDecode' });
      return fill(later(), `${head}\nstream\n`, bytes, '\nendstream');
    },
    /** The whole file. Version 1.4 is the first in which a part has a text of its own to be read. */
    file(root: Ref, info: Ref): Uint8Array {
      const chunks: Uint8Array[] = [Buffer.from('%PDF-1.4\n%\xe2\xe3\xcf\xd3\n', 'latin1')];
      let at = chunks[0]!.length;
      const starts = objects.map((body, i) => {
        const start = at;
        const head = Buffer.from(`${i + 1} 0 `);
        chunks.push(head, body);
        at += head.length + body.length;
        return `${String(start).padStart(10, '0')} 00000 n \n`;
      });
      const size = objects.length + 1;
      chunks.push(
        Buffer.from(
          `xref\n0 ${size}\n0000000000 65535 f \n${starts.join('')}trailer\n` +
            `${dictionary({ Size: size, Root: root, Info: info })}\nstartxref\n${at}\n%%EOF\n`,
        ),
      );
      return Buffer.concat(chunks);
    },
  };
}

export type PdfObjects = ReturnType<typeof pdfObjects>;
