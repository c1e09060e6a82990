// The ramp's speed as ratios within one run, of the built package, as others import it; what each should be stands in
// its group's title. Nothing here fails a build: timings on a shared machine are for reading.

import { execFileSync } from 'node:child_process';
import { bench, describe } from 'vitest';
import { planEvenings } from '../../packages/core/dist/plan/evenings.js';
import { forecastLight } from '../../packages/core/dist/plan/forecast.js';
import { planShoot } from '../../packages/core/dist/plan/plan.js';
import { rampProblemOf } from '../../packages/core/dist/plan/targets.js';
import { costToGo } from '../../packages/core/dist/ramp/exact/cost-to-go.js';
import { planCourse } from '../../packages/core/dist/ramp/exact/plan-course.js';
import { giveBack } from '../../packages/core/dist/ramp/exact/table.js';
import { latticeOf } from '../../packages/core/dist/ramp/lattice.js';
import type { RampProblem } from '../../packages/core/dist/ramp/problem.js';
import { solveRamp } from '../../packages/core/dist/ramp/solve.js';
import { shootSpan } from '../../packages/core/dist/shoot/span.js';
import { PLAIN_SHOOT, shootFrom } from '../core/shoots.js';
import { highsRamp, loadSolver } from '../reference/highs-ramp.js';
import { randomProblem } from '../reference/random-problem.js';

const time = { time: 400, warmupTime: 200 };

/** A dusk of 15.5 stops, shaped as light falls: slowly, fast, slowly. */
function dusk(
  frameCount: number,
  stackStops: readonly number[],
  limits: Partial<RampProblem['limits']> = {},
): RampProblem {
  return {
    targetEv100: Float64Array.from({ length: frameCount }, (_, i) => {
      const t = i / (frameCount - 1);
      return 13.5 - 15.5 * t * t * (3 - 2 * t);
    }),
    intervalS: 4,
    direction: 'dusk',
    gapS: 1,
    darkFrame: false,
    crew: 'hand',
    kit: {
      stepsPerStop: 3,
      shutter: { longestStep: -15, shortestStep: 36 },
      iso: { lowestStep: 0, highestStep: 18 },
      aperture: { widestStep: 9, narrowestStep: 9 },
      stackStops,
      bulb: false,
    },
    limits: {
      toleranceEv: 0.75,
      largestStepEv: 1,
      secondsBetweenCues: 0,
      framesLostPerFilterChange: 2,
      ...limits,
    },
  };
}

/** The bare loop: a load, an add and a store for every cell. */
function addAll(from: Float64Array, to: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] = from[i]! + to[i]!;
}

describe('linear in frames, two filters: 20,000 against 2,000 (at most 12.5)', () => {
  for (const count of [2000, 20_000]) {
    const problem = dusk(count, [0, 3, 6]);
    bench(`${count} frames`, () => void solveRamp(problem), time);
  }
});

for (const [stackStops, most] of [
  [[0], 10],
  [[0, 6], 10],
  [[0, 3, 6, 10], 14],
] as const) {
  describe(`per cell, ${stackStops.length - 1} filters: against a bare load, add, store (at most ${most})`, () => {
    const course = planCourse(latticeOf(dusk(3000, stackStops)));
    const { cost, least } = costToGo(course, 'same');
    const cells = cost.length;
    const megabytes = ((cost.byteLength + least.byteLength) / 1e6).toFixed(1); // asked: at most 8
    const from = new Float64Array(cells).fill(1.5);
    const to = new Float64Array(cells);
    bench(`bare, ${cells} cells`, () => addAll(from, to), time);
    bench(`costs to go, ${megabytes} MB`, () => giveBack(costToGo(course, 'same')), time); // as a solve does
  });
}

describe('cue spacing, 3,000 frames: at most 1.9 times none; 30 s and 8 min within 1.5', () => {
  for (const secondsBetweenCues of [0, 30, 480]) {
    // Eight minutes between cues need large steps; the same kit for all three.
    const problem = dusk(3000, [0, 6], { secondsBetweenCues, largestStepEv: 3, toleranceEv: 2 });
    bench(`${secondsBetweenCues} s`, () => void solveRamp(problem), time);
  }
});

describe('a limit on filter changes that binds, 3,000 frames: under 500 ms', () => {
  const free = dusk(3000, [0, 3, 6, 10]);
  for (const maxFilterChanges of [Number.POSITIVE_INFINITY, 1]) {
    const problem = { ...free, limits: { ...free.limits, maxFilterChanges } };
    bench(`limit ${maxFilterChanges}`, () => void solveRamp(problem), time);
  }
});

describe('the whole plan of 3,000 frames against its ramp alone; impossible, with remedies, under 300 ms', () => {
  const camera = {
    shutter: { shortest: '1/4000', longest: '1' },
    iso: { lowest: 100, highest: 12800 },
    aperture: '2.8',
  };
  const keys = { intervalS: 2, filters: [{ name: 'ND8', factor: 8 }] };
  const shoot = shootFrom({ ...keys, camera });
  const tooDark = shootFrom({ ...keys, camera: { ...camera, iso: { lowest: 100, highest: 400 } } });
  if (planShoot(tooDark).kind !== 'infeasible')
    throw new Error('the bench evening that should be too dark is not');
  const span = shootSpan(shoot);
  if (span.kind !== 'ok') throw new Error('the bench evening has no span');
  const { problem } = rampProblemOf(shoot, forecastLight(shoot, span.times));
  bench(`ramp of ${problem.targetEv100.length} frames`, () => void solveRamp(problem), time);
  bench('planShoot', () => void planShoot(shoot), time);
  bench('impossible', () => void planShoot(tooDark), time);
});

describe('a month of evenings, 756 frames each: against thirty ramps (at most 6), under 2 s', () => {
  const shoot = shootFrom({ date: '2026-10-14', intervalS: 8, filters: [{ name: 'ND64', stops: 6 }] });
  const span = shootSpan(shoot);
  if (span.kind !== 'ok') throw new Error('the bench evening has no span');
  const { problem } = rampProblemOf(shoot, forecastLight(shoot, span.times));
  const ramps = () => {
    for (let i = 0; i < 30; i++) solveRamp(problem);
  };
  bench(`thirty ramps of ${problem.targetEv100.length} frames`, ramps, { time: 2000 });
  bench('planEvenings', () => void planEvenings(shoot), { time: 2000 });
});

describe('a fresh process: importing and reading, then its first plan, under 80 ms more', () => {
  for (const [what, filters] of [
    ['no filter', []],
    ['one filter', [{ name: 'ND64', stops: 6 }]],
  ] as const) {
    const read = `
      import { planShoot, readShoot } from '${new URL('../../packages/core/dist/index.js', import.meta.url)}';
      const { shoot } = readShoot(${JSON.stringify({ ...PLAIN_SHOOT, filters })});`;
    const run = (script: string) => execFileSync(process.execPath, ['--input-type=module', '-e', script]);
    bench(`${what}: read`, () => void run(read), { time: 3000 });
    bench(`${what}: read and planned`, () => void run(`${read} planShoot(shoot);`), { time: 3000 });
  }
});

describe('a small random problem: ours against HiGHS', async () => {
  const highs = await loadSolver();
  const problem = randomProblem(1003, { minFrames: 10, maxFrames: 10 });
  bench('ours', () => void solveRamp(problem), time);
  bench('HiGHS', () => void highsRamp(highs, problem), time);
});
