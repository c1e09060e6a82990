// Lines out of a stream of bytes, in bounded memory whatever comes down it.

/**
 * Lines without their breaks (LF, CR or both), as they come. Of a line longer than `most` characters the first
 * `most` + 1 are given, and the rest is passed over.
 */
export async function* linesOf(chunks: AsyncIterable<Uint8Array>, most: number): AsyncGenerator<string> {
  const decoder = new TextDecoder(); // what is not UTF-8 comes out as marks of replacement
  let line = '';
  let begun = false; // whether the last line has a character, passed over ones counted
  let afterReturn = false;
  for await (const chunk of chunks) {
    let text = decoder.decode(chunk, { stream: true });
    if (afterReturn && text.startsWith('\n')) text = text.slice(1);
    if (text === '') continue;
    afterReturn = text.endsWith('\r');
    const parts = text.split(/\r\n|\n|\r/);
    for (const [i, part] of parts.entries()) {
      if (i > 0) {
        yield line;
        line = '';
        begun = false;
      }
      if (part === '') continue;
      begun = true;
      line += part.slice(0, Math.max(0, most + 1 - line.length));
    }
  }
  if (begun) yield line;
}
