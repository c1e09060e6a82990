// What is wrong with a file, as one clear line each: file, line, key, what was wrong, what would be right.

/** Where a value stands in a file: keys and list positions from the root; empty is the whole file. */
export type Path = readonly (string | number)[];

/** Looks up the line of a path, counted from 1; undefined where it has none. */
export type Locate = (path: Path) => { readonly line: number } | undefined;

/** One thing that is wrong, before its line is known. */
export interface Fault {
  /** Where the value stands. */
  readonly path: Path;
  /** "95 is not a latitude; give degrees from -90 to 90". */
  readonly text: string;
}

/** One thing that is wrong, with its place. `message` is the whole line a person reads. */
export interface FileError extends Fault {
  /** From 1. */
  readonly line?: number;
  /** "evening.yaml:12: place.latitudeDeg: 95 is not a latitude; …". */
  readonly message: string;
}

/** A path as people write it: `filters[0].stops`. */
function pathText(path: Path): string {
  let text = '';
  for (const part of path) {
    // A key may hold anything and be of any length; the message stays one line.
    const key = typeof part === 'string' && !/^[\w$-]{1,60}$/.test(part) ? quoted(part) : String(part);
    text += typeof part === 'number' ? `[${part}]` : text === '' ? key : `.${key}`;
  }
  return text;
}

/** Most faults told of one file: past these it is another kind of file, or was spoilt as a whole. */
export const MOST_TOLD = 50;

/**
 * Faults as errors, in the order of their lines, one a path and 50 at most: a value that breaks two rules is told
 * once.
 * A path without a line of its own (a missing key) takes that of the nearest one around it.
 */
export function placed(faults: readonly Fault[], where?: Locate, source?: string): FileError[] {
  const byPath = new Map<string, FileError>();
  for (const { path, text } of faults) {
    const key = pathText(path);
    if (byPath.has(key)) continue;
    if (byPath.size === MOST_TOLD) break;
    const line = lineOf(path, where);
    const file = source === undefined ? '' : `${source}:${line === undefined ? '' : `${line}:`} `;
    const message = `${file}${key === '' ? '' : `${key}: `}${text}`;
    byPath.set(key, { path, text, message, ...(line === undefined ? {} : { line }) });
  }
  return [...byPath.values()].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
}

function lineOf(path: Path, where?: Locate): number | undefined {
  for (let length = path.length; where && length >= 0; length--) {
    const found = where(path.slice(0, length));
    if (found) return found.line;
  }
  return undefined;
}

/** A value as an error shows it: text in quotes and cut short, never more than one line. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return quoted(value);
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a group of keys';
  return typeof value === 'function' ? 'a function' : String(value);
}

/** Text in quotes, cut short, with nothing in it that could move a terminal's cursor or break the line. */
function quoted(text: string): string {
  const short = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  return JSON.stringify(short).replaceAll(
    /[\u007f-\u009f\u2028\u2029]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
