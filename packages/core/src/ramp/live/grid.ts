// When a live solve may place cues: at every frame soon, every few frames later. The next answer decides only
// whether to act now, so later cues need no finer timing than that; they are placed again as they come near.

import { type Grid, gridAt } from '../grid.js';

/** Every frame up to this lead is a place for a cue. */
const FINE_S = 90;
/** Beyond it, and for filter changes after the next frame, cues are placed about this far apart, or closer where cues may come closer. */
const COARSE_S = 30;
const FAR_S = 1200;

/**
 * @param from first frame at which a cue may come
 * @param end frames looked at, > from
 * @param framesLeft frames to the end of the shoot, >= end
 * @param spacing frames from a cue to the next, >= 1
 * @param affectedFrames frames that a filter change affects
 * @param begun whether segment 0 is to have no frames: what stands on the camera before the first
 */
export function gridAhead(
  from: number,
  end: number,
  framesLeft: number,
  {
    spacing,
    affectedFrames,
    intervalS,
    begun,
  }: { spacing: number; affectedFrames: number; intervalS: number; begun: boolean },
): Grid {
  const stride = strideOf(spacing, intervalS);
  const filterStride = Math.max(1, Math.floor(COARSE_S / intervalS));
  const fine = Math.ceil(FINE_S / intervalS);
  // Where the whole evening is looked at, its far end may be coarser still, up to the cues' own spacing.
  const far = Math.ceil(FAR_S / intervalS);
  const wide = Math.max(stride, Math.min(spacing, Math.floor((2 * COARSE_S) / intervalS)));
  const starts: number[] = begun ? [from] : [];
  for (let frame = from; frame < end; frame += frame < fine ? 1 : frame < far ? stride : wide) {
    starts.push(frame);
  }
  const at = Int32Array.from([...starts, end]);
  const mayChange = (k: number) => (at[k] - from) % filterStride < at[k + 1] - at[k];
  return gridAt(at, framesLeft, { spacing, affectedFrames }, mayChange);
}

/** A stride that divides the spacing, so that a coarse grid does not slow the cues down. */
function strideOf(spacing: number, intervalS: number): number {
  const most = Math.max(1, Math.floor(COARSE_S / intervalS));
  return spacing === 1 ? most : Math.ceil(spacing / Math.ceil(spacing / most));
}
