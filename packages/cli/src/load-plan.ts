// A plan file on disk to a checked plan that can be followed, if need be as close as the kit can.

import { basename } from 'node:path';
import { type Plan, readPlan } from '@evenfall/core';
import { chunksOf, readBytes } from './read-bytes.js';
import { Refusal, refusalOf } from './refusal.js';
import { systemFault } from './system-error.js';

/** A plan of the most frames comes to three quarters of it. */
const LARGEST_BYTES = 60_000_000;

/** @throws Refusal with one line a fault */
export async function loadPlan(path: string): Promise<Plan> {
  const source = basename(path);
  let bytes: Uint8Array | undefined;
  try {
    bytes = await readBytes(chunksOf(path), LARGEST_BYTES);
  } catch (error) {
    throw new Refusal([{ kind: 'cannot-read', path, because: systemFault(error) }]);
  }
  if (bytes === undefined) {
    throw new Refusal([{ kind: 'too-long', source, of: 'plan' }]);
  }
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw new Refusal([{ kind: 'not-plan-json', source }]);
  }
  const read = readPlan(value, undefined, source);
  if (read.kind === 'wrong') throw refusalOf(read.errors);
  const { plan } = read;
  if (
    plan.kind === 'infeasible' &&
    (plan.infeasible.reason === 'no-span' || plan.infeasible.reason === 'no-time')
  ) {
    throw new Refusal([{ kind: 'plan-of-nothing', source, why: plan.infeasible }], 2);
  }
  return plan;
}
