// The exact optimum, backward: what the rest of the evening costs from every setting at every frame.
//
// With c(i, s) the cost of standing at setting s on frame i, S the cue spacing and L the frames a filter
// change may spoil:
//
//   free(i, s)    = c(i, s) + min( free(i+1, s),  entered(i+1, s') + cue price,  filtered(i+1, s') + cue price )
//   entered(j, s)  = c(j, s) + … + c(j+S-2, s) + free(j+S-1, s)          s has just been set, and is held
//   filtered(j, s) = L spoilt frames + c(j+L, s) + … + free(j+max(S-1, L), s)
//
// over the settings s' one legal cue away. The held sums come from prefix sums of the targets and their
// squares, so a long spacing costs no more than a short one. No back pointers: the table is the policy.
// Every move is one `relax` of a row of ISOs against another row, because neighbours in ISO lie side by side.
// A plain restatement for tests: test/reference/exhaustive-ramp.ts.

import { Arrivals } from './arrivals.js';
import { filterPrice, type Lattice, netWindow, shutterAt } from './lattice.js';
import { relax, relaxBoth } from './relax.js';

/** Cost to go by frame, stack, aperture, level and ISO, in that order; Infinity where no ramp exists. */
export interface CostToGo {
  readonly cost: Float64Array;
  readonly base: Float64Array; // where (frame, stack) begins, at index frame * stackCount + stack
}

/** Prefix sums of the centred targets and of their squares, so that a held setting's error is one formula. */
export interface HeldErrors {
  /** Sum over frames from…to-1 of (exposure - target)². */
  sum(exposureEv: number, from: number, to: number): number;
}

export function heldErrors(target: Float64Array): HeldErrors {
  const mean = target.reduce((sum, ev) => sum + ev, 0) / target.length;
  const first = new Float64Array(target.length + 1);
  const second = new Float64Array(target.length + 1);
  for (let i = 0; i < target.length; i++) {
    const centred = target[i] - mean;
    first[i + 1] = first[i] + centred;
    second[i + 1] = second[i] + centred * centred;
  }
  return {
    sum(exposureEv, from, to) {
      const e = exposureEv - mean;
      const squares = (to - from) * e * e - 2 * e * (first[to] - first[from]) + second[to] - second[from];
      return Math.max(0, squares); // cancellation can leave a hair below zero
    },
  };
}

/**
 * Costs to go from every setting.
 *
 * @param afterFilter the table a filter change leads into: 'same' where their number is free, the table
 *   with one change fewer left where it is limited, undefined where none may be made
 */
export function costToGo(
  lattice: Lattice,
  held: HeldErrors,
  afterFilter: CostToGo | 'same' | undefined,
): CostToGo {
  const { frameCount, stops, isoCount, apertureCount, largestStep, band, price, stepsPerStop } = lattice;
  const base = new Float64Array(frameCount * stops.length);
  let cells = 0;
  for (let at = 0; at < base.length; at++) {
    base[at] = cells;
    cells += band.count[at] * apertureCount * isoCount;
  }
  const cost = new Float64Array(cells).fill(Number.POSITIVE_INFINITY);
  const table: CostToGo = { cost, base };
  const anew = new Float64Array(Math.max(1, band.tallest));
  const source = afterFilter === 'same' ? table : afterFilter;
  const entered = new Arrivals(lattice, lattice.hold.tallest);
  const filtered = new Arrivals(lattice, lattice.landing.tallest);
  const swaps = source === undefined || stops.length === 1 ? undefined : swapsOf(lattice);

  for (let frame = frameCount - 1; frame >= 0; frame--) {
    if (frame < frameCount - 1) {
      entered.fill(table, held, frame + 1, 0);
      if (swaps !== undefined) {
        filtered.fill(source!, held, frame + 1, lattice.lost);
        filtered.summarise();
      }
    }
    for (let stack = 0; stack < stops.length; stack++) {
      for (let aperture = 0; aperture < apertureCount; aperture++) sweep(frame, stack, aperture);
    }
  }
  return table;

  /** free(frame, s) for every level and ISO of one stack and aperture. */
  function sweep(frame: number, stack: number, aperture: number): void {
    const at = frame * stops.length + stack;
    const low = band.low[at];
    const levels = band.count[at];
    const first = base[at] + aperture * levels * isoCount;
    if (frame === frameCount - 1) cost.fill(0, first, first + levels * isoCount);
    else {
      for (let level = low; level < low + levels; level++) {
        const row = first + (level - low) * isoCount;
        stay(row, frame + 1, stack, aperture, level);
        turnDial(row, stack, aperture, level);
      }
    }
    // What no setting of a level need cost more than, because a filter change sets shutter and ISO anew.
    anew.fill(Number.POSITIVE_INFINITY);
    if (swaps !== undefined && frame < frameCount - 1)
      changeFilter(swaps[stack], first, low, levels, aperture);
    for (let i = 0; i < levels; i++) stand(frame, stack, aperture, low + i, first + i * isoCount, anew[i]);
  }

  /** Adds what the frame itself costs, where the setting's shutter is on the dial. */
  function stand(
    frame: number,
    stack: number,
    aperture: number,
    level: number,
    row: number,
    most: number,
  ): void {
    const error = level / stepsPerStop + stops[stack] - lattice.target[frame];
    const standing = price.error * error * error;
    const time = shutterAt(lattice, aperture, level) - lattice.shutterMin;
    const from = Math.min(isoCount, Math.max(0, -time));
    const end = Math.max(from, Math.min(isoCount, lattice.shutterMax - lattice.shutterMin + 1 - time));
    for (let i = 0; i < from; i++) cost[row + i] = Number.POSITIVE_INFINITY;
    for (let i = from; i < end; i++) {
      cost[row + i] = Math.min(cost[row + i], most) + standing + price.time[time + i] + price.iso[i];
    }
    for (let i = end; i < isoCount; i++) cost[row + i] = Number.POSITIVE_INFINITY;
  }

  function stay(row: number, next: number, stack: number, aperture: number, level: number): void {
    const at = next * stops.length + stack;
    const inBand = level - band.low[at];
    if (inBand < 0 || inBand >= band.count[at]) return;
    const from = base[at] + (aperture * band.count[at] + inBand) * isoCount;
    for (let i = 0; i < isoCount; i++) cost[row + i] = cost[from + i];
  }

  /** One dial by 1…m steps: shutter or ISO to another level at this aperture, or the aperture. */
  function turnDial(row: number, stack: number, aperture: number, level: number): void {
    const { rows, low } = entered;
    const lowest = low[stack];
    const highest = lowest + entered.count[stack] - 1;
    for (let step = 1; step <= largestStep; step++) {
      const shift = Math.min(step, isoCount); // a row further is all padding
      if (level + step >= lowest && level + step <= highest) {
        const up = entered.at(stack, aperture, level + step);
        relaxBoth(cost, row, rows, up, up - shift, isoCount, price.shorter, price.isoDown);
        if (aperture + step < apertureCount) {
          relax(cost, row, rows, entered.at(stack, aperture + step, level + step), isoCount, price.narrower);
        }
      }
      if (level - step >= lowest && level - step <= highest) {
        const down = entered.at(stack, aperture, level - step);
        relaxBoth(cost, row, rows, down, down + shift, isoCount, price.longer, price.isoUp);
        if (aperture >= step) {
          relax(cost, row, rows, entered.at(stack, aperture - step, level - step), isoCount, price.wider);
        }
      }
    }
  }

  /**
   * Another stack, with shutter or ISO or both set anew beside it. Setting both anew is open to every ISO alike,
   * so it bounds a whole level (`anew`). The ways that spare a dial pay only where an arrival lies below that
   * bound; those few arrivals are offered to every setting they can be reached from.
   */
  function changeFilter(
    away: readonly Swap[],
    first: number,
    low: number,
    levels: number,
    aperture: number,
  ): void {
    const { rows, least, nearFrom, nearTo } = filtered;
    const high = low + levels - 1;
    const both = price.shutterReset + price.isoReset;
    for (const swap of away) {
      const lowest = filtered.low[swap.to];
      for (let x = lowest; x < lowest + filtered.count[swap.to]; x++) {
        const cheapest = least[filtered.row(swap.to, aperture, x)] + swap.price + both;
        const to = Math.min(high, x - swap.low);
        for (let level = Math.max(low, x - swap.high); level <= to; level++) {
          if (cheapest < anew[level - low]) anew[level - low] = cheapest;
        }
      }
    }
    for (const swap of away) {
      const lowest = filtered.low[swap.to];
      for (let x = lowest; x < lowest + filtered.count[swap.to]; x++) {
        const line = filtered.row(swap.to, aperture, x);
        const from = Math.max(low, x - swap.high);
        const to = Math.min(high, x - swap.low);
        let bound = Number.NEGATIVE_INFINITY;
        for (let level = from; level <= to; level++) if (anew[level - low] > bound) bound = anew[level - low];
        if (least[line] + swap.price >= bound) continue;
        for (let iso = nearFrom[line]; iso <= nearTo[line]; iso++) {
          const arrival = rows[filtered.first(line) + iso] + swap.price;
          if (arrival < bound) offer(arrival, first + iso, x, from, to, low, iso);
        }
      }
    }
  }

  /** An arrival at level x and some ISO, for every level from…to before it. */
  function offer(
    arrival: number,
    column: number,
    x: number,
    from: number,
    to: number,
    low: number,
    iso: number,
  ) {
    for (let level = from; level <= to; level++) {
      // The same ISO with the shutter set anew; at the same level not even the shutter moves.
      const same = column + (level - low) * isoCount;
      const shutterAnew = level === x ? arrival : arrival + price.shutterReset;
      if (shutterAnew < cost[same]) cost[same] = shutterAnew;
      // The same shutter with ISO set anew, which takes up the difference in level.
      const shift = x - level;
      if (shift === 0 || iso + shift < 0 || iso + shift >= isoCount) continue;
      const isoAnew = arrival + price.isoReset;
      if (isoAnew < cost[same + shift]) cost[same + shift] = isoAnew;
    }
  }
}

/** A change from one stack to another: its price, and how far its level may lie from the one before. */
interface Swap {
  readonly to: number;
  readonly price: number;
  readonly low: number;
  readonly high: number;
}

/** Swaps by the stack they leave. */
function swapsOf(lattice: Lattice): Swap[][] {
  const stacks = lattice.stops.map((_, stack) => stack);
  return stacks.map((from) =>
    stacks
      .filter((to) => to !== from)
      .map((to) => ({ to, price: filterPrice(lattice, from, to), ...netWindow(lattice, from, to, 0) })),
  );
}
