// A plan as a course: what its errors cost, held over many frames, by a formula instead of a sum.

import { everyFrame, type Grid } from '../grid.js';
import type { Lattice } from '../lattice.js';
import type { Course, ErrorCosts } from './course.js';

/** A cue may come at every frame, and every judged frame lies within tolerance. */
export function planCourse(lattice: Lattice): Course {
  const { band, hold, landing } = lattice;
  const grid = everyFrame(lattice.frameCount, lattice);
  return { lattice, grid, band, hold, landing, errors: new PlanErrors(lattice, grid) };
}

/** Prefix sums of the centred targets and of their squares. */
class PlanErrors implements ErrorCosts {
  private readonly lattice: Lattice;
  private readonly grid: Grid; // of every frame
  private readonly mean: number;
  private readonly first: Float64Array;
  private readonly second: Float64Array;

  constructor(lattice: Lattice, grid: Grid) {
    const { target } = lattice;
    this.lattice = lattice;
    this.grid = grid;
    this.mean = target.reduce((sum, ev) => sum + ev, 0) / target.length;
    this.first = new Float64Array(target.length + 1);
    this.second = new Float64Array(target.length + 1);
    for (let i = 0; i < target.length; i++) {
      const centred = target[i] - this.mean; // large sums of squares would lose digits
      this.first[i + 1] = this.first[i] + centred;
      this.second[i + 1] = this.second[i] + centred * centred;
    }
  }

  readonly judgesAffected = false;

  over(k: number, stack: number, level: number): number {
    const { price, stepsPerStop, stops, target } = this.lattice;
    const errorEv = level / stepsPerStop + stops[stack] - target[k];
    return price.error * errorEv * errorEv;
  }

  held(k: number, stack: number, level: number, filter: boolean): number {
    const { affectedFrames, price, stepsPerStop, stops } = this.lattice;
    const from = filter ? k + affectedFrames : k;
    const to = (filter ? this.grid.freeAfterFilter[k] : this.grid.freeAfterCue[k]) - 1;
    const e = level / stepsPerStop + stops[stack] - this.mean;
    const first = this.first[to] - this.first[from];
    const second = this.second[to] - this.second[from];
    // Cancellation can leave a little less than zero.
    return price.error * Math.max(0, (to - from) * e * e - 2 * e * first + second);
  }
}
