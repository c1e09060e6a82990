// Another filter stack, with shutter or ISO or both reset beside it.

import { type Lattice, standingRow } from '../lattice.js';
import { type Swap, swapsOf } from '../swaps.js';
import { Arrivals } from './arrivals.js';
import type { Course } from './course.js';
import { type CostToGo, cellOf } from './table.js';

/**
 * The ways on by a filter change at one segment. Resetting both dials is open to every ISO alike, so it bounds a
 * whole level (`bothReset`). The ways that spare a dial pay only where an arrival lies below that bound; those few
 * arrivals are offered to every setting they can be reached from.
 */
export class FilterWays {
  /** By level, counted from the lowest last asked for: the cheapest way with both dials reset. */
  readonly bothReset: Float64Array;
  /** The most that sparing a dial can save against `bothReset`. */
  private readonly spare: number;
  private readonly lattice: Lattice;
  private readonly arrivals: Arrivals;
  private readonly table: CostToGo;
  private readonly swaps: readonly (readonly Swap[])[];
  private readonly both: number; // price of resetting shutter and ISO
  private readonly tallest: number;
  // By stack, aperture and level: the first and the last ISO that is dearer than the cheapest by less than `spare`.
  private readonly nearFrom: Int32Array;
  private readonly nearTo: Int32Array;

  constructor(course: Course, table: CostToGo, after: CostToGo) {
    const { lattice, band, landing } = course;
    this.bothReset = new Float64Array(Math.max(1, band.tallest));
    this.lattice = lattice;
    this.arrivals = new Arrivals(course, after, true);
    this.table = table;
    this.swaps = swapsOf(lattice);
    this.both = lattice.price.shutterReset + lattice.price.isoReset;
    const weak = this.swaps.some((ways) => ways.some(({ low, high }) => low <= 0 && high >= 0));
    this.spare = weak ? this.both : Math.max(lattice.price.shutterReset, lattice.price.isoReset);
    this.tallest = Math.max(1, landing.tallest);
    const lineCount = lattice.stops.length * lattice.apertureCount * this.tallest;
    this.nearFrom = new Int32Array(lineCount);
    this.nearTo = new Int32Array(lineCount);
  }

  /** Computes the arrivals of a filter change at segment k, and where the cheap ones lie. */
  arriveAt(k: number): void {
    const { arrivals, lattice, nearFrom, nearTo, spare, table } = this;
    const { stops, apertureCount, isoCount } = lattice;
    arrivals.arriveAt(k);
    const { rows, least } = arrivals;
    for (let stack = 0; stack < stops.length; stack++) {
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        for (let n = 0; n < arrivals.count[stack]; n++) {
          const row = arrivals.row(stack, aperture, arrivals.low[stack] + n);
          const most = least[row] + spare;
          if (most === Number.POSITIVE_INFINITY) continue;
          const at = cellOf(table, row);
          let from = 0;
          let to = isoCount - 1;
          while (from < to && rows[at + from] >= most) from++;
          while (from < to && rows[at + to] >= most) to--;
          nearFrom[this.line(stack, aperture) + n] = from;
          nearTo[this.line(stack, aperture) + n] = to;
        }
      }
    }
  }

  /** Fills `bothReset` for some levels of a stack. */
  resetBoth(stack: number, aperture: number, low: number, levels: number): void {
    const { bothReset, arrivals, both } = this;
    const { least, spent } = arrivals;
    const swaps = this.swaps[stack];
    for (let n = 0; n < levels; n++) bothReset[n] = Number.POSITIVE_INFINITY;
    for (let s = 0; s < swaps.length; s++) {
      const swap = swaps[s];
      const lowest = arrivals.low[swap.to] - low;
      const row = arrivals.row(swap.to, aperture, arrivals.low[swap.to]);
      for (let n = 0; n < arrivals.count[swap.to]; n++) {
        const cheapest = least[row + n] + spent + swap.price + both;
        const to = Math.min(levels - 1, lowest + n - swap.low);
        for (let at = Math.max(0, lowest + n - swap.high); at <= to; at++) {
          if (cheapest < bothReset[at]) bothReset[at] = cheapest;
        }
      }
    }
  }

  /**
   * Makes those levels' rows, which begin with `first` and already hold `bothReset`, cheaper where a dial may be spared.
   *
   * @param errors what each level's error costs in the segment
   * @param standing what its settings cost there; as price.standing
   */
  spareDials(
    errors: Float64Array,
    standing: Float64Array,
    stack: number,
    aperture: number,
    low: number,
    levels: number,
    first: number,
  ): void {
    const { bothReset, arrivals, lattice, nearFrom, nearTo, table } = this;
    const { isoCount, price } = lattice;
    const { rows, least, spent } = arrivals;
    const { cost } = table;
    const swaps = this.swaps[stack];
    const standingLow = standingRow(lattice, stack, aperture, low);
    for (let s = 0; s < swaps.length; s++) {
      const swap = swaps[s];
      const lowest = arrivals.low[swap.to] - low;
      const row = arrivals.row(swap.to, aperture, arrivals.low[swap.to]);
      const line = this.line(swap.to, aperture);
      const extra = spent + swap.price;
      for (let n = 0; n < arrivals.count[swap.to]; n++) {
        const x = lowest + n;
        const from = Math.max(0, x - swap.high);
        const to = Math.min(levels - 1, x - swap.low);
        const there = cellOf(table, row + n);
        for (let at = from; at <= to; at++) {
          const shift = x - at;
          // At the same level, with the same ISO, not even the shutter moves.
          const shutterReset = shift === 0 ? 0 : price.shutterReset;
          if (least[row + n] + extra + Math.min(shutterReset, price.isoReset) >= bothReset[at]) continue;
          const paid = extra + errors[at];
          const here = cellOf(table, first + at);
          let cheapest = table.least[first + at];
          const standingAt = standingLow + at * isoCount;
          for (let iso = nearFrom[line + n]; iso <= nearTo[line + n]; iso++) {
            const arrival = rows[there + iso] + paid;
            // The same ISO with the shutter reset.
            const byShutter = arrival + shutterReset + standing[standingAt + iso];
            if (byShutter < cost[here + iso]) cost[here + iso] = byShutter;
            if (byShutter < cheapest) cheapest = byShutter;
            // The same shutter with ISO reset, which takes up the difference in level.
            const to = iso + shift;
            if (shift === 0 || to < 0 || to >= isoCount) continue;
            const byIso = arrival + price.isoReset + standing[standingAt + to];
            if (byIso < cost[here + to]) cost[here + to] = byIso;
            if (byIso < cheapest) cheapest = byIso;
          }
          table.least[first + at] = cheapest;
        }
      }
    }
  }

  private line(stack: number, aperture: number): number {
    return (stack * this.lattice.apertureCount + aperture) * this.tallest;
  }
}
