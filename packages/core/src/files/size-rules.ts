// A value must be of a size that a file of its kind may have, before anything looks at it closely.

import { MOST_FRAMES } from '../shoot/work.js';
import type { Fault } from './file-error.js';
import { isGroup } from './parts.js';

/** Most values, groups and lists in a shoot file: all its readings, the longest look, and room to spare. */
export const MOST_SHOOT_VALUES = 20_000;

/** The same for a plan file: up to sixty a frame. */
export const MOST_PLAN_VALUES = 60 * MOST_FRAMES + MOST_SHOOT_VALUES;

/** Deepest nesting: formats need seven. */
const DEEPEST = 32;

/** One fault where a value holds more, or is nested deeper, than any file of its kind. */
export function sizeFaults(value: unknown, most: number): Fault[] {
  let left = most;
  let deep = false;
  const visit = (value: unknown, depth: number): void => {
    if (typeof value !== 'object' || value === null) return;
    deep ||= depth > DEEPEST;
    if (deep || left < 0) return;
    const entries = Array.isArray(value) ? value : Object.values(value);
    left -= entries.length;
    // A loop, because entries may be more than a call takes.
    for (const each of entries) visit(each, depth + 1);
  };
  visit(value, 1);
  if (deep) return [{ path: [], kind: 'too-deep', most: DEEPEST }];
  return left >= 0 ? [] : [{ path: [], kind: 'too-large', most }];
}

/**
 * The same value without the keys that are undefined, which JSON could not say: a program that leaves a key out may say so.
 * The value itself where there are none.
 */
export function withoutUndefined(value: unknown): unknown {
  if (Array.isArray(value)) {
    const items = value.map(withoutUndefined);
    return items.some((item, i) => item !== value[i]) ? items : value;
  }
  if (!isGroup(value)) return value;
  const entries = Object.entries(value);
  const kept = entries
    .filter(([, each]) => each !== undefined)
    .map(([key, each]) => [key, withoutUndefined(each)] as const);
  const same = kept.length === entries.length && kept.every(([key, each]) => each === value[key]);
  return same ? value : Object.fromEntries(kept);
}
