// Reading and writing shoot files: a parsed value in, a checked shoot with its defaults out.

import * as v from 'valibot';
import { aFunction, hold } from '../hold.js';
import type { Shoot } from '../shoot/shoot.js';
import { checkShoot } from '../shoot/shoot-check.js';
import { inEnglish } from './english-faults.js';
import type { FileError, Locate } from './file-error.js';
import { shootFaults } from './shoot-rules.js';
import { type CheckedFile, shootFileSchema } from './shoot-schema.js';
import { shapeFaults, withDefaults } from './shoot-shape.js';
import { MOST_SHOOT_VALUES, sizeFaults, withoutUndefined } from './size-rules.js';
import { inOrder } from './walk.js';
import type { Written } from './written.js';

/** A `shoot`, or every fault of the file that can be told in one go: `errors`, one or more. */
export type ShootRead =
  | { readonly kind: 'ok'; readonly shoot: Shoot }
  | { readonly kind: 'wrong'; readonly errors: readonly FileError[] }; // at least one

/**
 * Reads `evenfall-shoot/1`: what a YAML or JSON parser gave, or a {@link ShootFile}, checked, with its defaults filled in; a key
 * that is undefined counts as left out. Never throws for what a file can hold; a wrong file is a normal answer.
 *
 * @param value what the parser gave, or a {@link ShootFile}
 * @param locate looks up the line of a path, for messages
 * @param source name of the file, for messages
 * @returns the shoot, or the errors
 * @example
 * ```ts
 * import { readShoot } from '@evenfall/core';
 *
 * const file = {
 *   format: 'evenfall-shoot/1',
 *   place: { latitudeDeg: 95, longitudeDeg: 5 },
 *   date: '2026-09-22',
 *   intervalS: 7,
 *   camera: {
 *     shutter: { shortest: '1/4000', longest: '5' },
 *     iso: { lowest: 100, highest: 6400 },
 *     aperture: '4',
 *   },
 * };
 * const wrong = readShoot(file, undefined, 'evening.yaml');
 * wrong.kind === 'wrong' && wrong.errors.map(({ path }) => path); // → [['place', 'latitudeDeg']]
 * const right = readShoot({ ...file, place: { latitudeDeg: 52, longitudeDeg: 5 } });
 * right.kind === 'ok' && right.shoot; // → { direction: 'dusk', clipFps: 24, crew: 'hand' }
 * ```
 */
export function readShoot(value: unknown, locate?: Locate, source?: string): ShootRead {
  if (locate !== undefined) hold('locate', locate, aFunction);
  const oversize = sizeFaults(value, MOST_SHOOT_VALUES);
  if (oversize.length > 0) return { kind: 'wrong', errors: inEnglish(oversize, locate, source) };
  const stated = withoutUndefined(value);
  const read = v.safeParse(shootFileSchema, stated, { abortPipeEarly: true });
  const faults = shapeFaults(shootFileSchema, stated, read.issues ?? []);
  if (faults.length > 0 || !read.success) return { kind: 'wrong', errors: inEnglish(faults, locate, source) };

  const shoot = withDefaults(read.output);
  const contradictions = shootFaults(shoot);
  if (contradictions.length > 0) return { kind: 'wrong', errors: inEnglish(contradictions, locate, source) };
  return { kind: 'ok', shoot };
}

/**
 * A shoot as the text of a file: JSON, keys in the order of the format, a line break at the end. Never
 * throws.
 *
 * @param shoot from {@link readShoot}
 * @returns text that {@link readShoot} reads back to the same shoot
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { readShoot, writeShoot } from '@evenfall/core';
 *
 * const again = readShoot(JSON.parse(writeShoot(shoot)));
 * again.kind === 'ok' && writeShoot(again.shoot) === writeShoot(shoot); // → true
 * ```
 */
export function writeShoot(shoot: Shoot): string {
  checkShoot(shoot);
  // The assignment has the compiler hold the schema against Shoot.
  const file: Written<CheckedFile> = shoot;
  return `${JSON.stringify(inOrder(shootFileSchema, file), null, 2)}\n`;
}
