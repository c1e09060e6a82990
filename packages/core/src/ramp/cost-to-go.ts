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

import { filterPrice, type Lattice, netWindow } from './lattice.js';

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
  const { frameCount, stops, isoCount, apertureCount, band } = lattice;
  const base = new Float64Array(frameCount * stops.length);
  let cells = 0;
  for (let at = 0; at < base.length; at++) {
    base[at] = cells;
    cells += band.count[at] * apertureCount * isoCount;
  }
  const table: CostToGo = { cost: new Float64Array(cells), base };
  const source = afterFilter === 'same' ? table : afterFilter;

  const entered = new Arrivals(lattice, lattice.hold.tallest);
  const filtered = new Arrivals(lattice, lattice.landing.tallest);
  for (let frame = frameCount - 1; frame >= 0; frame--) {
    entered.fill(table, held, frame + 1, 0);
    if (source !== undefined) {
      filtered.fill(source, held, frame + 1, lattice.lost);
      filtered.summarise();
    }
    for (let stack = 0; stack < stops.length; stack++) {
      relaxStack(lattice, table, entered, source === undefined ? undefined : filtered, frame, stack);
    }
  }
  return table;
}

/**
 * Cost of arriving at each setting by a cue at one frame, held as long as it must be. Rows are padded with
 * Infinity on both sides, so that a row shifted in ISO needs no bounds.
 */
class Arrivals {
  readonly rows: Float64Array;
  readonly low: Int32Array; // lowest level, by stack
  readonly count: Int32Array; // levels, by stack; 0 where none
  /** By row: the cheapest of all ISOs. */
  readonly cheapest: Float64Array;
  readonly pad: number;
  readonly stride: number;
  private readonly tallest: number;

  constructor(
    private readonly lattice: Lattice,
    tallest: number,
  ) {
    const { stops, apertureCount, isoCount, largestStep } = lattice;
    this.tallest = Math.max(1, tallest);
    this.pad = Math.min(isoCount, Math.max(largestStep, 1));
    this.stride = isoCount + 2 * this.pad;
    const rowCount = stops.length * apertureCount * this.tallest;
    this.rows = new Float64Array(rowCount * this.stride).fill(Number.POSITIVE_INFINITY);
    this.low = new Int32Array(stops.length);
    this.count = new Int32Array(stops.length);
    this.cheapest = new Float64Array(rowCount);
  }

  row(stack: number, aperture: number, level: number): number {
    return (stack * this.lattice.apertureCount + aperture) * this.tallest + (level - this.low[stack]);
  }

  /** Arrivals at frame j, the first `spoilt` frames of which are not judged. */
  fill(from: CostToGo, held: HeldErrors, j: number, spoilt: number): void {
    const { lattice, rows, pad, stride } = this;
    const { frameCount, stops, apertureCount, isoCount, spacing, price, stepsPerStop } = lattice;
    const bands = spoilt > 0 ? lattice.landing : lattice.hold;
    const judged = j + spoilt;
    const free = Math.min(j + Math.max(spacing - 1, spoilt), frameCount - 1);
    const heldFrames = free - judged;
    for (let stack = 0; stack < stops.length; stack++) {
      this.count[stack] = judged < frameCount ? bands.count[j * stops.length + stack] : 0;
      if (this.count[stack] === 0) continue;
      const low = bands.low[j * stops.length + stack];
      this.low[stack] = low;
      const freeAt = free * stops.length + stack;
      const freeLow = lattice.band.low[freeAt];
      const freeCount = lattice.band.count[freeAt];
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        for (let level = low; level < low + this.count[stack]; level++) {
          const exposureEv = level / stepsPerStop + stops[stack];
          const errors = heldFrames === 0 ? 0 : price.error * held.sum(exposureEv, judged, free);
          const spent = spoilt * price.affectedFrame + errors;
          const fromAt = from.base[freeAt] + (aperture * freeCount + level - freeLow) * isoCount;
          const toAt = this.row(stack, aperture, level) * stride + pad;
          const timeAt = level - aperture - lattice.apertureMin + lattice.isoMin - lattice.shutterMin;
          for (let iso = 0; iso < isoCount; iso++) {
            rows[toAt + iso] = from.cost[fromAt + iso] + spent;
          }
          if (heldFrames === 0) continue;
          const { isoFrom, isoTo } = isoRange(lattice, aperture, level);
          for (let iso = isoFrom; iso <= isoTo; iso++) {
            rows[toAt + iso] += heldFrames * (price.time[timeAt + iso] + price.iso[iso]);
          }
        }
      }
    }
  }

  /** Finds the cheapest ISO of each row; only filter changes, which set ISO anew, ask for it. */
  summarise(): void {
    const { lattice, rows, pad, stride } = this;
    for (let stack = 0; stack < lattice.stops.length; stack++) {
      for (let aperture = 0; aperture < lattice.apertureCount; aperture++) {
        for (let level = this.low[stack]; level < this.low[stack] + this.count[stack]; level++) {
          const row = this.row(stack, aperture, level);
          let least = Number.POSITIVE_INFINITY;
          for (let at = row * stride + pad; at < row * stride + pad + lattice.isoCount; at++) {
            if (rows[at] < least) least = rows[at];
          }
          this.cheapest[row] = least;
        }
      }
    }
  }
}

/** ISO indices whose shutter, at this aperture and level, is on the dial. */
function isoRange(lattice: Lattice, aperture: number, level: number) {
  // shutter = level - aperture + ISO, all in steps
  const shutterAtIsoMin = level - (lattice.apertureMin + aperture) + lattice.isoMin;
  return {
    isoFrom: Math.max(0, lattice.shutterMin - shutterAtIsoMin),
    isoTo: Math.min(lattice.isoCount - 1, lattice.shutterMax - shutterAtIsoMin),
  };
}

/** target[i] = min(target[i], source[i] + price) over a row. */
function relax(
  target: Float64Array,
  targetAt: number,
  source: Float64Array,
  sourceAt: number,
  count: number,
  price: number,
): void {
  for (let i = 0; i < count; i++) {
    const through = source[sourceAt + i] + price;
    if (through < target[targetAt + i]) target[targetAt + i] = through;
  }
}

function relaxStack(
  lattice: Lattice,
  table: CostToGo,
  entered: Arrivals,
  filtered: Arrivals | undefined,
  frame: number,
  stack: number,
): void {
  const { cost, base } = table;
  const { frameCount, stops, isoCount, apertureCount, largestStep, band, price, stepsPerStop } = lattice;
  const at = frame * stops.length + stack;
  const low = band.low[at];
  const high = low + band.count[at] - 1;
  const last = frame === frameCount - 1;
  const nextAt = at + stops.length;
  const nextLow = last ? 0 : band.low[nextAt];
  const nextCount = last ? 0 : band.count[nextAt];

  for (let aperture = 0; aperture < apertureCount; aperture++) {
    for (let level = low; level <= high; level++) {
      const row = base[at] + (aperture * band.count[at] + level - low) * isoCount;
      cost.fill(last ? 0 : Number.POSITIVE_INFINITY, row, row + isoCount);

      if (!last) {
        if (level >= nextLow && level < nextLow + nextCount) {
          const stay = base[nextAt] + (aperture * nextCount + level - nextLow) * isoCount;
          cost.copyWithin(row, stay, stay + isoCount);
        }
        relaxDials(lattice, table, entered, stack, aperture, level, row);
        if (filtered !== undefined) relaxFilters(lattice, table, filtered, stack, aperture, level, row);
      }

      const error = level / stepsPerStop + stops[stack] - lattice.target[frame];
      const standing = price.error * error * error;
      const { isoFrom, isoTo } = isoRange(lattice, aperture, level);
      const timeAt = level - aperture - lattice.apertureMin + lattice.isoMin - lattice.shutterMin;
      for (let iso = 0; iso < isoCount; iso++) {
        cost[row + iso] =
          iso < isoFrom || iso > isoTo
            ? Number.POSITIVE_INFINITY
            : cost[row + iso] + standing + price.time[timeAt + iso] + price.iso[iso];
      }
    }
  }

  function relaxDials(
    { apertureCount }: Lattice,
    { cost }: CostToGo,
    { rows, pad, stride, low, count }: Arrivals,
    stack: number,
    aperture: number,
    level: number,
    row: number,
  ): void {
    const lowest = low[stack];
    const highest = lowest + count[stack] - 1;
    const line = (a: number, x: number) => entered.row(stack, a, x) * stride + pad;
    for (let step = 1; step <= largestStep; step++) {
      const above = level + step;
      if (above >= lowest && above <= highest) {
        relax(cost, row, rows, line(aperture, above), isoCount, price.shorter);
        if (step <= pad) relax(cost, row, rows, line(aperture, above) - step, isoCount, price.isoDown);
        if (aperture + step < apertureCount) {
          relax(cost, row, rows, line(aperture + step, above), isoCount, price.narrower);
        }
      }
      const below = level - step;
      if (below >= lowest && below <= highest) {
        relax(cost, row, rows, line(aperture, below), isoCount, price.longer);
        if (step <= pad) relax(cost, row, rows, line(aperture, below) + step, isoCount, price.isoUp);
        if (aperture >= step) relax(cost, row, rows, line(aperture - step, below), isoCount, price.wider);
      }
    }
  }

  function relaxFilters(
    { isoCount, stops }: Lattice,
    { cost }: CostToGo,
    { rows, pad, stride, low, count, cheapest }: Arrivals,
    stack: number,
    aperture: number,
    level: number,
    row: number,
  ): void {
    for (let other = 0; other < stops.length; other++) {
      if (other === stack || count[other] === 0) continue;
      const swap = filterPrice(lattice, stack, other);
      const window = netWindow(lattice, stack, other, level);
      const from = Math.max(window.low, low[other]);
      const to = Math.min(window.high, low[other] + count[other] - 1);
      let both = Number.POSITIVE_INFINITY;
      for (let x = from; x <= to; x++) {
        const line = (filtered as Arrivals).row(other, aperture, x);
        const first = line * stride + pad;
        if (cheapest[line] < both) both = cheapest[line];
        // The shutter is re-set, ISO stays; where the level is the same, so does the shutter.
        relax(cost, row, rows, first, isoCount, x === level ? swap : swap + price.shutterReset);
        // ISO is re-set, the shutter stays: ISO takes up the difference in level.
        const shift = level - x;
        if (shift !== 0 && Math.abs(shift) < isoCount) {
          const kept = isoCount - Math.abs(shift);
          relax(
            cost,
            row + Math.max(0, -shift),
            rows,
            first + Math.max(0, shift),
            kept,
            swap + price.isoReset,
          );
        }
      }
      both += swap + price.shutterReset + price.isoReset;
      for (let iso = 0; iso < isoCount; iso++) {
        if (both < cost[row + iso]) cost[row + iso] = both;
      }
    }
  }
}
