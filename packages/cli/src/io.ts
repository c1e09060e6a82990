// What the command may touch of the world beside files, so that a test can stand in for it.

import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';

export interface Io {
  out(text: string): void;
  err(text: string): void;
  readStdin(): Uint8Array;
  stdinLines(): AsyncIterable<string>; // as they come, without line breaks
  readonly color: boolean; // whether out is a screen that wants colour
}

/** The process's own streams. Colour only on a screen, and not where NO_COLOR is set or the terminal is dumb. */
export function processIo(): Io {
  const { NO_COLOR, TERM } = process.env;
  return {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    readStdin: () => readFileSync(0),
    stdinLines: () => createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY }),
    color: process.stdout.isTTY === true && !NO_COLOR && TERM !== 'dumb',
  };
}
