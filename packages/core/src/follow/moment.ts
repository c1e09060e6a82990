// Which frame a line of input is about, with clocks that jump. Time passed is believed at once: frames go by
// whether anyone asks. Frames cannot be untaken: an earlier time is believed only once it has come three times.

import { within } from '../check.js';
import { type Evening, frameText } from './evening.js';
import type { FollowInput, FollowWarning } from './types.js';

/** Earlier times in a row, if any; a frame each. */
export interface Rewinds {
  readonly count: number;
  readonly frame: number;
}

export interface Moment {
  readonly frame: number; // to answer for
  readonly asked: number; // that the line names, the shoot's last at most
  /** `on`: the next frame, a later one or the same; `late`: a line that took its time; the others as they say. */
  readonly kind: 'on' | 'late' | 'back' | 'rewound';
  readonly rewinds: Rewinds | undefined;
  readonly warning?: FollowWarning;
}

const LATE_MS = 60_000;
const REWINDS_BELIEVED = 3;

/**
 * @param last frame answered last; undefined where none has been
 * @throws RangeError on a frame that is not a whole number from 0
 */
export function momentOf(
  evening: Evening,
  input: FollowInput,
  last: number | undefined,
  rewinds: Rewinds | undefined,
): Moment {
  const { frameCount, intervalMs } = evening;
  const asked = askedFrame(evening, input, last ?? 0);
  if (asked >= frameCount) {
    const text = `The last frame, ${frameCount}, has been taken.`;
    const frame = frameCount - 1;
    return { frame, asked: frame, kind: 'on', rewinds: undefined, warning: { kind: 'over', text } };
  }
  if (last === undefined || asked >= last) return { frame: asked, asked, kind: 'on', rewinds: undefined };
  // When a cue was done is no statement about what time it is.
  const late = input.done !== undefined || (last - asked) * intervalMs <= LATE_MS;
  if (late) return { frame: last, asked, kind: 'late', rewinds };

  const goesOn = rewinds !== undefined && asked >= rewinds.frame;
  const count = goesOn ? rewinds.count + 1 : 1;
  const back = `${last - asked} frames back, to ${frameText(evening, asked)}`;
  if (count >= REWINDS_BELIEVED) {
    const text = `The clock is taken to have been set ${back}.`;
    return {
      frame: asked,
      asked,
      kind: 'rewound',
      rewinds: undefined,
      warning: { kind: 'clock-back', text },
    };
  }
  const text = `This is ${back}: the setting is held, and the time believed if it goes on.`;
  return {
    frame: last,
    asked,
    kind: 'back',
    rewinds: { count, frame: asked },
    warning: { kind: 'clock-back', text },
  };
}

function askedFrame({ startMs, intervalMs }: Evening, input: FollowInput, last: number): number {
  if (input.frame !== undefined) {
    if (!Number.isInteger(input.frame))
      throw new RangeError(`frame must be a whole number, got ${input.frame}`);
    return within('frame', input.frame, 0, Number.MAX_SAFE_INTEGER);
  }
  const atMs = input.atMs ?? input.reading?.atMs;
  if (atMs === undefined) return last;
  if (!Number.isFinite(atMs)) throw new RangeError(`atMs must be finite, got ${atMs}`);
  // A reading a rounding after the frame's start is still for that frame. Adding 0 keeps -0 out of sight.
  return Math.max(0, Math.ceil((atMs - startMs) / intervalMs - 1e-6)) + 0;
}
