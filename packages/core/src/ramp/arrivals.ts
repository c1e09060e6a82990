// What it costs to arrive at each setting by a cue at one frame, and be held there as long as the rules want.

import type { HeldErrors } from './held.js';
import { type Lattice, shutterAt } from './lattice.js';
import type { CostToGo } from './table.js';

/**
 * Costs of arrival by stack, aperture, level and ISO. One row holds the ISOs of a level, padded on both sides
 * with Infinity as wide as itself, so that a row shifted in ISO needs no bounds.
 */
export class Arrivals {
  readonly rows: Float64Array;
  readonly stride: number;
  readonly low: Int32Array; // lowest level, by stack
  readonly count: Int32Array; // levels, by stack; 0 where none
  /** The cheapest ISO of each row, and the first and last ISO that is dearer by less than setting both dials anew. */
  readonly least: Float64Array;
  readonly nearFrom: Int32Array;
  readonly nearTo: Int32Array;
  private readonly lattice: Lattice;
  private readonly tallest: number;

  constructor(lattice: Lattice, tallest: number) {
    const { stops, apertureCount, isoCount } = lattice;
    this.lattice = lattice;
    this.tallest = Math.max(1, tallest);
    this.stride = 3 * isoCount;
    const rowCount = stops.length * apertureCount * this.tallest;
    this.rows = new Float64Array(rowCount * this.stride).fill(Number.POSITIVE_INFINITY);
    this.least = new Float64Array(rowCount);
    this.nearFrom = new Int32Array(rowCount);
    this.nearTo = new Int32Array(rowCount);
    this.low = new Int32Array(stops.length);
    this.count = new Int32Array(stops.length);
  }

  /** Where the lowest ISO of a row lies, by its number. */
  first(row: number): number {
    return row * this.stride + this.lattice.isoCount;
  }

  /** Where the lowest ISO of a level lies. */
  at(stack: number, aperture: number, level: number): number {
    return this.first(this.row(stack, aperture, level));
  }

  /** Number of the row of a level. */
  row(stack: number, aperture: number, level: number): number {
    return (stack * this.lattice.apertureCount + aperture) * this.tallest + level - this.low[stack];
  }

  /** Arrivals at frame j, the first `spoilt` frames of which are not judged. */
  fill(from: CostToGo, held: HeldErrors, j: number, spoilt: number): void {
    const { lattice, rows } = this;
    const { frameCount, stops, apertureCount, isoCount, spacing, price, stepsPerStop } = lattice;
    const bands = spoilt > 0 ? lattice.landing : lattice.hold;
    const judged = j + spoilt;
    const free = Math.min(j + Math.max(spacing - 1, spoilt), frameCount - 1);
    const heldFrames = free - judged;
    for (let stack = 0; stack < stops.length; stack++) {
      const count = judged < frameCount ? bands.count[j * stops.length + stack] : 0;
      this.count[stack] = count;
      if (count === 0) continue;
      const low = bands.low[j * stops.length + stack];
      this.low[stack] = low;
      const freeAt = free * stops.length + stack;
      const freeLow = lattice.band.low[freeAt];
      const freeCount = lattice.band.count[freeAt];
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        for (let level = low; level < low + count; level++) {
          const exposureEv = level / stepsPerStop + stops[stack];
          const errors = heldFrames === 0 ? 0 : price.error * held.sum(exposureEv, judged, free);
          const spent = spoilt * price.affectedFrame + errors;
          const fromAt = from.base[freeAt] + (aperture * freeCount + level - freeLow) * isoCount;
          const toAt = this.at(stack, aperture, level);
          const shutterAtIsoMin = shutterAt(lattice, aperture, level);
          const isoFrom = Math.max(0, lattice.shutterMin - shutterAtIsoMin);
          const isoTo = Math.min(isoCount - 1, lattice.shutterMax - shutterAtIsoMin);
          const timeAt = shutterAtIsoMin - lattice.shutterMin;
          for (let iso = 0; iso < isoFrom; iso++) rows[toAt + iso] = Number.POSITIVE_INFINITY;
          for (let iso = isoTo + 1; iso < isoCount; iso++) rows[toAt + iso] = Number.POSITIVE_INFINITY;
          for (let iso = isoFrom; iso <= isoTo; iso++) {
            const standing = heldFrames === 0 ? 0 : heldFrames * (price.time[timeAt + iso] + price.iso[iso]);
            rows[toAt + iso] = from.cost[fromAt + iso] + spent + standing;
          }
        }
      }
    }
  }

  /** Finds what is cheap in each row; only filter changes, which may set every dial anew, ask for it. */
  summarise(): void {
    const { lattice, rows, least, nearFrom, nearTo } = this;
    const { stops, apertureCount, isoCount, price } = lattice;
    const both = price.shutterReset + price.isoReset;
    for (let stack = 0; stack < stops.length; stack++) {
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        const first = this.row(stack, aperture, this.low[stack]);
        for (let row = first; row < first + this.count[stack]; row++) {
          const at = this.first(row);
          let cheapest = Number.POSITIVE_INFINITY;
          for (let iso = 0; iso < isoCount; iso++) if (rows[at + iso] < cheapest) cheapest = rows[at + iso];
          let from = 0;
          let to = isoCount - 1;
          if (cheapest < Number.POSITIVE_INFINITY) {
            while (rows[at + from] >= cheapest + both) from++;
            while (rows[at + to] >= cheapest + both) to--;
          } else to = -1;
          least[row] = cheapest;
          nearFrom[row] = from;
          nearTo[row] = to;
        }
      }
    }
  }
}
