// Kits with one dial to turn, in light that asks for several of its steps at every cue: what the random problems of
// random-problem.ts hardly ever do by ISO or aperture.

import { expect, test } from 'vitest';
import type { RampProblem } from '../../../packages/core/src/ramp/problem.js';
import { solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { exhaustiveRamp } from '../../reference/exhaustive-ramp.js';
import { HAND_PROBLEM } from '../../reference/hand-ramp.js';
import { seeded } from '../../reference/random.js';

const RANGES = {
  shutter: { longestStep: -12, shortestStep: 12 },
  iso: { lowestStep: -3, highestStep: 21 },
  aperture: { widestStep: 6, narrowestStep: 30 },
};
const HELD = {
  shutter: { longestStep: 0, shortestStep: 0 },
  iso: { lowestStep: 0, highestStep: 0 },
  aperture: { widestStep: 18, narrowestStep: 18 },
};

/** Levels in thirds, near the end of each range at which a dusk begins. */
const START = { shutter: 10, iso: 19, aperture: 10 };

test.each(['shutter', 'iso', 'aperture'] as const)(
  'by %s alone, up to seven steps at a cue, as exhaustive search',
  (control) => {
    const random = seeded(control.length);
    const steps = new Set<number>();
    let ok = 0;
    for (let n = 0; n < 120; n++) {
      const most = random.whole(1, 7);
      const kit = { ...HAND_PROBLEM.kit, ...HELD, [control]: RANGES[control], stackStops: [0], bulb: false };
      let ev = START[control] / 3;
      const problem: RampProblem = {
        ...HAND_PROBLEM,
        kit,
        intervalS: 60,
        gapS: 0,
        darkFrame: false,
        direction: random.chance(0.5) ? 'dusk' : 'dawn',
        targetEv100: Array.from({ length: random.whole(3, 8) }, () => {
          ev += random.between(-1, 1) * (most / 3);
          return ev;
        }),
        limits: {
          toleranceEv: random.between(0.2, 1.5),
          largestStepEv: most / 3,
          secondsBetweenCues: random.pick([0, 60, 120]),
          framesLostPerFilterChange: 0,
        },
      };
      const searched = exhaustiveRamp(problem);
      const solved = solveRamp(problem);
      expect(solved.kind, `problem ${n}`).toBe(searched.kind);
      if (solved.kind !== 'ok' || searched.kind !== 'ok') continue;
      ok++;
      expect(Math.abs(solved.objective - searched.objective), `problem ${n}`).toBeLessThan(1e-9);
      const key = `${control}Step` as const;
      solved.frames.forEach((frame, i) => {
        if (i > 0) steps.add(Math.abs(frame[key] - solved.frames[i - 1]![key]));
      });
    }
    expect(ok).toBeGreaterThan(40);
    for (let step = 1; step <= 6; step++) expect([...steps]).toContain(step);
  },
);
