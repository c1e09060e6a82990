// All the bytes of a file or a stream, however slowly they come, and never more than a limit.

import { closeSync, openSync, readSync } from 'node:fs';

const CHUNK_BYTES = 65_536;

/** A file's bytes, as they come. Read here and now: node's streams take longer to load than a shoot file to read. */
export function* chunksOf(path: string): Generator<Uint8Array> {
  const file = openSync(path, 'r');
  try {
    for (;;) {
      const chunk = Buffer.allocUnsafe(CHUNK_BYTES);
      const length = readSync(file, chunk);
      if (length === 0) return;
      yield chunk.subarray(0, length);
    }
  } finally {
    closeSync(file);
  }
}

/**
 * @param chunks as they come; the file or stream is closed where it holds too much
 * @param most bytes that are taken
 * @returns undefined where there are more
 */
export async function readBytes(
  chunks: Iterable<Uint8Array> | AsyncIterable<Uint8Array>,
  most: number,
): Promise<Uint8Array | undefined> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of chunks) {
    length += chunk.length;
    if (length > most) return undefined;
    parts.push(chunk);
  }
  return Buffer.concat(parts);
}
