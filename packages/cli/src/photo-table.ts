// Frames out of a table: comma-separated values with a header row, as another program may write them.

import { basename } from 'node:path';
import type { Shoot, TakenFrame } from '@evenfall/core';
import Papa from 'papaparse';
import { FRAME_COLUMNS, type FrameColumn } from './photo-columns.js';
import { chunksOf, readBytes } from './read-bytes.js';
import { Refusal } from './refusal.js';
import { systemFault } from './system-error.js';

const LARGEST_BYTES = 60_000_000;

const NEEDED = FRAME_COLUMNS.slice(0, 4);
type Row = Readonly<Partial<Record<FrameColumn, string>>>;

/** @throws Refusal where it cannot be read, or with the first cell that is wrong */
export async function framesOfTable(path: string, { filters }: Shoot): Promise<TakenFrame[]> {
  const source = basename(path);
  let bytes: Uint8Array | undefined;
  try {
    bytes = await readBytes(chunksOf(path), LARGEST_BYTES);
  } catch (error) {
    throw new Refusal([{ kind: 'cannot-read', path, because: systemFault(error) }]);
  }
  if (bytes === undefined) throw new Refusal([{ kind: 'too-long', source, of: 'plan' }]);
  const text = new TextDecoder().decode(bytes).replace(/^\uFEFF/, '');
  const { data, meta } = Papa.parse<Row>(text, { header: true, skipEmptyLines: true });
  const missing = NEEDED.find((column) => !meta.fields?.includes(column));
  if (missing !== undefined) throw new Refusal([{ kind: 'table-without', source, column: missing }]);
  const known = filters.map(({ name }) => name);
  return data.map((row, index) => frameOf(row, { source, line: index + 2, known }));
}

interface Place {
  readonly source: string;
  readonly line: number;
  readonly known: readonly string[];
}

function frameOf(row: Row, { source, line, known }: Place): TakenFrame {
  const cell = (column: FrameColumn) => (row[column] ?? '').trim();
  const refuse = (column: FrameColumn) =>
    new Refusal([{ kind: 'table-cell', source, line, column, given: cell(column), known }]);
  const number = (column: FrameColumn, isRight: (value: number) => boolean) => {
    const [over, under = '1', ...more] = cell(column).replace(/^f\//i, '').split('/');
    const value = over === '' || more.length > 0 ? Number.NaN : Number(over) / Number(under);
    if (Number.isFinite(value) && isRight(value)) return value;
    throw refuse(column);
  };
  const above = (column: FrameColumn) => number(column, (value) => value > 0);
  const at = cell('at').replace(' ', 'T');
  if (
    !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})?$/i.test(at) ||
    Number.isNaN(Date.parse(at))
  ) {
    throw refuse('at');
  }
  const names =
    row.filters === undefined
      ? undefined
      : cell('filters')
          .split(' + ')
          .filter((name) => name !== '');
  if (names?.some((name) => !known.includes(name))) throw refuse('filters');
  const file = cell('file');
  if (file === '' || /\p{Cc}/u.test(file)) throw refuse('file');
  return {
    ...{ file, at, shutterS: above('shutter'), iso: above('iso') },
    ...(cell('aperture') === '' ? {} : { fNumber: above('aperture') }),
    ...(names === undefined ? {} : { filters: names }),
    ...(cell('mean') === '' ? {} : { level: { mean: number('mean', (value) => value >= 0 && value <= 1) } }),
    ...(cell('camera') === '' ? {} : { camera: cell('camera') }),
  };
}
