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
import { FilterWays } from './filter-ways.js';
import type { HeldErrors } from './held.js';
import { type Lattice, shutterAt } from './lattice.js';
import { relax, relaxBoth } from './relax.js';
import { type CostToGo, emptyTable } from './table.js';

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
  const table = emptyTable(lattice);
  const sweep = new Sweep(lattice, held, table, afterFilter === 'same' ? table : afterFilter);
  for (let frame = lattice.frameCount - 1; frame >= 0; frame--) sweep.frame(frame);
  return table;
}

/** The work of one frame. A class, because functions made anew for each table would be compiled anew as well. */
class Sweep {
  private readonly lattice: Lattice;
  private readonly table: CostToGo;
  private readonly entered: Arrivals;
  private readonly filterWays: FilterWays | undefined;

  constructor(lattice: Lattice, held: HeldErrors, table: CostToGo, afterFilter: CostToGo | undefined) {
    this.lattice = lattice;
    this.table = table;
    this.entered = new Arrivals(lattice, held, table, lattice.hold.tallest);
    const mayChange = afterFilter !== undefined && lattice.stops.length > 1;
    this.filterWays = mayChange ? new FilterWays(lattice, held, afterFilter) : undefined;
  }

  /** free(frame, s) for every setting. */
  frame(frame: number): void {
    const { lattice, table, filterWays } = this;
    const { stops, apertureCount, band } = lattice;
    const last = frame === lattice.frameCount - 1;
    if (!last) {
      this.entered.reckon(frame + 1, 0);
      filterWays?.arriveAt(frame + 1);
    }
    for (let stack = 0; stack < stops.length; stack++) {
      const at = frame * stops.length + stack;
      const low = band.low[at];
      const levels = band.count[at];
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        const first = table.base[at] + aperture * levels * table.stride;
        for (let n = 0; n < levels; n++) {
          // Only ISOs whose shutter is on the dial; the others keep their Infinity.
          const shutter = shutterAt(lattice, aperture, low + n);
          const iso = Math.max(0, lattice.shutterMin - shutter);
          const count = Math.min(lattice.isoCount - 1, lattice.shutterMax - shutter) - iso + 1;
          const row = first + n * table.stride + iso;
          if (count <= 0) continue;
          if (last) table.cost.fill(0, row, row + count);
          else {
            this.stay(row, frame + 1, stack, aperture, low + n, iso, count);
            this.turnDial(row, stack, aperture, low + n, iso, count);
          }
        }
        if (!last) filterWays?.offer(table, first, stack, aperture, low, levels);
        for (let n = 0; n < levels; n++) {
          const most = last || filterWays === undefined ? Number.POSITIVE_INFINITY : filterWays.anew[n];
          this.stand(first + n * table.stride, frame, stack, aperture, low + n, most);
        }
      }
    }
  }

  private stay(
    row: number,
    next: number,
    stack: number,
    aperture: number,
    level: number,
    iso: number,
    count: number,
  ): void {
    const { cost, base, stride } = this.table;
    const { stops, band } = this.lattice;
    const at = next * stops.length + stack;
    const inBand = level - band.low[at];
    if (inBand < 0 || inBand >= band.count[at]) return;
    const from = base[at] + (aperture * band.count[at] + inBand) * stride + iso;
    for (let i = 0; i < count; i++) cost[row + i] = cost[from + i];
  }

  /** One dial by 1…m steps: shutter or ISO to another level at this aperture, or the aperture. */
  private turnDial(
    row: number,
    stack: number,
    aperture: number,
    level: number,
    iso: number,
    count: number,
  ): void {
    const { cost, pad } = this.table;
    const { entered } = this;
    const { apertureCount, largestStep, price } = this.lattice;
    const { rows } = entered;
    const lowest = entered.low[stack];
    const highest = lowest + entered.count[stack] - 1;
    for (let step = 1; step <= largestStep; step++) {
      const shift = Math.min(step, pad); // a row further is all padding
      if (level + step >= lowest && level + step <= highest) {
        const up = entered.at(stack, aperture, level + step) + iso;
        relaxBoth(cost, row, rows, up, up - shift, count, price.shorter, price.isoDown);
        if (aperture + step < apertureCount) {
          const narrower = entered.at(stack, aperture + step, level + step) + iso;
          relax(cost, row, rows, narrower, count, price.narrower);
        }
      }
      if (level - step >= lowest && level - step <= highest) {
        const down = entered.at(stack, aperture, level - step) + iso;
        relaxBoth(cost, row, rows, down, down + shift, count, price.longer, price.isoUp);
        if (aperture >= step) {
          const wider = entered.at(stack, aperture - step, level - step) + iso;
          relax(cost, row, rows, wider, count, price.wider);
        }
      }
    }
  }

  /** Adds what the frame itself costs, where the setting's shutter is on the dial; no way on costs more than `most`. */
  private stand(
    row: number,
    frame: number,
    stack: number,
    aperture: number,
    level: number,
    most: number,
  ): void {
    const { cost, stride } = this.table;
    const { lattice } = this;
    const { isoCount, price, shutterMin, shutterMax } = lattice;
    const error = level / lattice.stepsPerStop + lattice.stops[stack] - lattice.target[frame];
    const standing = price.error * error * error;
    const time = shutterAt(lattice, aperture, level) - shutterMin;
    const from = Math.min(isoCount, Math.max(0, -time));
    const end = Math.max(from, Math.min(isoCount, shutterMax - shutterMin + 1 - time));
    for (let i = 0; i < from; i++) cost[row + i] = Number.POSITIVE_INFINITY;
    for (let i = from; i < end; i++) {
      cost[row + i] = Math.min(cost[row + i], most) + standing + price.time[time + i] + price.iso[i];
    }
    for (let i = end; i < stride; i++) cost[row + i] = Number.POSITIVE_INFINITY; // the padding too
  }
}
