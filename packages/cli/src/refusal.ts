// The command's refusal, thrown where it does not do what was asked.

import type { FileError } from '@evenfall/core';
import type { RefusalFacts } from './refusal-facts.js';

/** A file or an argument is wrong, or no ramp exists: what to say, a line each, and the exit status. */
export class Refusal extends Error {
  constructor(
    readonly facts: readonly RefusalFacts[], // for standard error
    readonly status: 1 | 2 = 1,
  ) {
    super(facts.map(({ kind }) => kind).join(', '));
  }
}

/** A file with faults, a line each. */
export function refusalOf(errors: readonly FileError[]): Refusal {
  return new Refusal(errors.map((fault) => ({ kind: 'fault', where: fault.where, fault })));
}
