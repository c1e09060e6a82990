// What every room checks its arguments with: each throws RangeError naming the argument, the rule and the value. And
// which known word a mistyped one was meant to be.

/** Returns `value` if it is finite and above zero. */
export function positive(name: string, value: number): number {
  if (value > 0 && Number.isFinite(value)) return value;
  throw new RangeError(`${name} must be positive and finite, got ${value}`);
}

/** Returns `value` if it is a finite number. */
export function finite(name: string, value: number): number {
  if (Number.isFinite(value)) return value;
  throw new RangeError(`${name} must be finite, got ${value}`);
}

/** Returns `value` if it lies in [min, max], ends included. */
export function within(name: string, value: number, min: number, max: number): number {
  if (value >= min && value <= max) return value;
  throw new RangeError(`${name} must be from ${min} to ${max}, got ${value}`);
}

/** Returns `value` if it is a whole number. */
export function whole(name: string, value: number): number {
  if (Number.isInteger(value)) return value;
  throw new RangeError(`${name} must be a whole number, got ${value}`);
}

/** What a group of optional keys states: those that are undefined are left out, so that they take no default's place. */
export function given<T extends object>(
  group: T | undefined,
): { [Key in keyof T]?: Exclude<T[Key], undefined> } {
  const stated = Object.entries(group ?? {}).filter(([, value]) => value !== undefined);
  return Object.fromEntries(stated) as { [Key in keyof T]?: Exclude<T[Key], undefined> };
}

/**
 * Edits that turn one word into the other: a letter put in, left out, changed, or two neighbours swapped
 * (optimal string alignment). "intervlaS" is 1 from "intervalS". Case does not count.
 */
export function editDistance(a: string, b: string): number {
  const from = a.toLowerCase();
  const to = b.toLowerCase();
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      let least = Math.min(row[j - 1]! + 1, last[j]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
        least = Math.min(least, beforeLast[j - 2]! + 1);
      }
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return last[to.length]!;
}

/** Longest word worth comparing: no key of ours comes near it. */
const LONGEST_WORD = 60;

/** The known word nearest to `word`, the first of equals; undefined where none is known. */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  const short = word.slice(0, LONGEST_WORD);
  let nearest: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const distance = editDistance(short, candidate);
    if (distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}
