import { bench, describe } from 'vitest';
import type { RampProblem } from '../../packages/core/src/ramp/problem.js';
import { solveRamp } from '../../packages/core/src/ramp/solve.js';

/** A dusk of 16 stops over the frames, shaped as light falls: slowly, fast, slowly. */
export function dusk(
  frameCount: number,
  stackStops: number[],
  more: Partial<RampProblem['limits']> = {},
): RampProblem {
  const targetEv100 = Float64Array.from({ length: frameCount }, (_, i) => {
    const t = i / (frameCount - 1);
    return 13.5 - 15.5 * t * t * (3 - 2 * t);
  });
  return {
    targetEv100,
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
      ...more,
    },
  };
}
for (const [name, stops] of [
  ['no', [0]],
  ['1', [0, 6]],
  ['3', [0, 3, 6, 10]],
] as const) {
  describe(name + ' filters', () => {
    for (const n of [3000, 20000])
      for (const s of [0, 60])
        bench(
          `${n} frames, ${s} s`,
          () => {
            solveRamp(dusk(n, [...stops], { secondsBetweenCues: s }));
          },
          { time: 300 },
        );
  });
}
