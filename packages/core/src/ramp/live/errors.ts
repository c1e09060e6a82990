// What an exposure costs on a stretch of frames ahead, by level: the square of its error, weighed less the
// farther ahead it lies, and more beyond tolerance. Errors far ahead weigh less because the light there is not
// known so well; the price of a cue does not fade, or cues would be put off for ever.

import type { Grid } from '../grid.js';
import { frameShare, type Lattice } from '../lattice.js';
import type { Funnel } from './funnel.js';

/** How errors are priced. */
export interface LiveWeights {
  /** Per squared stop and five seconds, at the next frame; and far ahead. */
  readonly errorNow: number;
  readonly errorAhead: number;
  /** Lead time in which the first fades to the second, to 1/e. */
  readonly fadeS: number;
  /** Per squared stop beyond tolerance and five seconds, at any lead. */
  readonly beyondTolerance: number;
  /** Share of its price that a cue of dials must save for each second that it might wait, to come now. */
  readonly hysteresisPerS: number;
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

/** Which ISOs are looked at. */
export interface IsoRange {
  readonly presentIso: number; // index; always among them
  /** Whether behind a filter ISO is looked at only as far as beside it a weaker one would soon be the better way. */
  readonly filtersComeOff: boolean;
}

/** Stops of ISO that a filter is worth keeping for: dearer than taking it off within a quarter of an hour. */
const ISO_BEHIND_FILTER_EV = 2;

export function stackErrors(
  kit: Lattice,
  grid: Grid,
  funnel: Funnel,
  target: ArrayLike<number>,
  { intervalS, weights, ...isoRange }: { intervalS: number; weights: LiveWeights } & IsoRange,
): StackErrors[] {
  const sums = weighedSums(grid, target, intervalS, weights);
  return kit.stops.map((stops) => {
    const { low, count, isoTop, base, width } = levelsOf(kit, grid, funnel, stops, isoRange);
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

function levelsOf(
  kit: Lattice,
  grid: Grid,
  funnel: Funnel,
  stops: number,
  { presentIso, filtersComeOff }: IsoRange,
) {
  const { stepsPerStop, apertureMin, apertureCount, shutterMin, shutterMax, isoMin, isoCount } = kit;
  const highest = apertureMin + apertureCount - 1 + shutterMax - isoMin;
  // To take a filter off, or one for a weaker, shutter and ISO must be able to make up for it.
  const inHand = shutterMax - shutterMin + isoCount - 1 + kit.largestStep;
  const weaker = kit.stops.filter((each) => each < stops && (stops - each) * stepsPerStop <= inHand);
  const worthKeeping = ISO_BEHIND_FILTER_EV * stepsPerStop;
  const segments = grid.at.length - 1;
  const low = new Int32Array(segments + 1);
  const count = new Int32Array(segments + 1);
  const isoTop = new Int32Array(segments + 1);
  let base = Number.POSITIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < segments; k++) {
    // More ISO than the darkest level needs with the longest time is never the better way to it, beyond the one
    // cue by which ISO may run ahead of need.
    const needed = isoFor(levelFrom(funnel.low[k], stops));
    // The weakest that renders the brightest of it, too.
    const instead = filtersComeOff
      ? weaker.find((each) => (funnel.high[k] - each) * stepsPerStop <= highest)
      : undefined;
    const behind = instead === undefined ? needed : isoFor(levelFrom(funnel.low[k], instead)) + worthKeeping;
    const useful = Math.min(needed, behind) + kit.largestStep;
    isoTop[k] = Math.min(isoCount - 1, Math.max(useful, presentIso, kit.largestStep));
    const from = Math.max(apertureMin + shutterMin - (isoMin + isoTop[k]), levelFrom(funnel.low[k], stops));
    const to = Math.min(highest, Math.floor((funnel.high[k] - stops) * stepsPerStop + 1e-9));
    if (to < from) continue;
    low[k] = from;
    count[k] = to - from + 1;
    base = Math.min(base, from);
    top = Math.max(top, to);
  }
  low[segments] = low[segments - 1];
  count[segments] = count[segments - 1];
  isoTop[segments] = isoTop[segments - 1];
  return { low, count, isoTop, base: top < base ? 0 : base, width: Math.max(0, top - base + 1) };

  function levelFrom(ev: number, stackStops: number): number {
    return Math.ceil((ev - stackStops) * stepsPerStop - 1e-9);
  }

  /** ISO index that renders a level with the widest aperture and the longest time; below 0 where none is needed. */
  function isoFor(level: number): number {
    return apertureMin + shutterMin - isoMin - level;
  }
}
