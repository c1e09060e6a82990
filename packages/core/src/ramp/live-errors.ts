// What an exposure costs on a stretch of frames ahead, by level: the square of its error, weighed less the
// farther ahead it lies, and more beyond tolerance. Errors far ahead weigh less because the light there is not
// known so well; the price of a cue does not fade, or cues would be put off for ever.

import { frameShare, type Lattice } from './lattice.js';
import type { Funnel } from './live-funnel.js';
import type { Grid } from './live-grid.js';

/** How errors are priced. */
export interface LiveWeights {
  /** Per squared stop and five seconds, at the next frame; and far ahead. */
  readonly errorNow: number;
  readonly errorAhead: number;
  /** Lead time in which the first fades to the second, to 1/e. */
  readonly fadeS: number;
  /** Per squared stop beyond tolerance and five seconds, at any lead. */
  readonly beyondTolerance: number;
  /** Share of its price that a cue of dials must save over the same cue a frame later, to come now. */
  readonly hysteresis: number;
}

/** Levels and costs of one filter stack over the grid. */
export interface StackErrors {
  /** By segment, and at the end as in the last one: lowest level looked at, and how many; 0 where none. */
  readonly low: Int32Array;
  readonly count: Int32Array;
  /** The same: highest ISO index looked at. */
  readonly isoTop: Int32Array;
  /** The same: level nearest the target, on the dials or not. */
  readonly best: Int32Array;
  /** Level that column 0 of `spent` stands for. */
  readonly base: number;
  readonly width: number;
  /** Cost of standing at a level from segment 0 to before segment k, at index k * width + level - base. */
  readonly spent: Float64Array;
}

export function stackErrors(
  kit: Lattice,
  grid: Grid,
  funnel: Funnel,
  target: ArrayLike<number>,
  { intervalS, weights, presentIso }: { intervalS: number; weights: LiveWeights; presentIso: number },
): StackErrors[] {
  const sums = weighedSums(grid, target, intervalS, weights);
  return kit.stops.map((stops) => {
    const { low, count, isoTop, base, width } = levelsOf(kit, grid, funnel, stops, presentIso);
    const segments = grid.at.length - 1;
    const best = new Int32Array(segments + 1);
    const spent = new Float64Array((segments + 1) * width);
    for (let k = 0; k < segments; k++) {
      best[k] = Math.round((sums.mean[k] - stops) * kit.stepsPerStop);
      const weight = sums.weight[k];
      const share = frameShare(intervalS) * (grid.at[k + 1] - grid.at[k]) * weights.beyondTolerance;
      const from = k * width;
      for (let column = 0; column < width; column++) {
        const errorEv = (base + column) / kit.stepsPerStop + stops - sums.mean[k];
        const beyond = Math.max(0, Math.abs(errorEv) - kit.toleranceEv);
        spent[from + width + column] =
          spent[from + column] + weight * errorEv * errorEv + sums.scatter[k] + share * beyond * beyond;
      }
    }
    best[segments] = best[segments - 1];
    return { low, count, isoTop, best, base, width, spent };
  });
}

/** By segment: summed weight of its frames, their weighed mean target, and what their scatter about it costs. */
function weighedSums(grid: Grid, target: ArrayLike<number>, intervalS: number, weights: LiveWeights) {
  const segments = grid.at.length - 1;
  const weight = new Float64Array(segments);
  const mean = new Float64Array(segments);
  const scatter = new Float64Array(segments);
  for (let k = 0; k < segments; k++) {
    const each = errorWeight(grid, k, intervalS, weights);
    const frames = grid.at[k + 1] - grid.at[k];
    let sum = 0;
    for (let frame = grid.at[k]; frame < grid.at[k + 1]; frame++) sum += target[frame];
    mean[k] = sum / frames;
    for (let frame = grid.at[k]; frame < grid.at[k + 1]; frame++) {
      scatter[k] += each * (target[frame] - mean[k]) ** 2;
    }
    weight[k] = each * frames;
  }
  return { weight, mean, scatter };
}

/** What a squared stop costs on each frame of a segment. It hardly changes within one: half a minute against three. */
export function errorWeight(
  grid: Grid,
  k: number,
  intervalS: number,
  { errorNow, errorAhead, fadeS }: LiveWeights,
): number {
  const leadS = ((grid.at[k] + grid.at[k + 1] - 1) / 2) * intervalS;
  return frameShare(intervalS) * (errorAhead + (errorNow - errorAhead) * Math.exp(-leadS / fadeS));
}

function levelsOf(kit: Lattice, grid: Grid, funnel: Funnel, stops: number, presentIso: number) {
  const { stepsPerStop, apertureMin, apertureCount, shutterMin, shutterMax, isoMin, isoCount } = kit;
  const lowest = apertureMin + shutterMin - (isoMin + isoCount - 1);
  const highest = apertureMin + apertureCount - 1 + shutterMax - isoMin;
  const segments = grid.at.length - 1;
  const low = new Int32Array(segments + 1);
  const count = new Int32Array(segments + 1);
  const isoTop = new Int32Array(segments + 1);
  let base = Number.POSITIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < segments; k++) {
    const from = Math.max(lowest, Math.ceil((funnel.low[k] - stops) * stepsPerStop - 1e-9));
    const to = Math.min(highest, Math.floor((funnel.high[k] - stops) * stepsPerStop + 1e-9));
    if (to < from) continue;
    low[k] = from;
    count[k] = to - from + 1;
    // More ISO than the darkest of these needs with the longest time is never the better way to it, beyond the
    // one cue by which ISO may run ahead of need.
    const needed = apertureMin + shutterMin - isoMin - from + kit.largestStep;
    isoTop[k] = Math.min(isoCount - 1, Math.max(needed, presentIso, kit.largestStep));
    base = Math.min(base, from);
    top = Math.max(top, to);
  }
  low[segments] = low[segments - 1];
  count[segments] = count[segments - 1];
  isoTop[segments] = isoTop[segments - 1];
  return { low, count, isoTop, base: top < base ? 0 : base, width: Math.max(0, top - base + 1) };
}
