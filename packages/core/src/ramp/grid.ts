// Where cues may come, and how long the setting of each is held: at every frame of a plan, at fewer places in a live
// solve, so that one recurrence serves both.

import type { Lattice } from './lattice.js';

/** Places for cues. The frames from one place to the next are a segment, and stand at one setting. */
export interface Grid {
  /** Rising: the frame at which segment k starts; the last entry is the end, and no place for a cue. */
  readonly at: Int32Array;
  /** By segment: the entry at which the next cue may come after a cue of dials here. */
  readonly freeAfterCue: Int32Array;
  /** The same after a filter change, or 0 where none may be made. */
  readonly freeAfterFilter: Int32Array;
  /** By segment: the entry at which frames are judged again after a filter change here, with its share of a segment. */
  readonly judgedAfterFilter: Float64Array;
}

type Spacing = Pick<Lattice, 'spacing' | 'affectedFrames'>;

/**
 * @param at frames at which segments start, and the end
 * @param framesLeft frames to the end of the shoot, not below the end
 * @param mayChange whether a filter may change at segment k
 */
export function gridAt(
  at: Int32Array,
  framesLeft: number,
  { spacing, affectedFrames }: Spacing,
  mayChange: (k: number) => boolean,
): Grid {
  const last = at.length - 1;
  const held = Math.max(spacing, affectedFrames + 1);
  const freeAfterCue = new Int32Array(last);
  const freeAfterFilter = new Int32Array(last);
  const judgedAfterFilter = new Float64Array(last);
  for (let k = 0, cue = 0, filter = 0, judged = 0; k < last; k++) {
    while (cue < last && at[cue] < at[k] + spacing) cue++;
    while (filter < last && at[filter] < at[k] + held) filter++;
    freeAfterCue[k] = cue;
    // The first frame judged again must be looked at, and be one of the shoot.
    const frame = at[k] + affectedFrames;
    if (frame >= Math.min(at[last], framesLeft) || !mayChange(k)) continue;
    while (at[judged + 1] <= frame) judged++;
    freeAfterFilter[k] = filter;
    judgedAfterFilter[k] = judged + (frame - at[judged]) / (at[judged + 1] - at[judged]);
  }
  return { at, freeAfterCue, freeAfterFilter, judgedAfterFilter };
}

/** A place at every frame. */
export function everyFrame(frameCount: number, spacing: Spacing): Grid {
  const at = new Int32Array(frameCount + 1);
  for (let frame = 0; frame <= frameCount; frame++) at[frame] = frame;
  return gridAt(at, frameCount, spacing, () => true);
}
