// The shape of a file: what its schema finds wrong, and its defaults. Apart from the readers, so that the types
// a program imports do not lead to the schemas and their library.

import type * as v from 'valibot';
import { framesLostByDefault } from '../shoot/frames-lost.js';
import type { Shoot } from '../shoot/shoot.js';
import type { Fault } from './file-error.js';
import { faultOf } from './parts.js';
import type { CheckedFile } from './shoot-schema.js';
import { keyFaults } from './walk.js';

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
      ...faultOf(issue),
    }));
  const otherFormat = ofValues.find(({ path }) => path.length === 1 && path[0] === 'format');
  return otherFormat ? [otherFormat] : [...keyFaults(schema, value), ...ofValues];
}

/** Fills in the defaults that depend on other keys. */
export function withDefaults(file: CheckedFile): Shoot {
  const { direction, crew, camera, scene, limits, intervalS } = file;
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
      framesLostPerFilterChange: framesLostByDefault(intervalS),
      ...limits,
    },
  };
}
