// A value as the text of a file of its schema.

import type * as v from 'valibot';
import { jsonLines } from './json-lines.js';
import { isGroup } from './parts.js';
import { inOrder } from './walk.js';

/** What may be written as a schema's value: a key that may be left out may be undefined, since JSON leaves it out. */
export type Written<T> = T extends readonly (infer Each)[]
  ? readonly Written<Each>[]
  : T extends object
    ? {
        [Key in keyof T]: Record<never, never> extends Pick<T, Key>
          ? Written<T[Key]> | undefined
          : Written<T[Key]>;
      }
    : T;

/** JSON, keys in the schema's order, each row of a list on a line of its own. */
export function written(schema: v.GenericSchema, value: unknown): string {
  const ordered = inOrder(schema, value);
  return jsonLines(isGroup(ordered) ? ordered : {});
}
