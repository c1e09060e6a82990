// Reading and writing shoot files: a parsed value in, a checked shoot with its defaults out.

import * as v from 'valibot';
import type { Shoot } from '../shoot.js';
import { type FileError, type Locate, placed } from './file-error.js';
import { shootFaults } from './shoot-rules.js';
import { type ShootFile, shootFileSchema } from './shoot-schema.js';
import { shapeFaults, withDefaults } from './shoot-shape.js';
import { inOrder } from './walk.js';

/** A shoot, or every fault of the file that can be told in one go. */
export type ShootRead =
  | { readonly kind: 'ok'; readonly shoot: Shoot }
  | { readonly kind: 'wrong'; readonly errors: readonly FileError[] }; // at least one

/**
 * Reads `evenfall-shoot/1`: what a YAML or JSON parser gave, checked, with its defaults filled in.
 * Never throws for what a file can hold; a wrong file is a normal answer.
 *
 * @param where looks up the line of a path, for messages
 * @param source name of the file, for messages
 */
export function readShoot(value: unknown, where?: Locate, source?: string): ShootRead {
  const read = v.safeParse(shootFileSchema, value, { abortPipeEarly: true });
  const faults = shapeFaults(shootFileSchema, value, read.issues ?? []);
  if (faults.length > 0 || !read.success) return { kind: 'wrong', errors: placed(faults, where, source) };

  const shoot = withDefaults(read.output);
  const contradictions = shootFaults(shoot);
  if (contradictions.length > 0) return { kind: 'wrong', errors: placed(contradictions, where, source) };
  return { kind: 'ok', shoot };
}

/** A shoot as the text of a file: JSON, keys in the order of the format, a line break at the end. */
export function writeShoot(shoot: Shoot): string {
  // The assignment has the compiler hold the schema against Shoot.
  const file: ShootFile = shoot;
  return `${JSON.stringify(inOrder(shootFileSchema, file), null, 2)}\n`;
}
