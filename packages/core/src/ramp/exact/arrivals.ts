// What it costs to arrive at each setting by a cue at one frame, and be held there as long as the rules want.

import { type Lattice, shutterAt } from '../lattice.js';
import type { HeldErrors } from './held.js';
import { type CostToGo, cellOf } from './table.js';

/** Costs of arrival by stack, aperture, level and ISO, in rows as the table's; `spent` comes on top of each. */
export class Arrivals {
  rows: Float64Array;
  /** The cheapest ISO of each row. */
  least: Float64Array;
  readonly low: Int32Array; // lowest level, by stack
  readonly count: Int32Array; // levels, by stack; 0 where none
  /** What the frames a filter change may spoil cost, whatever the setting. */
  spent = 0;
  private readonly lattice: Lattice;
  private readonly table: CostToGo;
  private readonly held: HeldErrors;
  private readonly first: Int32Array; // row of the lowest level of a stack at aperture 0
  private readonly height: Int32Array; // rows of an aperture, by stack
  private readonly own: Float64Array; // rows of settings that have been held for some frames
  private readonly ownLeast: Float64Array;

  constructor(lattice: Lattice, held: HeldErrors, table: CostToGo, tallest: number) {
    const rowCount = lattice.stops.length * lattice.apertureCount * Math.max(1, tallest);
    this.lattice = lattice;
    this.held = held;
    this.table = table;
    this.own = new Float64Array(cellOf(table, rowCount)).fill(Number.POSITIVE_INFINITY);
    this.ownLeast = new Float64Array(rowCount);
    this.rows = this.own;
    this.least = this.ownLeast;
    this.first = new Int32Array(lattice.stops.length);
    this.height = new Int32Array(lattice.stops.length);
    this.low = new Int32Array(lattice.stops.length);
    this.count = new Int32Array(lattice.stops.length);
  }

  /** The row of a level. */
  row(stack: number, aperture: number, level: number): number {
    return this.first[stack] + aperture * this.height[stack] + level - this.low[stack];
  }

  /** Arrivals at frame j, the first `spoilt` frames of which are not judged. */
  reckon(j: number, spoilt: number): void {
    const { lattice, table, low, count, first, height } = this;
    const { frameCount, stops, apertureCount, spacing, band } = lattice;
    const judged = j + spoilt;
    const free = Math.min(j + Math.max(spacing - 1, spoilt), frameCount - 1);
    const bands = spoilt > 0 ? lattice.landing : lattice.hold;
    const freeAtOnce = free <= judged; // the table's own rows will do
    this.spent = spoilt * lattice.price.affectedFrame;
    this.rows = freeAtOnce ? table.cost : this.own;
    this.least = freeAtOnce ? table.least : this.ownLeast;
    let next = 0;
    for (let stack = 0; stack < stops.length; stack++) {
      count[stack] = judged < frameCount ? bands.count[j * stops.length + stack] : 0;
      low[stack] = bands.low[j * stops.length + stack];
      if (count[stack] === 0) continue;
      const freeAt = free * stops.length + stack;
      if (freeAtOnce) {
        first[stack] = table.firstRow[freeAt] + low[stack] - band.low[freeAt];
        height[stack] = band.count[freeAt];
      } else {
        first[stack] = next;
        height[stack] = count[stack];
        next += apertureCount * count[stack];
        this.hold(stack, judged, free);
      }
    }
  }

  /** Rows of a stack whose settings stand from frame `judged` until they are free. */
  private hold(stack: number, judged: number, free: number): void {
    const { lattice, table, own, ownLeast, held } = this;
    const { stops, apertureCount, isoCount, price, stepsPerStop, band } = lattice;
    const freeAt = free * stops.length + stack;
    for (let aperture = 0; aperture < apertureCount; aperture++) {
      for (let n = 0; n < this.count[stack]; n++) {
        const level = this.low[stack] + n;
        const errors = price.error * held.sum(level / stepsPerStop + stops[stack], judged, free);
        const after = table.firstRow[freeAt] + aperture * band.count[freeAt] + level - band.low[freeAt];
        const row = this.row(stack, aperture, level);
        const from = cellOf(table, after);
        const to = cellOf(table, row);
        const time = shutterAt(lattice, aperture, level) - lattice.shutterMin;
        const isoFrom = Math.max(0, 0 - time);
        const isoTo = Math.min(isoCount - 1, lattice.shutterMax - lattice.shutterMin - time);
        let least = Number.POSITIVE_INFINITY;
        own.fill(Number.POSITIVE_INFINITY, to, to + isoCount);
        for (let iso = isoFrom; iso <= isoTo; iso++) {
          const standing = price.time[time + iso] + price.iso[iso];
          const cost = table.cost[from + iso] + errors + (free - judged) * standing;
          own[to + iso] = cost;
          if (cost < least) least = cost;
        }
        ownLeast[row] = least;
      }
    }
  }
}
