// What the dials are to follow: where cues may come, which levels are looked at there, and what their errors cost. A
// plan and a live solve differ in this alone.

import type { Bands } from '../band.js';
import type { Grid } from '../grid.js';
import type { Lattice } from '../lattice.js';

export interface Course {
  /** Settings and prices. */
  readonly lattice: Lattice;
  readonly grid: Grid;
  /** Levels that may stand in a segment; those of `hold` and `landing` are among them where they are free to change. */
  readonly band: Bands;
  /** Levels that a cue of dials may set at a segment. */
  readonly hold: Bands;
  /** The same for a filter change. */
  readonly landing: Bands;
  readonly errors: ErrorCosts;
}

/** What errors of exposure cost. */
export interface ErrorCosts {
  /** Whether frames that a filter change affects pay for their errors too. */
  readonly judgesAffected: boolean;
  /** What a level of a stack costs over segment k. */
  over(k: number, stack: number, level: number): number;
  /**
   * What a level set at segment k costs until the segment through which it is held begins; after a filter change from
   * the first frame judged again, unless affected frames are judged.
   */
  held(k: number, stack: number, level: number, filter: boolean): number;
}

/** The segment through which a setting is held that was set at segment k; below 0 where none may be set. */
export function heldThrough({ freeAfterCue, freeAfterFilter }: Grid, k: number, filter: boolean): number {
  return (filter ? freeAfterFilter[k] : freeAfterCue[k]) - 1;
}

/** Judged frames from a cue at segment k to where segment `free` begins, through which its setting is held. */
export function judgedFrames({ lattice, grid }: Course, k: number, free: number, filter: boolean): number {
  return grid.at[free] - grid.at[k] - (filter ? lattice.affectedFrames : 0);
}
