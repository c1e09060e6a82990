// The references held against each other and against sums done by hand, so that the solver meets judges who agree.

import { expect, test } from 'vitest';
import type { RampProblem } from '../../../packages/core/src/ramp/problem.js';
import { exhaustiveRamp } from '../../reference/exhaustive-ramp.js';
import { HAND_OBJECTIVE, HAND_PROBLEM, HAND_RAMP } from '../../reference/hand-ramp.js';
import { highsRamp, loadSolver } from '../../reference/highs-ramp.js';
import { rulesOf } from '../../reference/kit-settings.js';
import { improvingChanges } from '../../reference/local-change.js';
import { checkRamp, type RampSetting } from '../../reference/ramp-cost.js';
import { randomProblem } from '../../reference/random-problem.js';

test('exhaustive search, the MIP and the plain checker agree on 250 random problems', async () => {
  const highs = await loadSolver();
  const seen = { ok: 0, infeasible: 0, filterChanges: 0, twoFilterChanges: 0, aperture: 0, bulb: 0, lost: 0 };
  for (let seed = 1; seed <= 250; seed++) {
    const problem = randomProblem(seed);
    const searched = exhaustiveRamp(problem);
    const solved = highsRamp(highs, problem);
    expect(solved.kind, `seed ${seed}`).toBe(searched.kind);
    seen[searched.kind]++;
    if (searched.kind === 'infeasible' || solved.kind === 'infeasible') continue;

    expect(Math.abs(solved.objective - searched.objective), `seed ${seed}`).toBeLessThan(1e-6);
    for (const { frames, objective } of [searched, solved]) {
      const check = checkRamp(problem, frames);
      expect(check.violations, `seed ${seed}`).toEqual([]);
      expect(Math.abs(check.objective - objective), `seed ${seed}`).toBeLessThan(1e-6);
    }
    const changes = changesOf(searched.frames, 'stack');
    seen.filterChanges += changes > 0 ? 1 : 0;
    seen.twoFilterChanges += changes > 1 ? 1 : 0;
    seen.lost += changes > 0 && problem.limits.framesLostPerFilterChange > 0 ? 1 : 0;
    seen.aperture += changesOf(searched.frames, 'apertureStep') > 0 ? 1 : 0;
    seen.bulb += problem.kit.bulb ? 1 : 0;
  }
  // A generator that lost one of these would leave the agreement empty there.
  expect(seen.infeasible).toBeGreaterThan(50);
  expect(seen.infeasible).toBeLessThan(88);
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(3);
});

test('exhaustive search finds the best of all sequences the plain checker passes', () => {
  const seen = { ok: 0, infeasible: 0 };
  for (let seed = 1; seed <= 300; seed++) {
    const problem = randomProblem(seed, { maxFrames: 4, maxSettings: 6 });
    const best = bestOfAll(problem);
    const searched = exhaustiveRamp(problem);
    expect(searched.kind === 'ok', `seed ${seed}`).toBe(best < Number.POSITIVE_INFINITY);
    seen[searched.kind]++;
    if (searched.kind === 'ok') expect(searched.objective, `seed ${seed}`).toBeCloseTo(best, 9);
  }
  expect(seen.ok).toBeGreaterThan(100);
  expect(seen.infeasible).toBeGreaterThan(50);
});

test('the cost of six frames is what it is by hand', () => {
  const check = checkRamp(HAND_PROBLEM, HAND_RAMP);
  expect(check.violations).toEqual([]);
  expect(check.objective).toBeCloseTo(HAND_OBJECTIVE, 5);
});

test('at dawn the same cues go with the light and cost twelve less', () => {
  const check = checkRamp({ ...HAND_PROBLEM, direction: 'dawn' }, HAND_RAMP);
  expect(check.objective).toBeCloseTo(HAND_OBJECTIVE - 12, 5);
});

test('one frame at 1/512 s costs its blur and its short shutter', () => {
  const kit = { ...HAND_PROBLEM.kit, shutter: { longestStep: 0, shortestStep: 27 } };
  const problem = { ...HAND_PROBLEM, kit, intervalS: 5, targetEv100: [16] }; // 6 + 9 + ISO 50
  const check = checkRamp(problem, [{ shutterStep: 27, isoStep: -3, apertureStep: 18, stack: 0 }]);
  expect(check.violations).toEqual([]);
  // By hand: 0.005 (9 + log2 2.5)² + 0.02 log2 5.12.
  expect(check.objective).toBeCloseTo(0.532711 + 0.047123, 5);
});

test('bulb takes the time without error, clamped, and pays for no movement', () => {
  const kit = { ...HAND_PROBLEM.kit, bulb: true, iso: { lowestStep: 0, highestStep: 0 }, stackStops: [0] };
  const problem = { ...HAND_PROBLEM, kit, targetEv100: [6, 5.1, 3.5] }; // 4 s at f/8 meter EV 4
  const at = (shutterStep: number) => ({ shutterStep, isoStep: 0, apertureStep: 18, stack: 0 });
  const check = checkRamp(problem, [at(0), at(-2.7), at(-6)]);
  expect(check.violations).toEqual([]);
  // By hand, w = 2: 0.005 (log2 5)², 0.005 (log2 5 - 0.9)², 0.005 (log2 5 - 2)² + 0.33 · 0.5².
  expect(check.objective).toBeCloseTo(2 * (0.026957 + 0.010109 + 0.000518 + 0.0825), 5);
  expect(checkRamp(problem, [at(0), at(-2.6), at(-6)]).violations).toEqual([
    expect.stringMatching(/^rule 1, frame 1: bulb/),
  ]);
  // The interval's end clamps too: gap 8 leaves 2 s, step -3, from where EV 5.1 and 3.5 are 0 and 1.5 stops away.
  expect(checkRamp({ ...problem, gapS: 8 }, [at(0), at(-2.7), at(-3)]).violations).toEqual([
    expect.stringMatching(/^rule 2, frame 2/),
  ]);
});

const frame = (i: number, by: Partial<RampSetting>) =>
  HAND_RAMP.map((f, k) => (k === i ? { ...f, ...by } : f));
const from = (i: number, by: Partial<RampSetting>) => HAND_RAMP.map((f, k) => (k >= i ? { ...f, ...by } : f));
const { kit: KIT, limits: LIMITS } = HAND_PROBLEM;
const loose = { ...LIMITS, toleranceEv: 9 };

// Each breaks the hand-worked ramp in one way; the whole list of rules broken must come back.
const BROKEN: { what: string; problem?: Partial<RampProblem>; frames?: RampSetting[]; rules: string[] }[] = [
  {
    what: 'shutter too long',
    problem: { kit: { ...KIT, shutter: { longestStep: -4, shortestStep: 24 } } },
    rules: ['1@3', '1@4', '1@5'],
  },
  {
    what: 'shutter too short',
    problem: { kit: { ...KIT, shutter: { longestStep: -6, shortestStep: 0 } } },
    rules: ['1@2'],
  },
  {
    what: 'ISO too high',
    problem: { kit: { ...KIT, iso: { lowestStep: -3, highestStep: 2 } } },
    rules: ['1@3', '1@4', '1@5'],
  },
  {
    what: 'ISO too low',
    problem: { kit: { ...KIT, iso: { lowestStep: 1, highestStep: 6 } } },
    rules: ['1@0', '1@1', '1@2'],
  },
  {
    what: 'another lens',
    problem: { kit: { ...KIT, aperture: { widestStep: 19, narrowestStep: 20 } } },
    rules: ['1@0', '1@1', '1@2', '1@3', '1@4', '1@5'],
  },
  { what: 'off the dial', frames: frame(2, { shutterStep: 0.5 }), rules: ['1@2'] },
  {
    what: 'a filter not owned',
    problem: { kit: { ...KIT, stackStops: [0] } },
    rules: ['1@3', '1@4', '1@5', '2@5'],
  },
  { what: 'wrong start stack', problem: { kit: { ...KIT, startStack: 1 } }, rules: ['1@0'] },
  { what: 'gap too long', problem: { gapS: 7 }, rules: ['1@3', '1@4', '1@5'] }, // 3.17 s + 7 s
  { what: 'dark frame', problem: { darkFrame: true, gapS: 4 }, rules: ['1@3', '1@4', '1@5'] }, // 6.35 s + 4 s
  // 3.17 s / 4 + 3.17 s + 4 · 3.17 s are 16.7 s; the kit has no 12.7 s, nor 1/4 of its shortest.
  {
    what: 'a bracket that is too long',
    problem: { bracket: { frames: 3, stepEv: 2, betweenS: 0 } },
    rules: ['1@3', '1@4', '1@5'],
  },
  {
    what: 'a bracket off the dial',
    problem: { bracket: { frames: 3, stepEv: 0.1, betweenS: 0 } },
    rules: ['1@0', '1@1', '1@2', '1@3', '1@4', '1@5'],
  },
  {
    what: 'pauses that are too long',
    problem: { bracket: { frames: 3, stepEv: 1 / 3, betweenS: 4.6 } },
    rules: ['1@0', '1@1', '1@2', '1@3', '1@4', '1@5'],
  },
  {
    what: 'first frame out of tolerance',
    problem: { limits: { ...LIMITS, toleranceEv: 0.49 } },
    rules: ['2@0'],
  },
  {
    what: 'judged frame out of tolerance',
    problem: { targetEv100: [6.5, 6, 6.3, 6.3, 6.3, 7.1] },
    rules: ['2@5'],
  },
  {
    what: 'two controls at once',
    frames: frame(1, { shutterStep: 1, isoStep: 1 }).with(2, { ...HAND_RAMP[2]!, isoStep: 1 }),
    rules: ['3@1'],
  },
  {
    what: 'a step too large',
    problem: { limits: loose },
    frames: frame(2, { shutterStep: 4 }),
    rules: ['3@2'],
  },
  {
    what: 'a filter change too large',
    problem: { limits: loose },
    frames: from(3, { ...HAND_RAMP[3]!, shutterStep: -1 }),
    rules: ['3@3'],
  },
  {
    what: 'aperture with a filter',
    problem: { kit: { ...KIT, aperture: { widestStep: 18, narrowestStep: 19 } } },
    frames: from(3, { ...HAND_RAMP[3]!, apertureStep: 19 }),
    rules: ['3@3'],
  },
  { what: 'a cue on an affected frame', frames: from(4, { ...HAND_RAMP[3]!, isoStep: 4 }), rules: ['4@4'] },
  { what: 'a cue on the first judged frame', frames: frame(5, { isoStep: 4 }), rules: ['4@5'] },
  { what: 'a filter change near the end', frames: HAND_RAMP.with(3, HAND_RAMP[2]!), rules: ['4@4'] },
  { what: 'cues too close', problem: { limits: { ...LIMITS, secondsBetweenCues: 11 } }, rules: ['5@3'] },
  { what: 'no filter changes wanted', problem: { limits: { ...LIMITS, maxFilterChanges: 0 } }, rules: ['5'] },
  {
    what: 'aperture that is held',
    frames: frame(1, { apertureStep: 19 }),
    problem: { limits: loose },
    rules: ['1@1', '3@2', '6@1', '6@2'],
  },
];
for (const { what, problem, frames, rules } of BROKEN) {
  test(`the plain checker refuses: ${what}`, () => {
    const { violations } = checkRamp({ ...HAND_PROBLEM, ...problem }, frames ?? HAND_RAMP);
    const broken = violations.map((v) =>
      v.replace(/^rule (\d)(?:, frame (\d+))?:.*$/, '$1@$2').replace(/@$/, ''),
    );
    expect([...new Set(broken)].sort()).toEqual(rules);
  });
}

test('a spacing of a whole number of intervals is allowed, a tenth of a second more is not', () => {
  const spaced = (secondsBetweenCues: number) => ({
    ...HAND_PROBLEM,
    limits: { ...LIMITS, secondsBetweenCues },
  });
  expect(checkRamp(spaced(10), HAND_RAMP).violations).toEqual([]);
  expect(checkRamp(spaced(10.1), HAND_RAMP).violations).toHaveLength(1);
});

test('"10" is 10.08 s: it fits 11.1 s with a gap of one, not 11', () => {
  const kit = { ...KIT, shutter: { longestStep: -10, shortestStep: 0 } };
  const ramp = [{ shutterStep: -10, isoStep: 0, apertureStep: 18, stack: 0 }];
  const inside = (intervalS: number) => ({ ...HAND_PROBLEM, kit, intervalS, targetEv100: [6 - 10 / 3] });
  expect(checkRamp(inside(11.1), ramp).violations).toEqual([]);
  expect(checkRamp(inside(11), ramp).violations).toEqual([expect.stringMatching(/^rule 1, frame 0: busy/)]);
});

// One shutter step, one ISO; a filter of one stop. Frames at EV 6 fit the bare lens, at 7 the filter, others nothing.
function emptyFrames(targetEv100: number[], framesLostPerFilterChange: number): RampProblem {
  const kit = {
    ...KIT,
    shutter: { longestStep: 0, shortestStep: 0 },
    iso: { lowestStep: 0, highestStep: 0 },
    stackStops: [0, 1],
  };
  return {
    ...HAND_PROBLEM,
    targetEv100,
    kit,
    limits: { ...LIMITS, toleranceEv: 0.1, framesLostPerFilterChange },
  };
}

test('a filter change crosses as many empty frames as it may spoil, and no more', () => {
  const crossed = exhaustiveRamp(emptyFrames([6, 6, 99, 99, 7], 2));
  expect(crossed.kind).toBe('ok');
  // Frames 2 and 3 can be crossed, 4 would have to be judged: it is the first that cannot be gone through.
  expect(exhaustiveRamp(emptyFrames([6, 6, 99, 99, 99, 7], 2))).toEqual({
    kind: 'infeasible',
    frame: 4,
    firstNeverJudged: 2,
  });
  // A change at 2 would be judged after the last frame.
  expect(exhaustiveRamp(emptyFrames([6, 6, 99], 2))).toMatchObject({ frame: 2, firstNeverJudged: 2 });
  expect(exhaustiveRamp(emptyFrames([6.2, 6], 2))).toMatchObject({ kind: 'infeasible', frame: 0 });
});

test('no single change betters an optimum, and some better the optimum of other prices', () => {
  let [tried, bettered] = [0, 0];
  for (let seed = 1; seed <= 120; seed++) {
    const problem = randomProblem(seed, { minFrames: 6 });
    const best = exhaustiveRamp(problem);
    if (best.kind === 'infeasible') continue;
    const changes = improvingChanges(problem, best.frames);
    expect(changes.found, `seed ${seed}`).toEqual([]);
    tried += changes.tried;

    const free = { shutterCue: 0, isoCue: 0, filterCue: 0, againstLight: 0 };
    const other = exhaustiveRamp({ ...problem, weights: { ...problem.weights, ...free, error: 50 } });
    if (other.kind === 'ok') bettered += improvingChanges(problem, other.frames).found.length > 0 ? 1 : 0;
  }
  expect(tried).toBeGreaterThan(500);
  expect(bettered).toBeGreaterThan(20);
});

test('the same seed gives the same problem, another seed another', () => {
  expect(randomProblem(7)).toEqual(randomProblem(7));
  expect(randomProblem(7)).not.toEqual(randomProblem(8));
});

function changesOf(frames: readonly RampSetting[], key: keyof RampSetting): number {
  return frames.filter((f, i) => i > 0 && f[key] !== frames[i - 1]![key]).length;
}

/** Lowest objective among all sequences of settings; Infinity where the checker passes none. */
function bestOfAll(problem: RampProblem): number {
  const { choices, settingAt, frameCount } = rulesOf(problem);
  let best = Number.POSITIVE_INFINITY;
  const extend = (frames: RampSetting[]) => {
    if (frames.length === frameCount) {
      const { violations, objective } = checkRamp(problem, frames);
      if (violations.length === 0) best = Math.min(best, objective);
      return;
    }
    for (const choice of choices) extend([...frames, settingAt(frames.length, choice)]);
  };
  extend([]);
  return best;
}
