// What is wrong with a file, each with its place: file, line, key.

import type { FaultFacts } from './fault.js';
import { quotedText } from './quoted.js';

/** Where a value stands in a file: keys and list positions from the root; empty is the whole file. */
export type Path = readonly (string | number)[];

/** Looks up the line of a path, counted from 1; undefined where it has none. */
export type Locate = (path: Path) => { readonly line: number } | undefined;

/** One thing that is wrong, as data, and where the value stands. */
export type Fault<Facts = FaultFacts> = Facts & {
  /** Where the value stands. */
  readonly path: Path;
};

/** One thing that is wrong, with its place and its English. */
export type FileError<Facts = FaultFacts> = Fault<Facts> & {
  /** From 1. */
  readonly line?: number | undefined;
  /** "evening.yaml:12: place.latitudeDeg"; empty where neither file nor key is known. */
  readonly where: string;
  /** "95 is not a latitude; give degrees from -90 to 90". */
  readonly text: string;
  /** The whole line that a person reads: `where`, then `text`. */
  readonly message: string;
};

/** A path as people write it: `filters[0].stops`. */
function pathText(path: Path): string {
  let text = '';
  for (const part of path) {
    // A key may hold anything and be of any length; the message stays one line.
    const key = typeof part === 'string' && !/^[\w$-]{1,60}$/.test(part) ? quotedKey(part) : String(part);
    text += typeof part === 'number' ? `[${part}]` : text === '' ? key : `.${key}`;
  }
  return text;
}

const quotedKey = (key: string) => quotedText(key.length > 40 ? `${key.slice(0, 40)}…` : key);

/** Most faults told of one file: past these it is another kind of file, or was spoilt as a whole. */
export const MOST_TOLD = 50;

/**
 * Faults as errors, in the order of their lines, one a path and 50 at most: a value that breaks two rules is told
 * once.
 * A path without a line of its own (a missing key) takes that of the nearest one around it.
 */
export function placed<Facts>(
  faults: readonly Fault<Facts>[],
  english: (fault: Fault<Facts>) => string,
  locate?: Locate,
  source?: string,
): FileError<Facts>[] {
  const byPath = new Map<string, FileError<Facts>>();
  for (const fault of faults) {
    const key = pathText(fault.path);
    if (byPath.has(key)) continue;
    if (byPath.size === MOST_TOLD) break;
    const line = lineOf(fault.path, locate);
    const file = source === undefined ? [] : [line === undefined ? source : `${source}:${line}`];
    const places = [...file, ...(key === '' ? [] : [key])];
    const text = english(fault);
    byPath.set(key, {
      ...fault,
      ...(line === undefined ? {} : { line }),
      where: places.join(': '),
      text,
      message: [...places, text].join(': '),
    });
  }
  return [...byPath.values()].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
}

function lineOf(path: Path, locate?: Locate): number | undefined {
  for (let length = path.length; locate && length >= 0; length--) {
    const found = locate(path.slice(0, length));
    if (found) return found.line;
  }
  return undefined;
}
