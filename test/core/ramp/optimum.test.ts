// The optimum against two independent solvers: an exhaustive search and a MIP (HiGHS, npm highs), both of
// which know only the contract of docs/ramp.md.

import { expect, test } from 'vitest';
import { rampExists, solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { exhaustiveRamp } from '../../reference/exhaustive-ramp.js';
import { highsRamp, loadSolver } from '../../reference/highs-ramp.js';
import { checkRamp } from '../../reference/ramp-cost.js';
import { randomProblem } from '../../reference/random-problem.js';

test('240 random problems: legal ramps of the objective exhaustive search finds, and its verdict', () => {
  const seen = { ok: 0, infeasible: 0, bulb: 0, spaced: 0, limited: 0 };
  for (let seed = 1; seed <= 240; seed++) {
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
  expect(
    Object.values(seen).every((count) => count >= 20),
    JSON.stringify(seen),
  ).toBe(true);
});

test('200 random problems: the objective and the verdict of HiGHS', async () => {
  const highs = await loadSolver();
  let infeasible = 0;
  for (let seed = 1001; seed <= 1200; seed++) {
    const problem = randomProblem(seed);
    const want = highsRamp(highs, problem);
    const got = solveRamp(problem);
    expect(got.kind, `seed ${seed}`).toBe(want.kind);
    if (got.kind === 'ok' && want.kind === 'ok')
      expect(got.objective, `seed ${seed}`).toBeCloseTo(want.objective, 6);
    else infeasible++;
  }
  expect(infeasible).toBeGreaterThan(20);
  expect(infeasible).toBeLessThan(100);
}, 120_000);
