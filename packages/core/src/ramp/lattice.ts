// The problem in work units: every control as an index, every exposure as a level.
//
// A level x = aperture + shutter - ISO (dial steps) renders x / stepsPerStop + stops[stack]. A setting is
// (stack, aperture, level, ISO); its shutter step follows. For each frame and stack only the levels within
// tolerance of the target, a band a few levels high, need to be looked at.

import { finite, given, positive } from '../check.js';
import { longestTimeInside } from '../footage/frames.js';
import { type Band, type Bands, bandsOf, slidingRange } from './band.js';
import { cueSpacing, type RampProblem, shutterEnds, stepLimit } from './problem.js';
import { type RampWeights, rampWeights } from './weights.js';

/** Room for rounding in every comparison of the contract. */
export const SLACK = 1e-9;

export interface Lattice {
  readonly frameCount: number;
  readonly target: Float64Array;
  readonly stepsPerStop: number;
  readonly toleranceEv: number;
  readonly largestStep: number; // m, dial steps
  readonly spacing: number; // frames from a cue to the next, >= 1
  readonly affectedFrames: number; // L, frames that a filter change affects
  readonly stops: readonly number[]; // of each stack
  readonly startStack: number | undefined;
  readonly shutterMin: number; // longest time that fits, dial steps
  readonly shutterMax: number; // shortest
  readonly isoMin: number;
  readonly isoCount: number;
  readonly apertureMin: number;
  readonly apertureCount: number;
  /** Levels that some setting of the kit has. */
  readonly kitLevels: Band;
  /** Levels within tolerance at frame j alone. */
  readonly band: Bands;
  /** Levels within tolerance from frame j through the cue spacing: what a cue at j may set. */
  readonly hold: Bands;
  /** The same for a filter change at frame j, whose affected frames are not judged. */
  readonly landing: Bands;
  readonly price: Prices;
}

/** Costs by index, weights and the share of time a frame stands for multiplied in. */
export interface Prices {
  readonly error: number; // per squared stop and frame
  readonly iso: readonly Float64Array[]; // per frame, by stack and ISO step - isoMin
  readonly standing: Float64Array; // of shutter and ISO, by step of each; Infinity off the dial; see standingRow
  readonly standingFrom: Int32Array; // where a stack's begin
  readonly affectedFrame: number;
  readonly shorter: number; // a shutter cue to a shorter time
  readonly longer: number;
  readonly isoUp: number;
  readonly isoDown: number;
  readonly narrower: number;
  readonly wider: number;
  readonly stronger: number; // a filter cue to a stronger stack, without what is re-set beside it
  readonly weaker: number;
  readonly asStrong: number; // to another stack of the same strength
  readonly shutterReset: number; // beside a filter cue
  readonly isoReset: number;
}

/**
 * Checks a problem and lays it out.
 *
 * @throws RangeError naming the argument, the rule and the value
 */
export function latticeOf(problem: RampProblem): Lattice {
  const { kit, limits, intervalS } = problem;
  positive('intervalS', intervalS);
  positive('toleranceEv', limits.toleranceEv);
  positive('largestStepEv', limits.largestStepEv);
  const target = Float64Array.from(problem.targetEv100);
  if (target.length === 0) throw new RangeError('targetEv100 must hold at least one frame');
  target.forEach((ev, i) => {
    finite(`targetEv100[${i}]`, ev);
  });
  if (kit.stackStops.length === 0) throw new RangeError('stackStops must hold at least the bare lens');

  const { stepsPerStop } = kit;
  const { shutterMin, shutterMax } = shutterRange(problem);
  const isoMin = kit.iso.lowestStep;
  const isoCount = kit.iso.highestStep - isoMin + 1;
  const apertureMin = kit.aperture.widestStep;
  const apertureCount = kit.aperture.narrowestStep - apertureMin + 1;
  if (isoCount < 1) throw new RangeError('lowest ISO must not exceed the highest');
  if (apertureCount < 1) throw new RangeError('widest aperture must not exceed the narrowest');

  const affectedFrames = limits.framesLostPerFilterChange;
  const spacing = cueSpacing(limits.secondsBetweenCues, intervalS);
  const kitLevels: Band = {
    low: apertureMin + shutterMin - kit.iso.highestStep,
    high: kit.aperture.narrowestStep + shutterMax - isoMin,
  };
  const bands = (windowFrames: number, offset: number) =>
    bandsOf(
      slidingRange(target, windowFrames, offset),
      kit.stackStops,
      limits.toleranceEv,
      stepsPerStop,
      kitLevels,
    );

  return {
    frameCount: target.length,
    target,
    stepsPerStop,
    toleranceEv: limits.toleranceEv,
    largestStep: stepLimit(limits.largestStepEv, stepsPerStop),
    spacing,
    affectedFrames,
    stops: kit.stackStops,
    startStack: kit.startStack,
    shutterMin,
    shutterMax,
    isoMin,
    isoCount,
    apertureMin,
    apertureCount,
    kitLevels,
    band: bands(1, 0),
    hold: bands(spacing, 0),
    landing: bands(Math.max(spacing - affectedFrames, 1), affectedFrames),
    price: pricesOf(problem, shutterMin, shutterMax, isoCount, apertureCount),
  };
}

/** Shutter steps whose time ends inside the interval; none, with shutterMin > shutterMax, where not even the shortest does. */
function shutterRange(problem: RampProblem) {
  const { kit, intervalS, gapS, bracket } = problem;
  if (!(gapS >= 0 && gapS < intervalS)) {
    throw new RangeError(`gapS must be from 0 to below intervalS (${intervalS}), got ${gapS}`);
  }
  const { longestStep, shortestStep } = shutterEnds(problem);
  const step = (bracket?.stepEv ?? 0) * kit.stepsPerStop;
  if (Math.abs(step - Math.round(step)) > 1e-6) {
    throw new RangeError(`bracket.stepEv must be whole steps of the dial, got ${bracket?.stepEv}`);
  }
  const longestS = longestTimeInside(intervalS, problem);
  // Pauses alone may be too long: then no time fits.
  const fits =
    longestS > 0 ? Math.ceil(-kit.stepsPerStop * Math.log2(longestS + SLACK) - SLACK) : shortestStep + 1;
  return { shutterMin: Math.max(longestStep, fits), shutterMax: shortestStep };
}

/** What a shutter time of tv stops (seconds, 2^-tv) costs on one frame: motion blur away from half the interval, and a time too short. */
export function timePrice(tv: number, intervalS: number, weights: RampWeights): number {
  const blurStops = tv + Math.log2(intervalS / 2);
  const shortStops = Math.max(0, tv - TV_SHORT);
  return frameShare(intervalS) * (weights.blur * blurStops * blurStops + weights.shortShutter * shortStops);
}

/** 1/100 s: a shorter time is a time too short. */
const TV_SHORT = Math.log2(100);

/** Whether a stack of so many stops is more than the bare lens: a filter that takes no light is none. */
export function hasFilter(stackStops: number): boolean {
  return stackStops > 0;
}

/** A stop of ISO above the lowest on one frame, before its share of time. */
export function isoPrice({ iso, isoBehindFilter }: RampWeights, filter: boolean): number {
  return filter ? iso + isoBehindFilter : iso;
}

/** w: what one frame counts, so that a plan does not depend on how finely time is cut. */
export function frameShare(intervalS: number): number {
  return intervalS / 5;
}

/** A filter cue from one stack to another, without what is re-set beside it. */
export function filterPrice({ price, stops }: Lattice, from: number, to: number): number {
  const gain = stops[to] - stops[from];
  return gain > SLACK ? price.stronger : gain < -SLACK ? price.weaker : price.asStrong;
}

/** Shutter step of a level at an aperture (an index) and the lowest ISO: level = aperture + shutter - ISO. */
export function shutterAt({ apertureMin, isoMin }: Lattice, aperture: number, level: number): number {
  return level - apertureMin - aperture + isoMin;
}

/** Where the prices of standing at a level's ISOs begin in `price.standing`. */
export function standingRow(lattice: Lattice, stack: number, aperture: number, level: number): number {
  const { isoCount, apertureCount, shutterMin, price } = lattice;
  const row = shutterAt(lattice, aperture, level) - shutterMin + isoCount + apertureCount;
  return price.standingFrom[stack] + row * isoCount;
}

export function weightsOf({ crew, weights }: RampProblem): RampWeights {
  return { ...rampWeights(crew), ...given(weights) };
}

function pricesOf(
  problem: RampProblem,
  shutterMin: number,
  shutterMax: number,
  isoCount: number,
  apertureCount: number,
): Prices {
  const { direction, intervalS, kit } = problem;
  const weights = weightsOf(problem);
  const share = frameShare(intervalS);
  const atDusk = direction === 'dusk' ? weights.againstLight : 0;
  const atDawn = direction === 'dawn' ? weights.againstLight : 0;
  const times = Math.max(0, shutterMax - shutterMin + 1);
  const time = Float64Array.from({ length: times }, (_, i) =>
    timePrice((shutterMin + i) / kit.stepsPerStop, intervalS, weights),
  );
  const isoPrices = (filter: boolean) =>
    Float64Array.from(
      { length: isoCount },
      (_, i) => (share * isoPrice(weights, filter) * i) / kit.stepsPerStop,
    );
  const [bare, filtered] = [isoPrices(false), isoPrices(true)];
  // Two tables, one behind the other: of the bare lens and of every other stack.
  const lowest = isoCount + apertureCount;
  const size = (times + 2 * lowest) * isoCount;
  const standing = new Float64Array(2 * size).fill(Number.POSITIVE_INFINITY);
  for (let t = -isoCount; t < times; t++) {
    for (let i = Math.max(0, -t); i < isoCount && t + i < times; i++) {
      const at = (t + lowest) * isoCount + i;
      standing[at] = time[t + i] + bare[i];
      standing[size + at] = time[t + i] + filtered[i];
    }
  }
  return {
    error: share * weights.error,
    iso: kit.stackStops.map((stops) => (hasFilter(stops) ? filtered : bare)),
    standing,
    standingFrom: Int32Array.from(kit.stackStops, (stops) => (hasFilter(stops) ? size : 0)),
    affectedFrame: weights.affectedFrame,
    shorter: weights.shutterCue + atDusk,
    longer: weights.shutterCue + atDawn,
    isoUp: weights.isoCue + atDawn,
    isoDown: weights.isoCue + atDusk,
    narrower: weights.apertureCue + atDusk,
    wider: weights.apertureCue + atDawn,
    stronger: weights.filterCue + atDusk,
    weaker: weights.filterCue + atDawn,
    asStrong: weights.filterCue,
    shutterReset: weights.shutterCue,
    isoReset: weights.isoCue,
  };
}
