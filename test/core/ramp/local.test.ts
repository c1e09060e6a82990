// On problems too long to search whole: no single legal change of an optimum makes it cheaper. The changes are
// tried by test/reference/local-change.ts, which knows only the contract of docs/ramp.md.

import { expect, test } from 'vitest';
import type { RampProblem } from '../../../packages/core/src/ramp/problem.js';
import { solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { improvingChanges } from '../../reference/local-change.js';
import { sliceOf } from '../../reference/long.js';
import { seeded } from '../../reference/random.js';

/** A dusk or dawn of a dozen stops or so with clouds in it, and a kit as people own them. */
function evening(seed: number): RampProblem {
  const random = seeded(seed);
  const { between, chance, whole } = random;
  const stepsPerStop = chance(0.7) ? 3 : 2;
  const frameCount = whole(40, 100);
  const direction = chance(0.5) ? 'dusk' : 'dawn';
  const [bright, stops] = [between(12, 15), between(6, 15)];
  const cloudEv = chance(0.5) ? between(0, 0.4) : 0;
  const targetEv100 = Float64Array.from({ length: frameCount }, (_, i) => {
    const t = direction === 'dusk' ? i / (frameCount - 1) : 1 - i / (frameCount - 1);
    return bright - stops * t * t * (3 - 2 * t) + cloudEv * Math.sin(i / 9);
  });
  const apertureStep = stepsPerStop * whole(3, 6);
  const crew = chance(0.6) ? 'hand' : 'rig';
  return {
    targetEv100,
    intervalS: between(40, 80),
    direction,
    gapS: 1,
    darkFrame: chance(0.1),
    crew,
    kit: {
      stepsPerStop,
      shutter: { longestStep: -5 * stepsPerStop, shortestStep: 12 * stepsPerStop },
      iso: { lowestStep: 0, highestStep: whole(4, 6) * stepsPerStop },
      aperture: { widestStep: apertureStep, narrowestStep: apertureStep + (chance(0.1) ? stepsPerStop : 0) },
      stackStops: random.pick([[0], [0, 6], [0, Math.log2(1000)], [0, 0.9 / Math.log10(2), 6]]),
      bulb: chance(0.1),
    },
    limits: {
      toleranceEv: between(0.6, 1.2),
      largestStepEv: chance(0.6) ? 1 : 2 / 3,
      secondsBetweenCues: chance(0.5) ? between(0, 90) : 0,
      framesLostPerFilterChange: whole(0, 3),
      ...(chance(0.2) ? { maxFilterChanges: whole(0, 2) } : {}),
    },
  };
}

const RAMPS = sliceOf(1000, 60);

test(`no single legal change betters any of ${RAMPS} ramps of realistic size`, () => {
  let solved = 0;
  let tried = 0;
  let cues = 0;
  for (let seed = 1; solved < RAMPS; seed++) {
    const problem = evening(seed);
    const result = solveRamp(problem);
    if (result.kind === 'infeasible') continue;
    solved++;
    const changes = improvingChanges(problem, result.frames);
    expect(changes.found, `seed ${seed}`).toEqual([]);
    tried += changes.tried;
    cues += result.frames.filter(
      (f, i) => i > 0 && f.settingEv100 !== result.frames[i - 1]!.settingEv100,
    ).length;
  }
  expect(tried / solved).toBeGreaterThan(30);
  expect(cues / solved).toBeGreaterThan(5);
});
