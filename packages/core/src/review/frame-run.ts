// Frames of a plan in a row.

/** Frames in a row, by number, both ends meant. */
export interface FrameRun {
  /** From 0. */
  readonly from: number;
  /** Not before it. */
  readonly to: number;
}
