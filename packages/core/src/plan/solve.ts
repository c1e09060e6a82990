// The ramp of a shoot that is prepared.

import type { RampResult } from '../ramp/problem.js';
import { solved } from '../ramp/solve.js';
import { shutterFits } from '../shoot/time-left.js';
import type { Prepared } from './prepare.js';

/** The cheapest ramp, or why there is none. */
export function solve({ problem }: Prepared): RampResult | { readonly kind: 'no-time' } {
  return shutterFits(problem) ? solved(problem) : { kind: 'no-time' };
}
