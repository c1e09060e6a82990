// What an exposure costs on a stretch of frames ahead, by level: the square of its error, weighed less the
// farther ahead it lies, and more beyond tolerance. Errors far ahead weigh less because the light there is not
// known so well; the price of a cue does not fade, or cues would be put off for ever.

import type { Bands } from '../band.js';
import { type ErrorCosts, heldThrough } from '../exact/course.js';

import type { Grid } from '../grid.js';
import { frameShare, type Lattice } from '../lattice.js';

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

/** Costs of levels, summed over the segments before each. */
export class LiveErrors implements ErrorCosts {
  private readonly grid: Grid;
  private readonly stacks: readonly StackErrors[];

  constructor(
    lattice: Lattice,
    grid: Grid,
    band: Bands,
    target: ArrayLike<number>,
    intervalS: number,
    weights: LiveWeights,
  ) {
    const sums = weighedSums(grid, target, intervalS, weights);
    const beyondTolerance = frameShare(intervalS) * weights.beyondTolerance;
    this.grid = grid;
    this.stacks = lattice.stops.map((_, stack) => stackErrors(lattice, stack, band, sums, beyondTolerance));
  }

  // Far from the target, two filter changes would else be the cheapest way back: the frames they affect would cost less
  // than errors do, and a filter would come off and go on again.
  readonly judgesAffected = true;

  over(k: number, stack: number, level: number): number {
    const { base, width, spent } = this.stacks[stack];
    const at = k * width + level - base;
    return spent[at + width] - spent[at];
  }

  held(k: number, stack: number, level: number, filter: boolean): number {
    const { base, width, spent } = this.stacks[stack];
    const column = level - base;
    return spent[heldThrough(this.grid, k, filter) * width + column] - spent[k * width + column];
  }
}

/** Costs of one stack's levels. */
interface StackErrors {
  /** Level that column 0 of `spent` stands for. */
  readonly base: number;
  readonly width: number;
  /** Cost of standing at a level from segment 0 to before segment k, at index k * width + level - base. */
  readonly spent: Float64Array;
}

function stackErrors(
  { stops, stepsPerStop, toleranceEv }: Lattice,
  stack: number,
  { low, count }: Bands,
  sums: Sums,
  beyondTolerance: number,
): StackErrors {
  const segments = sums.frames.length;
  let base = Number.POSITIVE_INFINITY;
  let end = Number.NEGATIVE_INFINITY;
  for (let k = 0, at = stack; k < segments; k++, at += stops.length) {
    if (count[at] === 0) continue;
    base = Math.min(base, low[at]);
    end = Math.max(end, low[at] + count[at]);
  }
  const width = Math.max(0, end - base);
  const spent = new Float64Array((segments + 1) * width);
  for (let k = 0, at = 0; k < segments; k++) {
    const beyondPrice = sums.frames[k] * beyondTolerance;
    for (let column = 0; column < width; column++, at++) {
      const errorEv = (base + column) / stepsPerStop + stops[stack] - sums.mean[k];
      const beyond = Math.max(0, Math.abs(errorEv) - toleranceEv);
      spent[at + width] =
        spent[at] + sums.weight[k] * errorEv * errorEv + sums.scatter[k] + beyondPrice * beyond * beyond;
    }
  }
  return { base, width, spent };
}

type Sums = ReturnType<typeof weighedSums>;

/** By segment: its frames, their summed weight and mean target, and what their scatter about it costs. */
function weighedSums(grid: Grid, target: ArrayLike<number>, intervalS: number, weights: LiveWeights) {
  const segments = grid.at.length - 1;
  const frames = new Float64Array(segments);
  const weight = new Float64Array(segments);
  const mean = new Float64Array(segments);
  const scatter = new Float64Array(segments);
  for (let k = 0; k < segments; k++) {
    frames[k] = grid.at[k + 1] - grid.at[k];
    if (frames[k] === 0) continue;
    const each = errorWeight(grid, k, intervalS, weights);
    let sum = 0;
    for (let frame = grid.at[k]; frame < grid.at[k + 1]; frame++) sum += target[frame];
    mean[k] = sum / frames[k];
    for (let frame = grid.at[k]; frame < grid.at[k + 1]; frame++) {
      scatter[k] += each * (target[frame] - mean[k]) ** 2;
    }
    weight[k] = each * frames[k];
  }
  return { frames, weight, mean, scatter };
}

/** What a squared stop costs on each frame of a segment. It hardly changes within one: half a minute against three. */
export function errorWeight(
  grid: Pick<Grid, 'at'>,
  k: number,
  intervalS: number,
  { errorNow, errorAhead, fadeS }: LiveWeights,
): number {
  const leadS = ((grid.at[k] + grid.at[k + 1] - 1) / 2) * intervalS;
  return frameShare(intervalS) * (errorAhead + (errorNow - errorAhead) * Math.exp(-leadS / fadeS));
}
