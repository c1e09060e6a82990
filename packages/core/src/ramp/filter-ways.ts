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
  private readonly arrivals: Arrivals;
  private readonly swaps: readonly (readonly Swap[])[];
  private readonly tallest: number;
  // By stack, aperture and level: the cheapest ISO, and the first and last that is dearer by less than setting
  // both dials anew.
  private readonly least: Float64Array;
  private readonly nearFrom: Int32Array;
  private readonly nearTo: Int32Array;

  constructor(lattice: Lattice, held: HeldErrors, after: CostToGo) {
    this.anew = new Float64Array(Math.max(1, lattice.band.tallest));
    this.lattice = lattice;
    this.arrivals = new Arrivals(lattice, held, after, lattice.landing.tallest);
    this.swaps = swapsOf(lattice);
    this.tallest = Math.max(1, lattice.landing.tallest);
    const rowCount = lattice.stops.length * lattice.apertureCount * this.tallest;
    this.least = new Float64Array(rowCount);
    this.nearFrom = new Int32Array(rowCount);
    this.nearTo = new Int32Array(rowCount);
  }

  /** Reckons the arrivals of a filter change at frame j, and what is cheap among them. */
  arriveAt(j: number): void {
    const { arrivals, lattice, least, nearFrom, nearTo } = this;
    const { stops, apertureCount, isoCount, price } = lattice;
    arrivals.reckon(j, lattice.lost);
    const { rows, spent } = arrivals;
    const both = price.shutterReset + price.isoReset;
    for (let stack = 0; stack < stops.length; stack++) {
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        for (let n = 0; n < arrivals.count[stack]; n++) {
          const at = arrivals.at(stack, aperture, arrivals.low[stack] + n);
          let cheapest = Number.POSITIVE_INFINITY;
          for (let iso = 0; iso < isoCount; iso++) if (rows[at + iso] < cheapest) cheapest = rows[at + iso];
          let from = 0;
          let to = isoCount - 1;
          if (cheapest < Number.POSITIVE_INFINITY) {
            while (rows[at + from] >= cheapest + both) from++;
            while (rows[at + to] >= cheapest + both) to--;
          } else to = -1;
          const line = this.line(stack, aperture) + n;
          least[line] = cheapest + spent;
          nearFrom[line] = from;
          nearTo[line] = to;
        }
      }
    }
  }

  /** Makes the costs of some levels of a stack cheaper, from `first` on, and fills `anew` for them. */
  offer(
    { cost, stride }: CostToGo,
    first: number,
    stack: number,
    aperture: number,
    low: number,
    levels: number,
  ): void {
    const { anew, arrivals, lattice, least, nearFrom, nearTo } = this;
    const { isoCount, price } = lattice;
    const { rows, spent } = arrivals;
    const high = low + levels - 1;
    const both = price.shutterReset + price.isoReset;
    const swaps = this.swaps[stack];
    anew.fill(Number.POSITIVE_INFINITY);
    for (let s = 0; s < swaps.length; s++) {
      const swap = swaps[s];
      const lowest = arrivals.low[swap.to];
      const line = this.line(swap.to, aperture);
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
      const line = this.line(swap.to, aperture);
      for (let n = 0; n < arrivals.count[swap.to]; n++) {
        const x = lowest + n;
        const from = Math.max(low, x - swap.high);
        const to = Math.min(high, x - swap.low);
        let bound = Number.NEGATIVE_INFINITY;
        for (let level = from; level <= to; level++) if (anew[level - low] > bound) bound = anew[level - low];
        if (least[line + n] + swap.price >= bound) continue;
        const here = arrivals.at(swap.to, aperture, x);
        for (let iso = nearFrom[line + n]; iso <= nearTo[line + n]; iso++) {
          const arrival = rows[here + iso] + spent + swap.price;
          if (arrival >= bound) continue;
          for (let level = from; level <= to; level++) {
            // The same ISO with the shutter set anew; at the same level not even the shutter moves.
            const same = first + (level - low) * stride + iso;
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

  private line(stack: number, aperture: number): number {
    return (stack * this.lattice.apertureCount + aperture) * this.tallest;
  }
}
