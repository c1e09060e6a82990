// What it costs to arrive at each setting by a cue at one frame, and be held there as long as the rules want.

import { shutterAt, standingRow } from '../lattice.js';
import { type Course, heldThrough, judgedFrames } from './course.js';
import { type CostToGo, cellOf } from './table.js';

/** Costs of arrival by stack, aperture, level and ISO, in rows as the table's; `spent` comes on top of each. */
export class Arrivals {
  rows: Float64Array;
  /** The cheapest ISO of each row. */
  least: Float64Array;
  readonly low: Int32Array; // lowest level, by stack
  readonly count: Int32Array; // levels, by stack; 0 where none
  /** What the affected frames cost, whatever the setting. */
  spent = 0;
  private readonly course: Course;
  private readonly table: CostToGo;
  private readonly filter: boolean;
  private readonly first: Int32Array; // row of the lowest level of a stack at aperture 0
  private readonly height: Int32Array; // rows of an aperture, by stack
  private readonly own: Float64Array; // rows of settings that have been held for some frames
  private readonly ownLeast: Float64Array;

  /** @param filter whether the cue changes the filter, or else turns a dial */
  constructor(course: Course, table: CostToGo, filter: boolean) {
    const { lattice, hold, landing } = course;
    const tallest = Math.max(1, (filter ? landing : hold).tallest);
    const rowCount = lattice.stops.length * lattice.apertureCount * tallest;
    this.course = course;
    this.table = table;
    this.filter = filter;
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

  /** Computes the arrivals at segment k; none where it is the end, or no such cue may come. */
  arriveAt(k: number): void {
    const { course, table, filter, low, count, first, height } = this;
    const { lattice, grid, band } = course;
    const { stops, apertureCount, price } = lattice;
    const bands = filter ? course.landing : course.hold;
    const free = k < grid.at.length - 1 ? heldThrough(grid, k, filter) : -1;
    if (free < 0) {
      count.fill(0);
      return;
    }
    const frames = judgedFrames(course, k, free, filter);
    // The table's own rows will do.
    const freeAtOnce = frames === 0 && !(filter && course.errors.judgesAffected);
    this.spent = filter ? lattice.affectedFrames * price.affectedFrame : 0;
    this.rows = freeAtOnce ? table.cost : this.own;
    this.least = freeAtOnce ? table.least : this.ownLeast;
    let next = 0;
    for (let stack = 0; stack < stops.length; stack++) {
      count[stack] = bands.count[k * stops.length + stack];
      low[stack] = bands.low[k * stops.length + stack];
      if (count[stack] === 0) continue;
      const freeAt = free * stops.length + stack;
      if (freeAtOnce) {
        first[stack] = table.firstRow[freeAt] + low[stack] - band.low[freeAt];
        height[stack] = band.count[freeAt];
      } else {
        first[stack] = next;
        height[stack] = count[stack];
        next += apertureCount * count[stack];
        this.hold(stack, k, free, frames);
      }
    }
  }

  /** Rows of a stack whose settings are held for some judged frames until they are free in segment `free`. */
  private hold(stack: number, k: number, free: number, frames: number): void {
    const { course, table, own, ownLeast, filter } = this;
    const { lattice, band, errors } = course;
    const { stops, apertureCount, isoCount, price } = lattice;
    const freeAt = free * stops.length + stack;
    for (let aperture = 0; aperture < apertureCount; aperture++) {
      for (let n = 0; n < this.count[stack]; n++) {
        const level = this.low[stack] + n;
        const paid = errors.held(k, stack, level, filter);
        const after = table.firstRow[freeAt] + aperture * band.count[freeAt] + level - band.low[freeAt];
        const row = this.row(stack, aperture, level);
        const from = cellOf(table, after);
        const to = cellOf(table, row);
        const time = shutterAt(lattice, aperture, level) - lattice.shutterMin;
        const standing = standingRow(lattice, stack, aperture, level);
        const isoFrom = Math.max(0, 0 - time);
        const isoTo = Math.min(isoCount - 1, lattice.shutterMax - lattice.shutterMin - time);
        let least = Number.POSITIVE_INFINITY;
        own.fill(Number.POSITIVE_INFINITY, to, to + isoCount);
        for (let iso = isoFrom; iso <= isoTo; iso++) {
          const cost = table.cost[from + iso] + paid + frames * price.standing[standing + iso];
          own[to + iso] = cost;
          if (cost < least) least = cost;
        }
        ownLeast[row] = least;
      }
    }
  }
}
