// What an argument must be, as data that is checked at the door of a function. A check names what is wrong; only then is any
// text made, so that a list of thousands costs next to nothing.

import { nearestWord } from './check.js';

/** What is wrong: where in the argument, what it must be, what was given, and what may have been meant. */
interface Wrong {
  readonly at: string;
  readonly must: string;
  readonly got?: unknown;
}

/** What a value must be: nothing where it is that. */
export type Check = (value: unknown) => Wrong | undefined;

type Group = Readonly<Record<string, unknown>>;
type Checks = Readonly<Record<string, Check>>;

/**
 * Holds an argument against what it must be.
 *
 * @param name of the argument; empty where its keys are named as they are
 * @throws RangeError naming the place, the rule and the value
 */
export function hold(name: string, value: unknown, check: Check): void {
  const wrong = check(value);
  if (wrong === undefined) return;
  const at = `${name}${wrong.at}`.replace(/^\./, '') || 'the argument';
  throw new RangeError(
    'got' in wrong ? `${at} must ${wrong.must}, got ${shown(wrong.got)}` : `${at} must ${wrong.must}`,
  );
}

/** A value as a message shows it: short. */
function shown(value: unknown): string {
  if (typeof value === 'string') return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value);
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'a group of keys';
  return typeof value === 'function' ? 'a function' : String(value);
}

function rule(must: string, holds: (value: unknown) => boolean): Check {
  return (value) => (holds(value) ? undefined : { at: '', must, got: value });
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

export const aNumber = rule('be finite', isNumber);
export const aboveZero = rule('be positive and finite', (value) => isNumber(value) && value > 0);
export const flag = rule('be true or false', (value) => typeof value === 'boolean');
export const text = rule('be text', (value) => typeof value === 'string');

export const aList = rule('be a list', (value) => Array.isArray(value) || isTyped(value));
export const aFunction = rule('be a function', (value) => typeof value === 'function');
/** Whatever is in it. */
export const aGroup = rule('be a group of keys', (value) => isGroup(value));

export function from(min: number, max: number): Check {
  return rule(`be from ${min} to ${max}`, (value) => isNumber(value) && value >= min && value <= max);
}

export function atLeast(min: number): Check {
  return rule(`be ${min} or more`, (value) => isNumber(value) && value >= min);
}

export function wholeFrom(min: number, max: number, what = 'be a whole number'): Check {
  return rule(
    `${what} from ${min} to ${max}`,
    (value) => Number.isInteger(value) && (value as number) >= min && (value as number) <= max,
  );
}

export function oneOf(words: readonly (string | number)[]): Check {
  const must = `be one of ${words.map((word) => JSON.stringify(word)).join(', ')}`;
  return rule(must, (value) => words.includes(value as string));
}

/** A list, or an array of numbers; `least` entries or more. */
export function listOf(each: Check, least = 0): Check {
  return (value) => {
    if (!Array.isArray(value) && !isTyped(value)) return { at: '', must: 'be a list', got: value };
    const list = value as ArrayLike<unknown>;
    if (list.length < least) return { at: '', must: `hold at least ${least}`, got: list.length };
    for (let i = 0; i < list.length; i++) {
      const wrong = each(list[i]);
      if (wrong !== undefined) return { ...wrong, at: `[${i}]${wrong.at}` };
    }
    return undefined;
  };
}

function noGroup(required: Checks, got: unknown): Wrong {
  const names = Object.keys(required);
  return { at: '', must: names.length === 0 ? 'be a group' : `be a group with ${names.join(', ')}`, got };
}

/** A group in which no key is misspelt; what they hold is judged elsewhere, or may be anything. */
export function onlyKeys(...names: readonly string[]): Check {
  return group({}, anything(...names));
}

/** Keys that may hold anything. */
export function anything(...names: readonly string[]): Checks {
  return Object.fromEntries(names.map((name) => [name, () => undefined]));
}

/** What holds of a group, where the value is one. */
export function ifGroup(check: Check): Check {
  return (value) => (isGroup(value) ? check(value) : undefined);
}

/** A group of keys: those that must be there, those that may be, and no others. */
export function group(required: Checks, optional: Checks = {}): Check {
  const known = { ...required, ...optional };
  const names = Object.keys(known);
  return (value) => {
    if (!isGroup(value)) return noGroup(required, value);
    for (const key of Object.keys(value)) {
      if (Object.hasOwn(known, key) || value[key] === undefined) continue;
      return { at: '', must: `have no key "${key}"; the nearest is "${nearestWord(key, names)}"` };
    }
    for (const key of names) {
      if (value[key] === undefined && Object.hasOwn(optional, key)) continue;
      const wrong = known[key]!(value[key]);
      if (wrong !== undefined) return { ...wrong, at: `.${key}${wrong.at}` };
    }
    return undefined;
  };
}

/** A group with these keys, whatever else is in it. */
export function groupWith(required: Checks): Check {
  const entries = Object.entries(required);
  return (value) => {
    if (!isGroup(value)) return noGroup(required, value);
    for (const [key, check] of entries) {
      const wrong = check(value[key]);
      if (wrong !== undefined) return { ...wrong, at: `.${key}${wrong.at}` };
    }
    return undefined;
  };
}

/** One of several shapes, picked by looking at the value. */
export function either(pick: (value: unknown) => Check): Check {
  return (value) => pick(value)(value);
}

/** A word, or a group by its keys. */
export function wordOr(words: Check, shape: Check): Check {
  return either((value) => (isGroup(value) ? shape : words));
}

/** Whether a value is a group that has this key. */
export const has = (key: string) => (value: unknown) => isGroup(value) && key in value;

/** Both: the second where the first holds. */
export function also(first: Check, second: Check): Check {
  return (value) => first(value) ?? second(value);
}

/** Two keys of a group of which one must not be above the other. */
export function rising(low: string, high: string): Check {
  return (value) => {
    const [from, to] = [(value as Group)[low] as number, (value as Group)[high] as number];
    return from <= to ? undefined : { at: `.${low}`, must: `not be above ${high} (${to})`, got: from };
  };
}

/** A typed array, of whichever realm. */
const isTyped = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && 'BYTES_PER_ELEMENT' in value;

export function isGroup(value: unknown): value is Group {
  return typeof value === 'object' && value !== null && !Array.isArray(value) && !isTyped(value);
}
