// Another filter stack, with shutter or ISO or both set anew beside it.

import { Arrivals } from './arrivals.js';
import type { HeldErrors } from './held.js';
import type { Lattice } from './lattice.js';
import { type Swap, swapsOf } from './swaps.js';
import type { CostToGo } from './table.js';

/**
 * The ways on by a filter change at one frame. Setting both dials anew is open to every ISO alike, so it bounds a
 * whole level (`anew`). The ways that spare a dial pay only where an arrival lies below that bound; those few
 * arrivals are offered to every setting they can be reached from.
 */
export class FilterWays {
  /** By level, counted from the lowest last offered to: the cheapest way with both dials set anew. */
  readonly anew: Float64Array;
  private readonly lattice: Lattice;
  private readonly held: HeldErrors;
  private readonly after: CostToGo;
  private readonly arrivals: Arrivals;
  private readonly swaps: readonly (readonly Swap[])[];

  constructor(lattice: Lattice, held: HeldErrors, after: CostToGo) {
    this.anew = new Float64Array(Math.max(1, lattice.band.tallest));
    this.lattice = lattice;
    this.held = held;
    this.after = after;
    this.arrivals = new Arrivals(lattice, lattice.landing.tallest);
    this.swaps = swapsOf(lattice);
  }

  /** Reckons the arrivals of a filter change at frame j. */
  arriveAt(j: number): void {
    this.arrivals.fill(this.after, this.held, j, this.lattice.lost);
    this.arrivals.summarise();
  }

  /** Makes the costs of some levels of a stack cheaper, from `first` on, and fills `anew` for them. */
  offer(
    cost: Float64Array,
    first: number,
    stack: number,
    aperture: number,
    low: number,
    levels: number,
  ): void {
    const { anew, arrivals, lattice } = this;
    const { isoCount, price } = lattice;
    const { rows, least, nearFrom, nearTo } = arrivals;
    const high = low + levels - 1;
    const both = price.shutterReset + price.isoReset;
    const swaps = this.swaps[stack];
    anew.fill(Number.POSITIVE_INFINITY);
    for (let s = 0; s < swaps.length; s++) {
      const swap = swaps[s];
      const lowest = arrivals.low[swap.to];
      const line = arrivals.row(swap.to, aperture, lowest);
      for (let n = 0; n < arrivals.count[swap.to]; n++) {
        const cheapest = least[line + n] + swap.price + both;
        const to = Math.min(high, lowest + n - swap.low);
        for (let level = Math.max(low, lowest + n - swap.high); level <= to; level++) {
          if (cheapest < anew[level - low]) anew[level - low] = cheapest;
        }
      }
    }
    for (let s = 0; s < swaps.length; s++) {
      const swap = swaps[s];
      const lowest = arrivals.low[swap.to];
      const line = arrivals.row(swap.to, aperture, lowest);
      for (let n = 0; n < arrivals.count[swap.to]; n++) {
        const x = lowest + n;
        const from = Math.max(low, x - swap.high);
        const to = Math.min(high, x - swap.low);
        let bound = Number.NEGATIVE_INFINITY;
        for (let level = from; level <= to; level++) if (anew[level - low] > bound) bound = anew[level - low];
        if (least[line + n] + swap.price >= bound) continue;
        const here = arrivals.first(line + n);
        for (let iso = nearFrom[line + n]; iso <= nearTo[line + n]; iso++) {
          const arrival = rows[here + iso] + swap.price;
          if (arrival >= bound) continue;
          for (let level = from; level <= to; level++) {
            // The same ISO with the shutter set anew; at the same level not even the shutter moves.
            const same = first + (level - low) * isoCount + iso;
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
    }
  }
}
