// What a kit can stand at and what it may do from one frame to the next, in the plainest form: the ground that the
// exhaustive search and the MIP share. checkRamp restates all of it by itself.

import type { RampProblem } from '../../packages/core/src/ramp/problem.js';
import type { RampWeights } from '../../packages/core/src/ramp/weights.js';
import type { RampSetting } from './ramp-cost.js';

/** One thing the kit can stand at; under bulb the shutter is not chosen but follows the target. */
export interface Choice {
  readonly shutterStep: number | 'follows';
  readonly isoStep: number;
  readonly apertureStep: number;
  readonly stack: number;
}

/** What happens between two frames. */
interface Move {
  readonly kind: 'stay' | 'turn' | 'filter'; // turn: one of shutter, ISO, aperture
  readonly cost: number;
}

/** A RampProblem with its derived numbers and its questions answered frame by frame. */
export interface Rules {
  readonly frameCount: number;
  readonly spacing: number; // frames between cues, at least 1
  readonly lost: number; // frames a filter change may spoil
  readonly maxFilterChanges: number; // Infinity where there is no limit
  readonly choices: readonly Choice[]; // every setting rule 1 allows
  readonly affectedCost: number;
  mayStart(choice: Choice): boolean; // startStack alone; tolerance is withinTolerance's
  settingAt(i: number, choice: Choice): RampSetting;
  withinTolerance(i: number, choice: Choice): boolean;
  frameCost(i: number, choice: Choice): number; // of a frame not affected
  move(i: number, from: Choice, to: Choice): Move | undefined; // from frame i - 1 to i; undefined: not allowed
}

/** @throws RangeError where the frames lost are not a whole number */
export function rulesOf(problem: RampProblem): Rules {
  const { kit, limits, intervalS } = problem;
  const per = kit.stepsPerStop;
  const target = (i: number) => problem.targetEv100[i]!;
  const price: RampWeights = { ...defaultPrices(problem.crew), ...(problem.weights as Partial<RampWeights>) };
  const stepLimit = Math.max(1, Math.floor(limits.largestStepEv * per + 1e-9));
  const w = intervalS / 5;
  const lost = limits.framesLostPerFilterChange;
  if (!Number.isInteger(lost)) throw new RangeError(`framesLostPerFilterChange must be whole, got ${lost}`);

  // Longest time in steps: a real number under bulb, the first step that fits on a dial.
  const { frames: exposures = 1, stepEv = 0, betweenS = 0 } = problem.bracket ?? {};
  const half = (exposures - 1) / 2;
  const exposedS = (timeS: number) => {
    let sumS = 0;
    for (let k = -half; k <= half; k++) sumS += timeS * 2 ** (k * stepEv) * (problem.darkFrame ? 2 : 1);
    return sumS;
  };
  const pausesS = (exposures - 1) * betweenS;
  const insideS = (intervalS - problem.gapS - pausesS) / exposedS(1);
  const insideStep = insideS > 0 ? -per * Math.log2(insideS) : Number.POSITIVE_INFINITY;
  // Both ends of a bracket are within the kit.
  const ofKit = {
    longestStep: kit.shutter.longestStep + half * stepEv * per,
    shortestStep: kit.shutter.shortestStep - half * stepEv * per,
  };
  const longest = Math.max(ofKit.longestStep, insideStep);

  const shutters: (number | 'follows')[] = [];
  if (kit.bulb) {
    if (longest <= ofKit.shortestStep) shutters.push('follows');
  } else {
    for (let s = kit.shutter.longestStep; s <= kit.shutter.shortestStep; s++) {
      if (s < ofKit.longestStep - 1e-9 || s > ofKit.shortestStep + 1e-9) continue;
      if (exposedS(2 ** (-s / per)) + pausesS + problem.gapS <= intervalS + 1e-9) shutters.push(s);
    }
  }
  const choices: Choice[] = [];
  for (const stack of kit.stackStops.keys()) {
    for (
      let apertureStep = kit.aperture.widestStep;
      apertureStep <= kit.aperture.narrowestStep;
      apertureStep++
    ) {
      for (let isoStep = kit.iso.lowestStep; isoStep <= kit.iso.highestStep; isoStep++) {
        for (const shutterStep of shutters) choices.push({ shutterStep, isoStep, apertureStep, stack });
      }
    }
  }

  /** Exposure without the shutter's share. */
  const restEv = (c: Choice) => c.apertureStep / per - c.isoStep / per + kit.stackStops[c.stack]!;
  const shutterStepAt = (i: number, c: Choice) => {
    if (c.shutterStep !== 'follows') return c.shutterStep;
    const wanted = (target(i) - restEv(c)) * per;
    return Math.min(Math.max(wanted, longest), ofKit.shortestStep);
  };
  const ev = (i: number, c: Choice) => restEv(c) + shutterStepAt(i, c) / per;

  return {
    frameCount: problem.targetEv100.length,
    spacing: Math.max(1, Math.ceil(limits.secondsBetweenCues / intervalS - 1e-9)),
    lost,
    maxFilterChanges: limits.maxFilterChanges ?? Number.POSITIVE_INFINITY,
    choices,
    affectedCost: price.affectedFrame,
    mayStart: (c) => kit.startStack === undefined || c.stack === kit.startStack,
    settingAt: (i, c) => ({ ...c, shutterStep: shutterStepAt(i, c) }),
    withinTolerance: (i, c) => Math.abs(ev(i, c) - target(i)) <= limits.toleranceEv + 1e-9,
    frameCost: (i, c) => {
      const tv = shutterStepAt(i, c) / per; // -log2 of the time
      const blurStops = -tv - Math.log2(intervalS / 2);
      const shortStops = Math.max(0, tv - Math.log2(100));
      const isoStops = (c.isoStep - kit.iso.lowestStep) / per;
      const errorEv = ev(i, c) - target(i);
      return (
        w * (price.error * errorEv ** 2 + price.blur * blurStops ** 2) +
        w * price.shortShutter * shortStops +
        w * (kit.stackStops[c.stack] === 0 ? price.iso : price.iso + price.isoBehindFilter) * isoStops
      );
    },
    move: (i, a, b) => {
      const darkens = problem.direction === 'dusk' ? 1 : -1; // the sense that goes against the light
      const shutter =
        a.shutterStep === 'follows' || b.shutterStep === 'follows' ? 0 : b.shutterStep - a.shutterStep;
      const iso = b.isoStep - a.isoStep;
      const aperture = b.apertureStep - a.apertureStep;
      const turns = (shutter && price.shutterCue) + (iso && price.isoCue) + (aperture && price.apertureCue);
      if (a.stack !== b.stack) {
        if (aperture !== 0) return undefined;
        if (Math.abs(ev(i, b) - ev(i - 1, a)) > stepLimit / per + 1e-9) return undefined;
        const stronger = (kit.stackStops[b.stack]! - kit.stackStops[a.stack]!) * darkens > 1e-9;
        return { kind: 'filter', cost: turns + price.filterCue + (stronger ? price.againstLight : 0) };
      }
      const moved = [shutter, -iso, aperture].filter((steps) => steps !== 0); // up is darker
      if (moved.length === 0) return { kind: 'stay', cost: 0 };
      if (moved.length > 1 || Math.abs(moved[0]!) > stepLimit) return undefined;
      return { kind: 'turn', cost: turns + (moved[0]! * darkens > 0 ? price.againstLight : 0) };
    },
  };
}

/** docs/ramp.md, "Cost". */
function defaultPrices(crew: RampProblem['crew']): RampWeights {
  return {
    error: crew === 'rig' ? 5 : 0.33,
    blur: 0.005,
    shortShutter: 0.02,
    iso: 0.07,
    isoBehindFilter: 0.5,
    affectedFrame: 1,
    shutterCue: 1,
    isoCue: 1.5,
    apertureCue: 50,
    filterCue: 20,
    againstLight: 6,
  };
}
