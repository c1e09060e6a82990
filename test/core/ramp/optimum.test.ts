// The optimum against two independent solvers: an exhaustive search and a MIP (HiGHS, npm highs), both of
// which know only the contract of docs/ramp.md.

import { expect, test } from 'vitest';
import { rampExists, solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { exhaustiveRamp } from '../../reference/exhaustive-ramp.js';
import { highsRamp, loadSolver } from '../../reference/highs-ramp.js';
import { isLongRun, sliceOf } from '../../reference/long.js';
import { checkRamp } from '../../reference/ramp-cost.js';
import { randomProblem } from '../../reference/random-problem.js';

// Other problems, and more of them: node packages/tools/ramp-proof.mjs --problems 5000 --seed 20000
const asked = Number(process.env.RAMP_PROBLEMS ?? 0);
const seeds = (first: number, count: number) =>
  Array.from({ length: asked || count }, (_, i) => (asked > 0 ? Number(process.env.RAMP_SEED) : first) + i);
const SEARCHED = seeds(1, sliceOf(240, 40));
const OPTIMISED = seeds(1001, sliceOf(200, 20));

/** A run of other problems says what it met. */
function say(what: string): void {
  if (asked > 0) console.log(what);
}

test(`${SEARCHED.length} random problems: legal ramps of the objective exhaustive search finds, and its verdict`, () => {
  const seen = { ok: 0, infeasible: 0, bulb: 0, spaced: 0, limited: 0 };
  for (const seed of SEARCHED) {
    const problem = randomProblem(seed);
    const want = exhaustiveRamp(problem);
    const got = solveRamp(problem);
    expect(got.kind, `seed ${seed}`).toBe(want.kind);
    expect(rampExists(problem), `seed ${seed}`).toBe(want.kind === 'ok');
    seen[got.kind]++;
    if (problem.kit.bulb) seen.bulb++;
    if (problem.limits.secondsBetweenCues > problem.intervalS) seen.spaced++;
    if (problem.limits.maxFilterChanges !== undefined) seen.limited++;
    if (got.kind === 'ok' && want.kind === 'ok') {
      const check = checkRamp(problem, got.frames);
      expect(check.violations, `seed ${seed}`).toEqual([]);
      expect(got.objective, `seed ${seed}`).toBeCloseTo(check.objective, 8);
      expect(got.objective, `seed ${seed}`).toBeCloseTo(want.objective, 6);
    }
    if (got.kind === 'infeasible' && want.kind === 'infeasible') {
      expect(got.frame, `seed ${seed}`).toBe(want.firstNeverJudged);
    }
  }
  say(`Exhaustive search agrees on ${SEARCHED.length} problems: ${JSON.stringify(seen)}`);
  // Every kind is among them; of a few problems asked for, it need not be.
  if (isLongRun || SEARCHED.length >= 240) {
    for (const [kind, count] of Object.entries(seen)) {
      expect(count, kind).toBeGreaterThanOrEqual(SEARCHED.length / 12);
    }
  }
});

test(`${OPTIMISED.length} random problems: the objective and the verdict of HiGHS`, async () => {
  const highs = await loadSolver();
  let infeasible = 0;
  for (const seed of OPTIMISED) {
    const problem = randomProblem(seed);
    const want = highsRamp(highs, problem);
    const got = solveRamp(problem);
    expect(got.kind, `seed ${seed}`).toBe(want.kind);
    if (got.kind === 'ok' && want.kind === 'ok')
      expect(got.objective, `seed ${seed}`).toBeCloseTo(want.objective, 6);
    else infeasible++;
  }
  say(`HiGHS agrees on ${OPTIMISED.length} problems, ${infeasible} of them impossible`);
  if (OPTIMISED.length >= 200) {
    expect(infeasible).toBeGreaterThan(OPTIMISED.length / 10);
    expect(infeasible).toBeLessThan(OPTIMISED.length / 2);
  }
});
