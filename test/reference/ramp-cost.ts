// Every hard constraint and the whole cost of a given ramp, re-checked frame by frame from docs/ramp.md alone.
// Nothing here is shared with the solver or with the other references: dial arithmetic is restated.
//
// Readings chosen where the words leave room:
// - A filter change at i holds frames i…i+L, so the next cue comes at i+L+1 or later and affected runs never overlap.
// - "Stronger" compares stops, not names: swapping two stacks of equal stops is a filter change, but not against the light.
// - Shutter and ISO set again at a filter change are paid (1 and 1.5) when they move; only their direction is not counted.
// - The price of an affected frame, 1, is not scaled with the interval: only the terms marked w are.
// - Bulb frees the shutter between its own two ends and the interval's end, also where that end is no dial step, and
//   moves it on affected frames too. "The same setting" then means ISO, aperture and filters.
// - Bulb does not lift the net limit of a filter change: that limits the rendered exposure, not the shutter.
// - "With any filter on" asks for stops, not names: a filter of 0 stops is none.
// - "Lowest ISO" is the kit's, not the ramp's.

import type { RampFrame, RampProblem } from '../../packages/core/src/ramp/problem.js';
import type { RampWeights } from '../../packages/core/src/ramp/weights.js';

/** One frame's setting in dial steps; the shutter step is not whole under bulb. */
export type RampSetting = Pick<RampFrame, 'shutterStep' | 'isoStep' | 'apertureStep' | 'stack'>;

export interface RampCheck {
  readonly violations: string[]; // "rule N, frame i: why"; empty where the ramp is legal
  readonly objective: number;
}

const SLACK = 1e-9;

/** Judges a ramp of one setting a frame. Affected frames are derived from the filter changes. */
export function checkRamp(problem: RampProblem, frames: readonly RampSetting[]): RampCheck {
  const { kit, limits, intervalS, gapS, darkFrame, direction } = problem;
  const price: RampWeights = { ...pricesOf(problem), ...(problem.weights as Partial<RampWeights>) };
  const { stepsPerStop } = kit;
  const frameCount = problem.targetEv100.length;
  const m = Math.max(1, Math.floor(limits.largestStepEv * stepsPerStop + SLACK));
  const netLimitEv = m / stepsPerStop;
  const lost = limits.framesLostPerFilterChange;
  const spacing = Math.ceil(limits.secondsBetweenCues / intervalS - SLACK);
  const w = intervalS / 5;
  const violations: string[] = [];
  let objective = 0;
  const complain = (rule: number, i: number, why: string) => {
    violations.push(`rule ${rule}, frame ${i}: ${why}`);
  };

  if (frames.length !== frameCount) violations.push(`${frames.length} frames for ${frameCount} targets`);

  // Which frames a filter change may spoil.
  const affected = frames.map(() => false);
  for (let i = 1; i < frames.length; i++) {
    if (frames[i]!.stack === frames[i - 1]!.stack) continue;
    for (let k = i; k < i + lost && k < frames.length; k++) affected[k] = true;
  }

  // Each frame alone.
  frames.forEach((f, i) => {
    const timeS = 2 ** (-f.shutterStep / stepsPerStop);
    const iso = 100 * 2 ** (f.isoStep / stepsPerStop);
    const lowestIso = 100 * 2 ** (kit.iso.lowestStep / stepsPerStop);
    const errorEv = settingEv(problem, f) - problem.targetEv100[i]!;

    if (!Number.isInteger(f.isoStep)) complain(1, i, 'ISO off the dial');
    if (!Number.isInteger(f.apertureStep)) complain(1, i, 'aperture off the dial');
    const times = bracketOf(problem).map((ev) => timeS * 2 ** ev);
    const steps = bracketOf(problem).map((ev) => f.shutterStep - ev * stepsPerStop);
    if (steps.some((step) => step < kit.shutter.longestStep - SLACK))
      complain(1, i, 'shutter longer than the kit has');
    if (steps.some((step) => step > kit.shutter.shortestStep + SLACK))
      complain(1, i, 'shutter shorter than the kit has');
    if (!kit.bulb && steps.some((step) => Math.abs(step - Math.round(step)) > SLACK))
      complain(1, i, 'shutter off the dial');
    if (f.isoStep < kit.iso.lowestStep || f.isoStep > kit.iso.highestStep) complain(1, i, 'ISO out of range');
    if (f.apertureStep < kit.aperture.widestStep || f.apertureStep > kit.aperture.narrowestStep) {
      complain(1, i, 'aperture out of range');
    }
    if (kit.stackStops[f.stack] === undefined) complain(1, i, `no filter stack ${f.stack}`);
    const busyS = times.reduce((sum, t) => sum + t * (darkFrame ? 2 : 1), 0) + pausesS(problem) + gapS;
    if (busyS > intervalS + SLACK) complain(1, i, `busy for ${busyS} s of ${intervalS} s`);
    if (kit.bulb) {
      const wanted = bulbStep(problem, i, f);
      if (Math.abs(wanted - f.shutterStep) > SLACK) complain(1, i, `bulb shutter should be at ${wanted}`);
    }

    if (affected[i]) {
      objective += price.affectedFrame;
      return;
    }
    if (!(Math.abs(errorEv) <= limits.toleranceEv + SLACK)) complain(2, i, `error ${errorEv}`);
    objective += w * price.error * errorEv ** 2;
    objective += w * price.blur * Math.log2(timeS / (intervalS / 2)) ** 2;
    objective += w * price.shortShutter * Math.max(0, Math.log2(0.01 / timeS));
    const behindFilter = kit.stackStops[f.stack]! > 0 ? price.isoBehindFilter : 0;
    objective += w * (price.iso + behindFilter) * Math.log2(iso / lowestIso);
  });

  if (frames.length > 0 && kit.startStack !== undefined && frames[0]!.stack !== kit.startStack) {
    complain(1, 0, `starts with stack ${frames[0]!.stack}, not ${kit.startStack}`);
  }

  // Each frame against the one before.
  let lastCue = Number.NEGATIVE_INFINITY;
  let heldThrough = 0;
  let filterChanges = 0;
  for (let i = 1; i < frames.length; i++) {
    const a = frames[i - 1]!;
    const b = frames[i]!;
    const shutterBy = kit.bulb ? 0 : b.shutterStep - a.shutterStep;
    const isoBy = b.isoStep - a.isoStep;
    const apertureBy = b.apertureStep - a.apertureStep;
    const filterMoves = b.stack !== a.stack;
    const moves = [shutterBy, isoBy, apertureBy].filter((by) => by !== 0);
    if (moves.length === 0 && !filterMoves) continue;

    // Rule 3, and what the cue costs.
    if (shutterBy !== 0) objective += price.shutterCue;
    if (isoBy !== 0) objective += price.isoCue;
    if (apertureBy !== 0) objective += price.apertureCue;
    const darker = direction === 'dusk' ? 1 : -1;
    if (filterMoves) {
      objective += price.filterCue;
      const strongerBy = kit.stackStops[b.stack]! - kit.stackStops[a.stack]!;
      if (strongerBy * darker > SLACK) objective += price.againstLight;
      if (apertureBy !== 0) complain(3, i, 'aperture moves at a filter change');
      const netEv = settingEv(problem, b) - settingEv(problem, a);
      if (Math.abs(netEv) > netLimitEv + SLACK) complain(3, i, `filter change of ${netEv} stops net`);
      filterChanges++;
    } else {
      // A shorter shutter and a narrower aperture are steps up, a lower ISO a step down.
      for (const by of [shutterBy, -isoBy, apertureBy]) {
        if (by * darker > 0) objective += price.againstLight;
        if (Math.abs(by) > m + SLACK) complain(3, i, `a control moves ${by} steps, ${m} allowed`);
      }
      if (moves.length > 1) complain(3, i, 'more than one control moves');
    }
    if (apertureBy !== 0 && kit.aperture.widestStep === kit.aperture.narrowestStep) {
      complain(6, i, 'this kit holds its aperture');
    }

    // Rules 4 and 5.
    if (i <= heldThrough) complain(4, i, 'moves before the filter change has been judged');
    if (filterMoves) {
      heldThrough = i + lost;
      if (i + lost > frameCount - 1) complain(4, i, 'filter change too near the end');
    }
    if (i - lastCue < spacing)
      complain(5, i, `${i - lastCue} frames after the last cue, ${spacing} required`);
    lastCue = i;
  }
  if (limits.maxFilterChanges !== undefined && filterChanges > limits.maxFilterChanges) {
    violations.push(`rule 5: ${filterChanges} filter changes, ${limits.maxFilterChanges} allowed`);
  }
  return { violations, objective };
}

/** Av + Tv - log2(ISO/100) + filter stops. */
function settingEv({ kit }: RampProblem, f: RampSetting): number {
  const stops = kit.stackStops[f.stack] ?? Number.NaN;
  return (f.apertureStep + f.shutterStep - f.isoStep) / kit.stepsPerStop + stops;
}

/** Stops of each exposure of an interval about the middle one. */
function bracketOf({ bracket }: RampProblem): number[] {
  if (bracket === undefined) return [0];
  return Array.from({ length: bracket.frames }, (_, i) => (i - (bracket.frames - 1) / 2) * bracket.stepEv);
}

function pausesS({ bracket }: RampProblem): number {
  return bracket === undefined ? 0 : (bracket.frames - 1) * bracket.betweenS;
}

/** Where bulb puts the shutter: no error, else the nearest end that kit and interval allow. */
function bulbStep(problem: RampProblem, i: number, f: RampSetting): number {
  const { kit } = problem;
  const evs = bracketOf(problem);
  const perMiddle = evs.reduce((sum, ev) => sum + 2 ** ev, 0) * (problem.darkFrame ? 2 : 1);
  const insideS = (problem.intervalS - problem.gapS - pausesS(problem)) / perMiddle;
  const reach = evs[evs.length - 1]! * kit.stepsPerStop;
  const longest = Math.max(kit.shutter.longestStep + reach, -Math.log2(insideS) * kit.stepsPerStop);
  const wanted = f.shutterStep + (problem.targetEv100[i]! - settingEv(problem, f)) * kit.stepsPerStop;
  return Math.min(kit.shutter.shortestStep - reach, Math.max(longest, wanted));
}

/** The contract's prices; restated, so that a slip in the library's table shows. */
function pricesOf({ crew }: RampProblem): RampWeights {
  return {
    error: crew === 'hand' ? 0.33 : 5,
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
