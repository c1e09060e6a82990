// Small random ramp problems that meet every constraint: enough to be searched whole, odd enough to be worth it.

import type { RampKit, RampProblem } from '../../packages/core/src/ramp/problem.js';
import { type Choice, rulesOf } from './kit-settings.js';
import type { RampSetting } from './ramp-cost.js';
import { type Random, seeded } from './random.js';

export interface ProblemSize {
  readonly minFrames?: number; // default 1
  readonly maxFrames?: number; // default 10
  readonly maxSettings?: number; // default 60
}

/** The same seed and size always give the same problem. About a quarter have no ramp. */
export function randomProblem(seed: number, size: ProblemSize = {}): RampProblem {
  const { minFrames = 1, maxFrames = 10, maxSettings = 60 } = size;
  const random = seeded(seed);
  const stepsPerStop = random.pick([2, 3] as const);
  const stepEv = 1 / stepsPerStop;
  const intervalS = random.pick([4, 5, 7, 10, 30]);
  const darkFrame = random.chance(0.2);
  const gapS = random.pick([0, 1, 1, intervalS / 2]);
  const largestStepEv = random.pick([stepEv, stepEv, 0.5, 1, 1, 1.5, 2]);

  // Of its own, so that a seed's problem is otherwise the same with a bracket and without.
  const bracket = randomBracket(seeded(seed + 1_000_003), stepsPerStop);
  const reach = bracket === undefined ? 0 : ((bracket.frames - 1) / 2) * bracket.stepEv * stepsPerStop;
  const exposed =
    bracket === undefined
      ? 1
      : Array.from({ length: bracket.frames }, (_, i) => 2 ** (i * bracket.stepEv)).reduce((a, b) => a + b) /
        2 ** (reach / stepsPerStop);
  const pausesS = bracket === undefined ? 0 : (bracket.frames - 1) * bracket.betweenS;

  // The interval cuts the longest times off in some kits, all of them in a few.
  const insideStep =
    -stepsPerStop * Math.log2((intervalS - gapS - pausesS) / (exposed * (darkFrame ? 2 : 1)));
  const longestStep = Math.ceil(insideStep) + random.pick([-2, -1, 0, 0, 2, 8, 18, 24]);
  const isoFrom = random.pick([0, 0, 1, 2, 3, 6, -stepsPerStop]);
  const apertureFrom = random.whole(6, 18);
  // A kit of few steps must change filters or aperture to follow at all.
  const narrow = random.chance(0.7);
  let shutters = narrow ? random.whole(2, 4) : random.whole(2, 8);
  let isos = narrow ? random.whole(1, 2) : random.whole(1, 5);
  let apertures = random.chance(0.3) ? random.whole(2, 3) : 1;
  const m = Math.max(1, Math.floor(largestStepEv * stepsPerStop + 1e-9));
  const stackStops = stacksOf(random, stepEv, (shutters + isos - 2 + m) * stepEv);
  while (shutters * isos * apertures * stackStops.length > maxSettings) {
    if (apertures > 2) apertures--;
    else if (isos > 2) isos--;
    else if (shutters > 2) shutters--;
    else if (apertures * isos > 1) apertures = isos = 1;
    else stackStops.pop();
  }

  const kit: RampKit = {
    stepsPerStop,
    shutter: { longestStep: longestStep - reach, shortestStep: longestStep + shutters - 1 + reach },
    iso: { lowestStep: isoFrom, highestStep: isoFrom + isos - 1 },
    aperture: { widestStep: apertureFrom, narrowestStep: apertureFrom + apertures - 1 },
    stackStops,
    ...(random.chance(0.3) ? { startStack: random.whole(0, stackStops.length - 1) } : {}),
    bulb: random.chance(0.2),
  };
  const spacing = random.pick([0, 0, 1, 1, 2, 2, 3, 4]);
  const direction = random.pick(['dusk', 'dusk', 'dawn'] as const);
  const maxFilterChanges = random.pick([undefined, undefined, undefined, undefined, 0, 1, 1, 2]);
  const frameCount = Math.max(random.whole(minFrames, maxFrames), random.whole(minFrames, maxFrames));
  const pace = (largestStepEv / Math.max(1, spacing)) * random.between(0.2, 1.05);
  const problem: RampProblem = {
    targetEv100: targetsOf(random, kit, reach, frameCount, direction === 'dusk' ? -pace : pace),
    intervalS,
    direction,
    gapS,
    darkFrame,
    ...(bracket === undefined ? {} : { bracket }),
    crew: random.pick(['hand', 'rig'] as const),
    kit,
    limits: {
      toleranceEv: random.pick([0.52, 0.6, 0.75, 1, 1.6]) * Math.max(stepEv, largestStepEv / 2) + 0.01,
      largestStepEv,
      secondsBetweenCues: spacing === 0 ? 0 : (spacing - random.pick([0, 0.4])) * intervalS,
      framesLostPerFilterChange: random.whole(0, 3),
      ...(maxFilterChanges === undefined ? {} : { maxFilterChanges }),
    },
    // With the contract's price of 20 a short ramp changes filters only where it must.
    ...(random.chance(0.5) ? { weights: cheapFilters(random) } : {}),
  };
  return random.chance(0.7) ? { ...problem, targetEv100: plantedTargets(random, problem) } : problem;
}

/** In a third of the problems: from exposures a click apart to nine of two stops, with pauses or without. */
function randomBracket(random: Random, stepsPerStop: number): RampProblem['bracket'] {
  if (!random.chance(1 / 3)) return undefined;
  return {
    frames: random.pick([3, 3, 5, 7, 9] as const),
    stepEv: random.pick([1 / stepsPerStop, 1, 1, 2]),
    betweenS: random.pick([0, 0.1, 0.2]),
  };
}

function cheapFilters(random: Random) {
  return {
    filterCue: random.pick([0, 0.5, 2]),
    affectedFrame: random.pick([0, 0.1, 1]),
    apertureCue: random.pick([0.5, 3]),
  };
}

/** Bare lens first; whole steps, odd strengths, some weaker than one change, some of the same strength. */
function stacksOf(random: Random, stepEv: number, bridgedEv: number): number[] {
  const count = random.pick([1, 2, 2, 3, 3, 4]);
  const stops = [0];
  while (stops.length < count) {
    const strength = random.pick([
      stepEv * random.whole(1, 6),
      random.between(0.05, 0.6),
      bridgedEv * random.between(0.5, 1.1), // about the strongest that the other controls can make up for
      bridgedEv * random.between(0.5, 1),
      bridgedEv,
      Math.log2(3),
      stops[stops.length - 1]!,
    ]);
    stops.push(strength);
  }
  return stops.sort((a, b) => a - b);
}

/** A course through what the kit reaches, at `paceEv` a frame, of one of five shapes. */
function targetsOf(
  random: Random,
  kit: RampKit,
  reach: number,
  frameCount: number,
  paceEv: number,
): number[] {
  const { stepsPerStop, shutter, iso, aperture, stackStops } = kit;
  const brightest = aperture.narrowestStep + shutter.shortestStep - reach - iso.lowestStep;
  const darkest = aperture.widestStep + shutter.longestStep + reach - iso.highestStep;
  const highEv = brightest / stepsPerStop + stackStops[stackStops.length - 1]!;
  const lowEv = darkest / stepsPerStop + stackStops[0]!;
  const travelEv = Math.min(highEv - lowEv, Math.abs(paceEv) * (frameCount - 1));
  const room = Math.max(0, highEv - lowEv - travelEv);
  const startEv = paceEv < 0 ? highEv - room * random.unit() : lowEv + room * random.unit();

  const shape = random.pick(['steady', 'steady', 'turn', 'constant', 'jump', 'ends calm'] as const);
  const bend = random.whole(1, Math.max(1, frameCount - 1));
  const jumpEv = random.pick([-1, 1]) * random.between(0.3, 2.5);
  const jumpLasts = random.pick([1, 2, 3, frameCount]);
  const noiseEv = random.pick([0, 0, 0.05, 0.2]);
  return Array.from({ length: frameCount }, (_, i) => {
    const noise = noiseEv * random.between(-1, 1);
    const steady = startEv + paceEv * i;
    if (shape === 'constant') return startEv + noise;
    if (shape === 'turn') return startEv + paceEv * (i <= bend ? i : 2 * bend - i) + noise;
    if (shape === 'jump' && i >= bend && i < bend + jumpLasts)
      return steady / 2 + startEv / 2 + jumpEv + noise;
    if (shape === 'jump') return steady / 2 + startEv / 2 + noise;
    if (shape === 'ends calm') return startEv + paceEv * Math.min(i, bend) + noise;
    return steady + noise;
  });
}

/**
 * Targets about the settings of a random legal walk, so that a ramp exists and often needs its filter changes.
 * A few are spoilt afterwards by a jump.
 */
function plantedTargets(random: Random, problem: RampProblem): number[] {
  const frameCount = problem.targetEv100.length;
  const rules = rulesOf({ ...problem, kit: { ...problem.kit, bulb: false } });
  const starts = rules.choices.filter((choice) => rules.mayStart(choice));
  if (starts.length === 0) return Array.from(problem.targetEv100);

  const evOf = (choice: Choice) => settingEv100(problem.kit, rules.settingAt(0, choice));
  const sense = problem.direction === 'dusk' ? -1 : 1;
  let at = random.pick(starts);
  let filtersLeft = rules.maxFilterChanges;
  const targets = [evOf(at)];
  for (let next = random.whole(1, 3); targets.length < frameCount; ) {
    const i = targets.length;
    const reachable = rules.choices.filter((to) => {
      const kind = rules.move(i, at, to)?.kind;
      return kind === 'turn' || (kind === 'filter' && filtersLeft > 0 && i + rules.lost < frameCount);
    });
    const onward = reachable.filter((to) => (evOf(to) - evOf(at)) * sense >= 0);
    const filters = reachable.filter(({ stack }) => stack !== at.stack);
    const from = filters.length > 0 && random.chance(0.5) ? filters : random.chance(0.8) ? onward : reachable;
    if (i >= next && from.length > 0) {
      const to = random.pick(from);
      const filter = to.stack !== at.stack;
      next = i + Math.max(rules.spacing, filter ? rules.lost + 1 : 1) + random.pick([0, 0, 1, 2]);
      if (filter) filtersLeft--;
      at = to;
    }
    targets.push(evOf(at));
  }
  const wobbleEv = problem.limits.toleranceEv * random.pick([0, 0.3, 0.9]);
  const spoiltFrom = random.chance(0.15) ? random.whole(0, frameCount) : frameCount;
  const jumpEv = random.between(-3, 3);
  return targets.map((ev, i) => ev + wobbleEv * random.between(-1, 1) + (i >= spoiltFrom ? jumpEv : 0));
}

function settingEv100({ stepsPerStop, stackStops }: RampKit, setting: RampSetting): number {
  const { shutterStep, isoStep, apertureStep, stack } = setting;
  return (shutterStep + apertureStep - isoStep) / stepsPerStop + stackStops[stack]!;
}
