// Reading and writing plan files and light tables.

import * as v from 'valibot';
import { aFunction, aGroup, groupWith, hold, listOf, oneOf } from '../hold.js';
import { shutterTimesOf } from '../plan/cues.js';
import { checkPlan } from '../plan/plan-check.js';
import type { LightTable, Plan, PlanMade } from '../plan/types.js';
import { parseRfc3339 } from '../sky/clock.js';
import { inEnglish } from './english-faults.js';
import { givenOf } from './fault.js';
import type { Fault, FileError, Locate } from './file-error.js';
import { lightSchema } from './light-schema.js';
import { planSchema } from './plan-schema.js';
import { shootFaults } from './shoot-rules.js';
import { shapeFaults, withDefaults } from './shoot-shape.js';
import { MOST_PLAN_VALUES, sizeFaults } from './size-rules.js';
import { type Written, written } from './written.js';

/**
 * A `plan`, feasible or not, or every fault of the file that can be told in one go: `errors`, one or more.
 */
export type PlanRead =
  | { readonly kind: 'ok'; readonly plan: Plan }
  | { readonly kind: 'wrong'; readonly errors: readonly FileError[] }; // at least one

/**
 * Reads `evenfall-plan/1` from a parsed value. Checks that it is whole and that its shoot is sound; it does
 * not work the plan out again. Never throws for what a file can hold; a wrong file is a normal answer.
 *
 *
 * @param value what a JSON parser gave
 * @param locate looks up the line of a path, for messages
 * @param source name of the file, for messages
 * @returns the plan, defaults of its shoot filled in, or the errors
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { readPlan, writePlan } from '@evenfall/core';
 *
 * readPlan(JSON.parse(writePlan(plan))).kind; // → 'ok'
 * const cut = { ...plan, frames: plan.frames.slice(1) };
 * const wrong = readPlan(cut, undefined, 'plan.json');
 * wrong.kind === 'wrong' && wrong.errors[0]?.path; // → ['summary', 'frameCount']
 * ```
 */
export function readPlan(value: unknown, locate?: Locate, source?: string): PlanRead {
  if (locate !== undefined) hold('locate', locate, aFunction);
  const oversize = sizeFaults(value, MOST_PLAN_VALUES);
  if (oversize.length > 0) return { kind: 'wrong', errors: inEnglish(oversize, locate, source) };
  const read = v.safeParse(planSchema, value, { abortPipeEarly: true });
  const faults = shapeFaults(planSchema, value, read.issues ?? []);
  if (faults.length > 0 || !read.success) return { kind: 'wrong', errors: inEnglish(faults, locate, source) };

  const plan = whole(read.output);
  const contradictions = [
    ...shootFaults(plan.shoot).map((fault) => ({ ...fault, path: ['shoot', ...fault.path] })),
    ...(plan.kind === 'ok' ? [...countFaults(plan), ...timeFaults(plan)] : []),
  ];
  if (contradictions.length > 0) return { kind: 'wrong', errors: inEnglish(contradictions, locate, source) };
  return { kind: 'ok', plan };
}

/** A plan with what depends on its other keys filled in: a file from before `kind` says by its keys which it is, one from before `shutterTimes` has them in its frames. */
function whole(file: v.InferOutput<typeof planSchema>): Plan {
  const shoot = withDefaults(file.shoot);
  if ('infeasible' in file) return { ...file, kind: 'infeasible', shoot };
  const { shutterTimes = shutterTimesOf(file.frames, file.cues) } = file;
  return { ...file, kind: 'ok', shoot, ...(shoot.camera.bulb ? { shutterTimes } : {}) };
}

/** Times are written to a second or better, so that a frame's may be off by less than one. */
const ROUNDED_MS = 1000;

/** The first frame whose time is not its own: frames start an interval apart. */
function timeFaults({ shoot, frames }: PlanMade): Fault[] {
  const startMs = parseRfc3339(frames[0]?.at ?? '') ?? Number.NaN;
  const index = frames.findIndex(({ at }, i) => {
    const offMs = (parseRfc3339(at) ?? Number.NaN) - startMs - 1000 * shoot.intervalS * i;
    return !(Math.abs(offMs) < ROUNDED_MS);
  });
  if (index < 0) return [];
  const given = givenOf(frames[index]?.at);
  return [
    { path: ['frames', index, 'at'], kind: 'frame-at-another-time', given, intervalS: shoot.intervalS },
  ];
}

/** Frames count from 0 without a hole, cues lie among them, and the summary counts them right. */
function countFaults({ summary, frames, cues, shutterTimes = [] }: PlanMade): Fault[] {
  const faults: Fault[] = [];
  const check = (path: Fault['path'], got: number, right: number) => {
    if (got !== right) faults.push({ path, kind: 'count-differs', got, right });
  };
  check(['summary', 'frameCount'], summary.frameCount, frames.length);
  check(['summary', 'cueCount'], summary.cueCount, cues.length);
  for (const [index, { frame }] of frames.entries()) check(['frames', index, 'frame'], frame, index);
  for (const [key, list] of Object.entries({ cues, shutterTimes })) {
    let before = 0;
    for (const [index, { frame }] of list.entries()) {
      if (frame <= before || frame >= frames.length) {
        faults.push({
          path: [key, index, 'frame'],
          kind: 'frame-out-of-order',
          frame,
          after: before,
          before: frames.length,
        });
      }
      before = frame;
    }
  }
  return faults;
}

/**
 * A plan as the text of a file: JSON, keys in the order of the format, a frame or a cue a line. Never throws.
 *
 *
 * @param plan from {@link planShoot} or {@link readPlan}
 * @returns text that ends with a line break; the same for the same plan
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { writePlan } from '@evenfall/core';
 *
 * const text = writePlan(plan);
 * text.match(/"frame":/g)?.length; // → plan.frames.length + plan.cues.length
 * ```
 */
export function writePlan(plan: Plan): string {
  checkPlan(plan);
  // The assignment has the compiler hold the schema against Plan.
  const file: Written<v.InferOutput<typeof planSchema>> = plan;
  return written(planSchema, file);
}

/**
 * A light table as the text of a file: JSON, keys in the order of the format, a row a line. Never throws.
 *
 *
 * @param table from {@link lightTable}
 * @returns text that ends with a line break; the same for the same table
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { lightTable, writeLight } from '@evenfall/core';
 *
 * const table = lightTable({ ...shoot, intervalS: 3600 });
 * if (table.kind === 'infeasible') throw new Error(table.infeasible.text);
 * JSON.parse(writeLight(table)); // → { format: 'evenfall-light/1', rows: table.rows }
 * ```
 */
export function writeLight(table: LightTable): string {
  hold('table', table, groupWith({ format: oneOf(['evenfall-light/1']), rows: listOf(aGroup) }));
  // The assignment has the compiler hold the schema against LightTable.
  const file: Written<v.InferOutput<typeof lightSchema>> = table;
  return written(lightSchema, file);
}
