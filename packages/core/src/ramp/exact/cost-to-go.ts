// The exact optimum, backward: what the rest of the evening costs from every setting at every frame.
//
// With c(i, s) the cost of standing at setting s on frame i, S the cue spacing and L the frames a filter
// change affects:
//
//   free(i, s)    = c(i, s) + min( free(i+1, s),  entered(i+1, s') + cue price,  filtered(i+1, s') + cue price )
//   entered(j, s)  = c(j, s) + … + c(j+S-2, s) + free(j+S-1, s)          s has just been set, and is held
//   filtered(j, s) = L affected frames + c(j+L, s) + … + free(j+max(S-1, L), s)
//
// over the settings s' one legal cue away. A live solve counts segments of a grid (grid.ts) for frames, and
// c is what a whole segment costs. The held sums come from prefix sums of the targets and their
// squares, so a long spacing costs no more than a short one. No back pointers: the table is the policy.
// Neighbours in ISO lie side by side in a row; a shutter step reads the same ISO of another row, an ISO step keeps
// the shutter and so reads another ISO of another row. A step costs the same however long, so only the cheapest of
// the rows within reach counts.
// A plain restatement for tests: test/reference/exhaustive-ramp.ts.

import { shutterAt, standingRow } from '../lattice.js';
import { Arrivals } from './arrivals.js';
import type { Course } from './course.js';
import { FilterWays } from './filter-ways.js';
import { type CostToGo, cellOf, emptyTable } from './table.js';

/**
 * Costs to go from every setting.
 *
 * @param afterFilter the table a filter change leads into: 'same' where their number is free, the table
 *   with one change fewer left where it is limited, undefined where none may be made
 */
export function costToGo(course: Course, afterFilter: CostToGo | 'same' | undefined): CostToGo {
  const table = emptyTable(course);
  const sweep = new Sweep(course, table, afterFilter === 'same' ? table : afterFilter);
  for (let k = course.grid.at.length - 2; k >= 0; k--) sweep.segment(k);
  return table;
}

/** The work of one segment. A class, because functions made for each table would be compiled for each table. */
class Sweep {
  private readonly course: Course;
  private readonly table: CostToGo;
  private readonly entered: Arrivals;
  private readonly filterWays: FilterWays | undefined;
  private readonly errors: Float64Array; // of a stack's levels in the segment
  private readonly scaled: Float64Array; // price.standing over `scaledTo` frames
  private scaledTo = -1;
  private readonly nothing: Float64Array; // a row of zeros: what is left to pay after the last segment
  private readonly nowhere: Float64Array; // a row of settings that lead nowhere

  constructor(course: Course, table: CostToGo, afterFilter: CostToGo | undefined) {
    const { lattice, band } = course;
    this.course = course;
    this.table = table;
    this.entered = new Arrivals(course, table, false);
    const mayChange = afterFilter !== undefined && lattice.stops.length > 1;
    this.filterWays = mayChange ? new FilterWays(course, table, afterFilter) : undefined;
    this.errors = new Float64Array(Math.max(1, band.tallest));
    this.scaled = new Float64Array(lattice.price.standing.length);
    this.nothing = new Float64Array(lattice.isoCount);
    this.nowhere = new Float64Array(lattice.isoCount).fill(Number.POSITIVE_INFINITY);
  }

  /** free(k, s) for every setting. */
  segment(k: number): void {
    const { course, table, filterWays, errors } = this;
    const { lattice, band } = course;
    const { stops, apertureCount } = lattice;
    const standing = this.standingOver(course.grid.at[k + 1] - course.grid.at[k]);
    this.entered.arriveAt(k + 1);
    filterWays?.arriveAt(k + 1);
    for (let stack = 0; stack < stops.length; stack++) {
      const at = k * stops.length + stack;
      const low = band.low[at];
      const levels = band.count[at];
      for (let n = 0; n < levels; n++) errors[n] = course.errors.over(k, stack, low + n);
      for (let aperture = 0; aperture < apertureCount; aperture++) {
        const first = table.firstRow[at] + aperture * levels;
        filterWays?.resetBoth(stack, aperture, low, levels);
        this.levels(k, standing, stack, aperture, low, levels, first);
        filterWays?.spareDials(errors, standing, stack, aperture, low, levels, first);
      }
    }
  }

  /** `price.standing` over so many frames. A product in each cell took a tenth of the time. */
  private standingOver(frames: number): Float64Array {
    const { standing } = this.course.lattice.price;
    if (frames === 1) return standing;
    if (frames !== this.scaledTo) {
      this.scaledTo = frames;
      for (let i = 0; i < standing.length; i++) {
        this.scaled[i] = standing[i] === Number.POSITIVE_INFINITY ? standing[i] : frames * standing[i];
      }
    }
    return this.scaled;
  }

  /**
   * The levels of a stack at an aperture, whose rows begin with `first`: stay, turn the shutter or ISO by 1…m
   * steps, or change the filter with both reset; and what the segment itself costs.
   */
  private levels(
    k: number,
    standingPrice: Float64Array,
    stack: number,
    aperture: number,
    low: number,
    levels: number,
    first: number,
  ): void {
    // What the loops need is fetched once: per row it took a third of the time.
    const { course, table, entered, filterWays, errors, nothing, nowhere } = this;
    const { lattice, grid, band } = course;
    const { apertureCount, isoCount, largestStep, price, stops } = lattice;
    const { shorter, longer, isoUp, isoDown } = price;
    const { cost, pad, stride } = table;
    const { rows } = entered;
    const none = Number.POSITIVE_INFINITY;
    const last = k === grid.at.length - 2;
    const nextAt = (k + 1) * stops.length + stack;
    const keptLow = last ? 0 : band.low[nextAt];
    const keptCount = last ? 0 : band.count[nextAt];
    const keptFirst = last ? 0 : cellOf(table, table.firstRow[nextAt] + aperture * keptCount);
    const enteredLow = entered.low[stack];
    const enteredCount = entered.count[stack];
    const enteredFirst = cellOf(table, entered.row(stack, aperture, enteredLow));
    const times = lattice.shutterMax - lattice.shutterMin + 1;
    let time = shutterAt(lattice, aperture, low) - lattice.shutterMin; // of the lowest ISO
    let standingAt = standingRow(lattice, stack, aperture, low);
    let here = cellOf(table, first);
    let written = here - pad;
    for (let n = 0; n < levels; n++, time++, standingAt += isoCount, here += stride) {
      const level = low + n;
      const from = Math.min(isoCount, Math.max(0, 0 - time)); // ISOs whose shutter is on the dial
      const end = Math.max(from, Math.min(isoCount, times - time));
      const isKept = level >= keptLow && level < keptLow + keptCount;
      let kept = isKept ? cost : last ? nothing : nowhere;
      let keptAt = isKept ? keptFirst + (level - keptLow) * stride : 0;
      if (apertureCount > 1) {
        this.turnAperture(here, kept, keptAt, stack, aperture, level);
        kept = cost;
        keptAt = here;
      }
      // Rows a cue may enter, counted from this one: the darker ones above it, the brighter ones below.
      const lowest = enteredLow - level;
      const highest = lowest + enteredCount - 1;
      const origin = enteredFirst - lowest * stride;
      let least = none;
      for (let cell = written; cell < here + from; cell++) cost[cell] = none; // the padding, and times too long for the dial
      // Three steps at a time, for a loop of six rows is as long as a processor likes; the last three also stand.
      for (let step = 1; step <= largestStep; step += 3) {
        const above = Math.max(step, lowest);
        const below = Math.max(step, 0 - highest);
        const moreAbove = Math.min(step + 2, largestStep, highest) - above; // rows after the first; < 0 for none
        const moreBelow = Math.min(step + 2, largestStep, 0 - lowest) - below;
        const stands = step + 3 > largestStep;
        if (moreAbove < 0 && moreBelow < 0 && !stands) continue;
        const reset = stands && filterWays !== undefined ? filterWays.bothReset[n] : none;
        const errorPrice = stands ? errors[n] : 0;
        const standing = stands ? standingPrice : nothing;
        const standingFrom = stands ? standingAt : 0;
        const above1 = origin + above * stride;
        const above2 = above1 + stride;
        const above3 = above2 + stride;
        const below1 = origin - below * stride;
        const below2 = below1 - stride;
        const below3 = below2 - stride;
        // The same shutter there: a step further in level is a step in ISO. Beyond the padding all is padding.
        const aboveIso1 = above1 - Math.min(above, pad);
        const aboveIso2 = above2 - Math.min(above + 1, pad);
        const aboveIso3 = above3 - Math.min(above + 2, pad);
        const belowIso1 = below1 + Math.min(below, pad);
        const belowIso2 = below2 + Math.min(below + 1, pad);
        const belowIso3 = below3 + Math.min(below + 2, pad);
        least = none;
        for (let iso = from; iso < end; iso++) {
          let way = kept[keptAt + iso];
          if (reset < way) way = reset;
          if (moreAbove >= 0) {
            let shutter = rows[above1 + iso];
            let dial = rows[aboveIso1 + iso];
            if (moreAbove > 0) {
              const shutter2 = rows[above2 + iso];
              const dial2 = rows[aboveIso2 + iso];
              if (shutter2 < shutter) shutter = shutter2;
              if (dial2 < dial) dial = dial2;
            }
            if (moreAbove > 1) {
              const shutter3 = rows[above3 + iso];
              const dial3 = rows[aboveIso3 + iso];
              if (shutter3 < shutter) shutter = shutter3;
              if (dial3 < dial) dial = dial3;
            }
            shutter += shorter;
            dial += isoDown;
            if (shutter < way) way = shutter;
            if (dial < way) way = dial;
          }
          if (moreBelow >= 0) {
            let shutter = rows[below1 + iso];
            let dial = rows[belowIso1 + iso];
            if (moreBelow > 0) {
              const shutter2 = rows[below2 + iso];
              const dial2 = rows[belowIso2 + iso];
              if (shutter2 < shutter) shutter = shutter2;
              if (dial2 < dial) dial = dial2;
            }
            if (moreBelow > 1) {
              const shutter3 = rows[below3 + iso];
              const dial3 = rows[belowIso3 + iso];
              if (shutter3 < shutter) shutter = shutter3;
              if (dial3 < dial) dial = dial3;
            }
            shutter += longer;
            dial += isoUp;
            if (shutter < way) way = shutter;
            if (dial < way) way = dial;
          }
          way += errorPrice + standing[standingFrom + iso];
          if (way < least) least = way;
          cost[here + iso] = way;
        }
        kept = cost;
        keptAt = here;
      }
      written = here + end;
      table.least[first + n] = least;
    }
    for (let cell = written; cell < here; cell++) cost[cell] = none; // the padding behind is another's, and as empty
  }

  /** Stay, or turn the aperture by 1…m steps, into the row at `here`. */
  private turnAperture(
    here: number,
    kept: Float64Array,
    keptAt: number,
    stack: number,
    aperture: number,
    level: number,
  ): void {
    const { entered, table } = this;
    const { apertureCount, isoCount, largestStep, price } = this.course.lattice;
    const { cost } = table;
    const lowest = entered.low[stack];
    const highest = lowest + entered.count[stack] - 1;
    for (let iso = 0; iso < isoCount; iso++) cost[here + iso] = kept[keptAt + iso];
    for (let step = -largestStep; step <= largestStep; step++) {
      if (step === 0 || aperture + step < 0 || aperture + step >= apertureCount) continue;
      if (level + step < lowest || level + step > highest) continue;
      const there = cellOf(table, entered.row(stack, aperture + step, level + step));
      const cue = step > 0 ? price.narrower : price.wider;
      for (let iso = 0; iso < isoCount; iso++) {
        cost[here + iso] = Math.min(cost[here + iso], entered.rows[there + iso] + cue);
      }
    }
  }
}
