// Reading and writing shoot files: a parsed value in, a checked shoot with its defaults out.

import * as v from 'valibot';
import type { Shoot } from '../shoot.js';
import { type Fault, type FileError, type Locate, placed } from './file-error.js';
import { shootFaults } from './shoot-rules.js';
import { type ShootFile, shootFileSchema } from './shoot-schema.js';
import { inOrder, keyFaults } from './walk.js';

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

/**
 * Faults of keys and values. Those of keys are told by {@link keyFaults}, which knows them better. A file of
 * another format is told as that alone.
 */
export function shapeFaults(
  schema: v.GenericSchema,
  value: unknown,
  issues: readonly v.BaseIssue<unknown>[],
): Fault[] {
  const ofValues = issues
    .filter((issue) => issue.type !== 'strict_object')
    .map((issue) => ({
      path: (issue.path ?? []).map(({ key }) => key as string | number),
      text: issue.message,
    }));
  const otherFormat = ofValues.find(({ path }) => path.length === 1 && path[0] === 'format');
  return otherFormat ? [otherFormat] : [...keyFaults(schema, value), ...ofValues];
}

/** Fills in the defaults that depend on other keys. */
export function withDefaults(file: ShootFile): Shoot {
  const { direction, crew, camera, scene, limits } = file;
  const dialStepEv = 1 / camera.stepsPerStop;
  return {
    ...file,
    span:
      file.span ??
      (direction === 'dusk'
        ? { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 }
        : { fromSunAltitudeDeg: -12, toSunAltitudeDeg: 6 }),
    scene: scene.surface === undefined ? { reflectance: 0.18, ...scene } : scene,
    limits: {
      toleranceEv: crew === 'hand' ? 0.75 : dialStepEv,
      largestStepEv: crew === 'hand' ? 1 : dialStepEv,
      secondsBetweenCues: crew === 'hand' ? 60 : 0,
      ...limits,
    },
  };
}

/** A shoot as the text of a file: JSON, keys in the order of the format, a line break at the end. */
export function writeShoot(shoot: Shoot): string {
  // The assignment has the compiler hold the schema against Shoot.
  const file: ShootFile = shoot;
  return `${JSON.stringify(inOrder(shootFileSchema, file), null, 2)}\n`;
}
