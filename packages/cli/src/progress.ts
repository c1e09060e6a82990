// How far a long task is, on a screen: one line that is written over and wiped at the end.

import type { Io } from './io.js';

const WIDTH = 30;
const EVERY_MS = 100;

/** Told of every step; shows it now and then, and nothing where nobody watches. */
export interface Progress {
  step(): void;
  end(): void;
}

export function progressOf(what: string, count: number, { status }: Pick<Io, 'status'>): Progress {
  let done = 0;
  let shownMs = 0;
  return {
    step: () => {
      done++;
      if (status === undefined || Date.now() - shownMs < EVERY_MS) return;
      shownMs = Date.now();
      const filled = Math.round((WIDTH * done) / count);
      status(`\r${what} [${'#'.repeat(filled)}${'.'.repeat(WIDTH - filled)}] ${done}/${count}`);
    },
    end: () => {
      if (shownMs > 0) status?.(`\r${' '.repeat(what.length + WIDTH + 20)}\r`);
    },
  };
}
