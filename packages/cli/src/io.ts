// What the command may touch of the world beside files, so that a test can stand in for it.

import { COLUMNS } from './layout.js';
import { linesOf } from './stdin-lines.js';
import { type Terminal, terminalOf } from './terminal.js';

export interface Io {
  readonly out: (content: string | Uint8Array) => void;
  readonly err: (text: string) => void;
  readonly errColumns?: number; // what a line of err holds where that is a screen, at most 80
  readonly status?: (text: string) => void; // written over on the screen of err; absent where nobody watches
  readonly stdinBytes: () => AsyncIterable<Uint8Array>; // as they come
  readonly stdinLines: () => AsyncIterable<string>; // as they come, without line breaks; one too long is cut short
  readonly nowMs: () => number; // what the clock on the wall shows, UTC epoch milliseconds
  readonly columns: number; // what a line of out holds, at most 80
  readonly color: boolean; // whether out is a screen that wants colour
  readonly terminal?: () => Terminal; // a person's, where input and output are one
}

/** More characters than a line may have that is answered; what is cut here is refused there. */
const LONGEST_LINE = 20_000;

/** The process's own streams. Colour only on a screen, and not where NO_COLOR is set or the terminal is dumb. */
export function processIo(): Io {
  const { NO_COLOR, TERM } = process.env;
  return {
    out: (content) => process.stdout.write(content),
    err: (text) => process.stderr.write(text),
    ...(process.stderr.isTTY
      ? {
          status: (text: string) => void process.stderr.write(text),
          errColumns: columnsOf(process.stderr),
        }
      : {}),
    // Never by a synchronous read: a pipe that is slow has nothing yet, and that would be an error.
    stdinBytes: () => process.stdin,
    stdinLines: () => linesOf(process.stdin, LONGEST_LINE),
    nowMs: Date.now,
    columns: process.stdout.isTTY ? columnsOf(process.stdout) : COLUMNS,
    color: process.stdout.isTTY === true && !NO_COLOR && TERM !== 'dumb',
    ...(process.stdin.isTTY === true && process.stdout.isTTY === true ? { terminal: terminalOf } : {}),
  };
}

/** A terminal that does not say its width says 0. */
function columnsOf({ columns }: { readonly columns: number }): number {
  return Math.min(COLUMNS, columns || COLUMNS);
}
