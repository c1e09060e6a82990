// What it costs to arrive at each setting by a cue at one frame, and be held there as long as the rules want.

import type { HeldErrors } from './held.js';
import { type Lattice, shutterAt } from './lattice.js';
import type { CostToGo } from './table.js';

/** Costs of arrival by stack, aperture, level and ISO, in rows as the table's; `spent` comes on top of each. */
export class Arrivals {
  rows: Float64Array;
  readonly low: Int32Array; // lowest level, by stack
  readonly count: Int32Array; // levels, by stack; 0 where none
  /** What the frames a filter change may spoil cost, whatever the setting. */
  spent = 0;
  private readonly lattice: Lattice;
  private readonly table: CostToGo;
  private readonly held: HeldErrors;
  private readonly first: Float64Array; // where the lowest level of a stack and aperture 0 begins
  private readonly own: Float64Array; // rows of settings that have been held for some frames

  constructor(lattice: Lattice, held: HeldErrors, table: CostToGo, tallest: number) {
    const rowCount = lattice.stops.length * lattice.apertureCount * Math.max(1, tallest);
    this.lattice = lattice;
    this.held = held;
    this.table = table;
    this.own = new Float64Array(table.pad + rowCount * table.stride).fill(Number.POSITIVE_INFINITY);
    this.rows = this.own;
    this.first = new Float64Array(lattice.stops.length);
    this.low = new Int32Array(lattice.stops.length);
    this.count = new Int32Array(lattice.stops.length);
  }

  /** Where the lowest ISO of a level lies in `rows`. */
  at(stack: number, aperture: number, level: number): number {
    return this.first[stack] + (aperture * this.height(stack) + level - this.low[stack]) * this.table.stride;
  }

  /** Arrivals at frame j, the first `spoilt` frames of which are not judged. */
  reckon(j: number, spoilt: number): void {
    const { lattice, table, low, count, first } = this;
    const { frameCount, stops, apertureCount, spacing } = lattice;
    const judged = j + spoilt;
    const free = Math.min(j + Math.max(spacing - 1, spoilt), frameCount - 1);
    const bands = spoilt > 0 ? lattice.landing : lattice.hold;
    this.spent = spoilt * lattice.price.affectedFrame;
    this.heldFrames = free - judged;
    this.freeAt = free * stops.length;
    this.rows = this.heldFrames > 0 ? this.own : table.cost;
    let next = table.pad;
    for (let stack = 0; stack < stops.length; stack++) {
      count[stack] = judged < frameCount ? bands.count[j * stops.length + stack] : 0;
      low[stack] = bands.low[j * stops.length + stack];
      if (count[stack] === 0) continue;
      if (this.heldFrames > 0) {
        first[stack] = next;
        next += apertureCount * count[stack] * table.stride;
        this.hold(stack, judged, free);
      } else {
        // Free at once: the table's own rows will do.
        const inBand = low[stack] - lattice.band.low[this.freeAt + stack];
        first[stack] = table.base[this.freeAt + stack] + inBand * table.stride;
      }
    }
  }

  private heldFrames = 0;
  private freeAt = 0;

  /** Levels between the same level of two apertures. */
  private height(stack: number): number {
    return this.heldFrames > 0 ? this.count[stack] : this.lattice.band.count[this.freeAt + stack];
  }

  /** Rows of a stack whose settings stand from frame `judged` until they are free. */
  private hold(stack: number, judged: number, free: number): void {
    const { lattice, table, own, held, heldFrames } = this;
    const { stops, apertureCount, isoCount, price, stepsPerStop, band } = lattice;
    const freeAt = this.freeAt + stack;
    for (let aperture = 0; aperture < apertureCount; aperture++) {
      for (let n = 0; n < this.count[stack]; n++) {
        const level = this.low[stack] + n;
        const errors = price.error * held.sum(level / stepsPerStop + stops[stack], judged, free);
        const row = aperture * band.count[freeAt] + level - band.low[freeAt];
        const from = table.base[freeAt] + row * table.stride;
        const to = this.at(stack, aperture, level);
        const time = shutterAt(lattice, aperture, level) - lattice.shutterMin;
        const isoFrom = Math.max(0, -time);
        const isoTo = Math.min(isoCount - 1, lattice.shutterMax - lattice.shutterMin - time);
        for (let iso = 0; iso < table.stride; iso++) own[to + iso] = Number.POSITIVE_INFINITY;
        for (let iso = isoFrom; iso <= isoTo; iso++) {
          const standing = price.time[time + iso] + price.iso[iso];
          own[to + iso] = table.cost[from + iso] + errors + heldFrames * standing;
        }
      }
    }
  }
}
