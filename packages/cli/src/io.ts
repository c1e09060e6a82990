// What the command may touch of the world beside files, so that a test can stand in for it.

import { COLUMNS } from './layout.js';
import { mayBeScreen, standardStream } from './standard-streams.js';
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
export function processIo(outFailed: (error: NodeJS.ErrnoException) => void): Io {
  const { NO_COLOR, TERM } = process.env;
  const out = standardStream(1, outFailed);
  // There is nowhere left to say it.
  const err = standardStream(2, () => process.exit(1));
  const atScreen = out.columns !== undefined;
  return {
    out: out.write,
    err: err.write,
    ...(err.columns === undefined ? {} : { status: err.write, errColumns: Math.min(COLUMNS, err.columns) }),
    // Never by a synchronous read: a pipe that is slow has nothing yet, and that would be an error.
    stdinBytes: () => process.stdin,
    stdinLines: () => linesOf(process.stdin, LONGEST_LINE),
    nowMs: Date.now,
    columns: Math.min(COLUMNS, out.columns ?? COLUMNS),
    color: atScreen && !NO_COLOR && TERM !== 'dumb',
    ...(atScreen && mayBeScreen(0) && process.stdin.isTTY ? { terminal: terminalOf } : {}),
  };
}
