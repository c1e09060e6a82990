// Standard output and error. Files and pipes are written to at once: node's own streams take longer to load than a short
// help takes in all, and are left to screens, and to a pipe that is not ready.

import { fstatSync, writeSync } from 'node:fs';

type Content = string | Uint8Array;

/** Writes to one of the process's own streams. */
export interface StandardStream {
  readonly write: (content: Content) => void;
  /** Whether a person sees it, and how many columns. */
  readonly columns: number | undefined;
}

/**
 * @param number 1 for output, 2 for error
 * @param failed told once of an error; what is written after it goes nowhere
 */
export function standardStream(
  number: 1 | 2,
  failed: (error: NodeJS.ErrnoException) => void,
): StandardStream {
  let stream: NodeJS.WriteStream | undefined;
  let broken = false;
  const streamed = () => {
    if (stream === undefined) {
      stream = number === 1 ? process.stdout : process.stderr;
      stream.on('error', failed);
    }
    return stream;
  };
  if (mayBeScreen(number)) streamed();
  return {
    write(content) {
      if (broken) return;
      if (stream !== undefined) {
        stream.write(content);
        return;
      }
      let left = typeof content === 'string' ? Buffer.from(content) : content;
      try {
        while (left.length > 0) left = left.subarray(writeSync(number, left));
      } catch (error) {
        const fault = error as NodeJS.ErrnoException;
        if (fault.code === 'EAGAIN') streamed().write(left);
        else {
          broken = true;
          failed(fault);
        }
      }
    },
    // A terminal that does not say its width says 0.
    columns: stream?.isTTY ? stream.columns || DEFAULT_COLUMNS : undefined,
  };
}

const DEFAULT_COLUMNS = 80;

/** Whether a stream of the process may be a screen, asked without loading what node's streams need. */
export function mayBeScreen(number: 0 | 1 | 2): boolean {
  try {
    return fstatSync(number).isCharacterDevice();
  } catch {
    return false;
  }
}
