// Walks a file's value along its schema: faults in the keys themselves, and the order keys are written in.

import type * as v from 'valibot';
import { nearestWord } from '../check.js';
import { type FaultFacts, type Give, givenOf } from './fault.js';
import { type Fault, MOST_TOLD, type Path } from './file-error.js';
import { giveOf, isGroup, phrase } from './parts.js';

/** What the walk looks at in a schema, whatever its kind. */
interface Shape {
  readonly type: string;
  readonly entries?: Entries; // of a group of keys
  readonly item?: Shape; // of a list
  readonly wrapped?: Shape; // of an optional value
  readonly getter?: (input: unknown) => Shape; // of a choice
  readonly options?: readonly Shape[]; // of a choice whose shape is open
}

type Entries = Readonly<Record<string, Shape>>;

/** Faults in the keys of a value, as many as are told: no group where one belongs, keys that are not known, keys that are missing. */
export function keyFaults(schema: v.GenericSchema, value: unknown): Fault[] {
  const faults: Fault[] = [];
  visit(schema, value, []);
  return faults;

  function visit(shape: Shape, value: unknown, path: Path, siblings: readonly string[] = []): void {
    if (shape.wrapped) visit(shape.wrapped, value, path);
    else if (shape.getter) visit(shape.getter(value), value, path, keysOfChoice(shape.getter(undefined)));
    else if (shape.entries) visitGroup(shape.entries, value, path, siblings);
    else if (shape.item && Array.isArray(value)) {
      for (const [index, item] of value.entries()) visit(shape.item, item, [...path, index]);
    }
  }

  function visitGroup(entries: Entries, value: unknown, path: Path, siblings: readonly string[]): void {
    const known = Object.keys(entries);
    if (!isGroup(value)) {
      faults.push({ path, kind: 'no-group', given: givenOf(value), keys: known });
      return;
    }
    // A key that was mistyped is not missing as well.
    const meant = new Set<string>();
    for (const key of Object.keys(value)) {
      if (faults.length >= MOST_TOLD) return;
      const at = [...path, key];
      if (Object.hasOwn(entries, key)) visit(entries[key]!, value[key], at);
      else faults.push({ path: at, ...unknownKey(key, meant, known, siblings) });
    }
    // Where a key of another shape was meant, this shape was only a guess.
    if ([...meant].some((key) => !known.includes(key))) return;
    for (const [key, entry] of Object.entries(entries)) {
      if (Object.hasOwn(value, key) || meant.has(key) || isOptional(entry)) continue;
      faults.push({ path: [...path, key], kind: 'missing-key', give: giveFor(entry) });
    }
  }

  function unknownKey(
    key: string,
    meant: Set<string>,
    known: readonly string[],
    siblings: readonly string[],
  ): FaultFacts {
    const [head = '', tail] = key.split(':', 2);
    if (tail !== undefined && known.includes(head)) {
      meant.add(head);
      return { kind: 'key-without-space', right: givenOf(`${head}: ${tail}`) };
    }
    // What is left of "57,05" in braces, where a comma parts entries.
    if (/^\d+$/.test(key)) return { kind: 'number-cut-at-comma' };
    const near = nearestWord(key, [...known, ...siblings])!;
    meant.add(near);
    return near === key ? { kind: 'not-together', keys: known } : { kind: 'unknown-key', nearest: near };
  }
}

/** The keys of all shapes a choice allows. */
function keysOfChoice(shape: Shape): string[] {
  return (shape.options ?? []).flatMap((option) => Object.keys(option.entries ?? {}));
}

function isOptional({ type }: Shape): boolean {
  return type === 'optional' || type === 'exact_optional';
}

/** What to give for a missing key: the keys a group must have, or what every leaf says of itself. */
function giveFor(shape: Shape): Give {
  if (!shape.entries) return giveOf(shape as v.GenericSchema) ?? phrase('value');
  const required = Object.entries(shape.entries).filter(([, entry]) => !isOptional(entry));
  return { give: 'keys', keys: required.map(([key]) => key) };
}

/** A copy with the keys of every group in the schema's order, so that the same value is always written alike. */
export function inOrder(schema: v.GenericSchema, value: unknown): unknown {
  return ordered(schema, value);
}

function ordered(shape: Shape, value: unknown): unknown {
  if (shape.wrapped) return ordered(shape.wrapped, value);
  if (shape.getter) return ordered(shape.getter(value), value);
  const { item, entries } = shape;
  if (item && Array.isArray(value)) return value.map((each) => ordered(item, each));
  if (!entries || !isGroup(value)) return value;
  const keys = Object.keys(entries).filter((key) => value[key] !== undefined);
  return Object.fromEntries(keys.map((key) => [key, ordered(entries[key]!, value[key])]));
}
