// A value as the text of a file of its schema.

import type * as v from 'valibot';
import { jsonLines } from './json-lines.js';
import { isGroup } from './parts.js';
import { inOrder } from './walk.js';

/** JSON, keys in the schema's order, each row of a list on a line of its own. */
export function written(schema: v.GenericSchema, value: unknown): string {
  const ordered = inOrder(schema, value);
  return jsonLines(isGroup(ordered) ? ordered : {});
}
