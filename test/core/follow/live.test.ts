// The live solver against the exact one and against the plain checker of rules: what it may do is what a plan may do.

import { describe, expect, test } from 'vitest';
import { liveKit, planAhead } from '../../../packages/core/src/ramp/live.js';
import { bulbStep } from '../../../packages/core/src/ramp/live-bulb.js';
import { type State, shutterOf } from '../../../packages/core/src/ramp/moves.js';
import type { RampProblem } from '../../../packages/core/src/ramp/problem.js';
import { solveRamp } from '../../../packages/core/src/ramp/solve.js';
import { rampWeights } from '../../../packages/core/src/ramp/weights.js';
import { checkRamp, type RampSetting } from '../../reference/ramp-cost.js';
import { seeded } from '../../reference/random.js';
import { randomProblem } from '../../reference/random-problem.js';

/** The prices of a plan, at any lead, and tolerance all but hard. */
function planPrices(problem: RampProblem) {
  const { error } = { ...rampWeights(problem.crew), ...problem.weights };
  return { errorNow: error, errorAhead: error, fadeS: 180, beyondTolerance: 1e7, hysteresis: 0 };
}

interface Ahead {
  readonly present?: State;
  readonly waitFrames?: number;
}

/** A live answer as a ramp: one setting for each target, after `present` if there is one. */
function rampAhead(problem: RampProblem, { present, waitFrames = 0 }: Ahead = {}): RampSetting[] {
  const kit = liveKit(problem, planPrices(problem));
  const { start, cues } = planAhead(kit, {
    target: problem.targetEv100,
    framesLeft: problem.targetEv100.length,
    present,
    waitFrames,
    filterChangesLeft: problem.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY,
  });
  let state = start;
  return Array.from(problem.targetEv100, (targetEv, frame) => {
    state = cues.find((cue) => cue.frame === frame)?.to ?? state;
    return settingOf(kit, state, targetEv);
  });
}

function settingOf(
  { lattice, bulb }: ReturnType<typeof liveKit>,
  state: State,
  targetEv: number,
): RampSetting {
  return {
    shutterStep: bulb === undefined ? shutterOf(lattice, state) : bulbStep(lattice, bulb, state, targetEv),
    isoStep: lattice.isoMin + state.iso,
    apertureStep: lattice.apertureMin + state.aperture,
    stack: state.stack,
  };
}

/** Problems a live solver can be asked: some time must fit the interval. */
function problems(count: number, fits: (problem: RampProblem) => boolean = () => true): RampProblem[] {
  const found: RampProblem[] = [];
  for (let seed = 1; found.length < count; seed++) {
    const problem = randomProblem(seed, { minFrames: 2, maxFrames: 9, maxSettings: 200 });
    const { kit, intervalS, gapS, darkFrame } = problem;
    const longestS = (intervalS - gapS) / (darkFrame ? 2 : 1);
    if (2 ** (-kit.shutter.shortestStep / kit.stepsPerStop) > longestS || !fits(problem)) continue;
    found.push(problem);
  }
  return found;
}

/** Every cue lies within a minute and a half, where each frame is a place for one. */
const fine = ({ targetEv100, intervalS }: RampProblem) => targetEv100.length * intervalS <= 90;

describe('against the exact solver, with a plan’s prices', () => {
  for (const bulb of [false, true]) {
    test(`without filters it is the optimum${bulb ? ', shutter timed freely' : ''}`, () => {
      const asked = problems(
        bulb ? 60 : 200,
        (p) => fine(p) && p.kit.stackStops.length === 1 && p.kit.bulb === bulb,
      );
      let solved = 0;
      for (const problem of asked) {
        const exact = solveRamp(problem);
        if (exact.kind !== 'ok') continue;
        solved++;
        const { violations, objective } = checkRamp(problem, rampAhead(problem));
        expect(violations).toEqual([]);
        expect(objective).toBeCloseTo(exact.objective, 6);
      }
      expect(solved).toBeGreaterThan(asked.length / 2);
    });
  }

  test('with filters it is legal, never cheaper, and mostly the optimum: filters change at fewer places', () => {
    const asked = problems(200, (p) => fine(p) && p.kit.stackStops.length > 1);
    const dearer: number[] = [];
    for (const problem of asked) {
      const exact = solveRamp(problem);
      if (exact.kind !== 'ok') continue;
      const { violations, objective } = checkRamp(problem, rampAhead(problem));
      const broken = violations.filter((rule) => !rule.startsWith('rule 2'));
      expect(broken).toEqual([]);
      dearer.push(violations.length > 0 ? Number.POSITIVE_INFINITY : objective - exact.objective);
    }
    expect(Math.min(...dearer)).toBeGreaterThan(-1e-6);
    const optimal = dearer.filter((more) => more < 1e-6).length;
    expect(dearer.length).toBeGreaterThan(150);
    expect(optimal / dearer.length).toBeGreaterThan(0.75);
  });
});

test('from any setting it goes on by legal cues alone, whatever the light asks', () => {
  const random = seeded(77);
  let cueless = 0;
  for (const problem of problems(400)) {
    const kit = liveKit(problem, planPrices(problem));
    const { isoCount, apertureCount, shutterMin, shutterMax, apertureMin, isoMin, stops } = kit.lattice;
    const iso = random.whole(0, isoCount - 1);
    const aperture = random.whole(0, apertureCount - 1);
    const shutter = random.whole(shutterMin, shutterMax);
    const level = problem.kit.bulb ? 0 : apertureMin + aperture + shutter - isoMin - iso;
    const present = { stack: random.whole(0, stops.length - 1), aperture, level, iso };
    const waitFrames = random.whole(0, 3);
    const frames = rampAhead(problem, { present, waitFrames });
    const before = settingOf(kit, present, problem.targetEv100[0]!);
    const whole = { ...problem, targetEv100: [problem.targetEv100[0]!, ...Array.from(problem.targetEv100)] };
    const { violations } = checkRamp(noStart(whole), [before, ...frames]);
    expect(violations.filter((rule) => !rule.startsWith('rule 2'))).toEqual([]);
    const still = frames
      .slice(0, waitFrames)
      .every((f) => f.isoStep === before.isoStep && f.stack === before.stack);
    expect(still).toBe(true);
    if (frames.every((f) => f.isoStep === before.isoStep && f.stack === before.stack)) cueless++;
  }
  expect(cueless).toBeLessThan(350);
});

/** What the shoot began with plays no part from a setting on the camera. */
function noStart(problem: RampProblem): RampProblem {
  const { startStack: _, ...kit } = problem.kit;
  return { ...problem, kit };
}
