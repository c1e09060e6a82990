// All the bytes of a file or a stream, however slowly they come, and never more than a limit.

/**
 * @param chunks as they come; the stream is closed where it holds too much
 * @param most bytes that are taken
 * @returns undefined where there are more
 */
export async function readBytes(
  chunks: AsyncIterable<Uint8Array>,
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
