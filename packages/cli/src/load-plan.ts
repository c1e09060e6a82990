// A plan file on disk to a checked plan that can be followed.

import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { type PlanMade, readPlan } from '@evenfall/core';
import { Refusal } from './refusal.js';
import { systemErrorText } from './system-error.js';

/** A plan of the most frames comes to three quarters of it. */
const LARGEST_BYTES = 60_000_000;

/** @throws Refusal with one line a fault */
export function loadPlan(path: string): PlanMade {
  const source = basename(path);
  let text: string;
  try {
    const { size } = statSync(path);
    if (size > LARGEST_BYTES) {
      throw new Refusal([`${source}: ${size} bytes are too many for a plan file; give one of at most 60 MB`]);
    }
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal([`${path}: cannot be read: ${systemErrorText(error)}`]);
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new Refusal([
      `${source}: not readable as JSON; give a plan file, as "evenfall plan SHOOT -o plan.json" writes it`,
    ]);
  }
  const read = readPlan(value, undefined, source);
  if (read.kind === 'wrong') throw new Refusal(read.errors.map(({ message }) => message));
  if ('infeasible' in read.plan) throw new Refusal([`${source}: ${read.plan.infeasible.text}`], 2);
  return read.plan;
}
