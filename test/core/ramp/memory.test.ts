// A table's memory serves the next one: whatever is left in it, the plan is the one that fresh memory gives.

import { expect, test } from 'vitest';
import { giveBack } from '../../../packages/core/src/ramp/exact/table.js';
import { solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { randomProblem } from '../../reference/random-problem.js';

test('300 random problems are solved alike over memory that holds what would be cheaper than anything', () => {
  for (let seed = 1; seed <= 300; seed++) {
    const problem = randomProblem(seed, { minFrames: 2, maxFrames: 40 });
    giveBack({ cost: new Float64Array(0) });
    const fresh = solveRamp(problem);
    giveBack({ cost: new Float64Array(1_000_000).fill(-1e9) });
    expect(solveRamp(problem)).toEqual(fresh);
  }
});
