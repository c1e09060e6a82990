// Which levels stay within tolerance, frame by frame and over the frames a setting must be held.

/** Levels low…high, both included; empty where low > high. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** One band for each (frame, stack), at index frame * stackCount + stack. */
export interface Bands {
  readonly low: Int32Array;
  readonly count: Int32Array; // levels in the band; 0 where none
  readonly tallest: number; // largest count
}

/** Lowest and highest value over a window that starts at each frame. */
export interface SlidingRange {
  readonly min: Float64Array;
  readonly max: Float64Array; // a window wholly beyond the last frame: -Infinity to Infinity, which no level is near
}

/**
 * Extremes of `values` over frames j + offset … j + offset + windowFrames - 1, cut at the last frame,
 * for each j. Linear in the number of values whatever the window.
 */
export function slidingRange(values: Float64Array, windowFrames: number, offset: number): SlidingRange {
  return {
    min: slidingExtreme(values, windowFrames, offset, notAbove, Number.NEGATIVE_INFINITY),
    max: slidingExtreme(values, windowFrames, offset, notBelow, Number.POSITIVE_INFINITY),
  };
}

const notAbove = (a: number, b: number) => a <= b;
const notBelow = (a: number, b: number) => a >= b;

function slidingExtreme(
  values: Float64Array,
  windowFrames: number,
  offset: number,
  beats: (a: number, b: number) => boolean,
  none: number,
): Float64Array {
  const count = values.length;
  const extreme = new Float64Array(count).fill(none);
  const queue = new Int32Array(count); // frames that may still be the extreme, the present one first
  let head = 0;
  let tail = 0;
  for (let from = count - 1; from >= offset; from--) {
    while (tail > head && beats(values[from], values[queue[tail - 1]])) tail--;
    queue[tail++] = from;
    while (queue[head] > from + windowFrames - 1) head++;
    extreme[from - offset] = values[queue[head]];
  }
  return extreme;
}

/** Bands of every stack within tolerance of a whole range of targets, cut to the levels the kit has. */
export function bandsOf(
  range: SlidingRange,
  stops: readonly number[],
  toleranceEv: number,
  stepsPerStop: number,
  kitLevels: Band,
): Bands {
  const frameCount = range.min.length;
  const low = new Int32Array(frameCount * stops.length);
  const count = new Int32Array(frameCount * stops.length);
  let tallest = 0;
  const reachEv = toleranceEv + 1e-9;
  for (let frame = 0, at = 0; frame < frameCount; frame++) {
    for (let stack = 0; stack < stops.length; stack++, at++) {
      const from = Math.max(
        kitLevels.low,
        Math.ceil((range.max[frame] - reachEv - stops[stack]) * stepsPerStop),
      );
      const to = Math.min(
        kitLevels.high,
        Math.floor((range.min[frame] + reachEv - stops[stack]) * stepsPerStop),
      );
      if (to < from) continue;
      low[at] = from;
      count[at] = to - from + 1;
      if (count[at] > tallest) tallest = count[at];
    }
  }
  return { low, count, tallest };
}
