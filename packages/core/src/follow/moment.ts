// Which frame a line of input is about, with clocks that jump and slips of the finger. Frames go by whether anyone asks, so
// a later time is believed at once as far as one cue of hands reaches; farther, cues would be taken as done that nobody did,
// and it must be borne out. Frames cannot be untaken: an earlier time is believed only once it has come three times.

import type { RampCue } from '../ramp/way.js';
import { warningOf } from './english.js';
import { type Evening, frameText } from './evening.js';
import type { FollowInput } from './types.js';
import type { FollowWarning } from './warning.js';

/** Times that are not believed yet: all earlier than what was answered, or all far ahead of it. */
export interface Doubted {
  readonly way: 'back' | 'ahead';
  readonly count: number; // in a row
  readonly frame: number; // that the last of them named
}

/** What was known before the line. */
export interface Before {
  readonly last: number | undefined; // frame answered last
  readonly told: readonly RampCue[];
  readonly doubted: Doubted | undefined;
}

export interface Moment {
  readonly frame: number; // to answer for
  readonly asked: number; // that the line names, the shoot's last at most; `frame` where that is doubted
  /** `on`: the next frame, a later one or the same; `late`: a line that took its time; the others as they say. */
  readonly kind: 'on' | 'late' | 'back' | 'rewound' | 'ahead';
  readonly doubted: Doubted | undefined;
  readonly warning?: FollowWarning;
}

const LATE_MS = 60_000;
const REWINDS_BELIEVED = 3;
/** Our choice: as far as cues are told. Whoever asks every ten minutes goes on being believed while no cues come. */
const JUMP_MS = 20 * 60_000;

/** Never throws: a time that is none is told, and the frame answered last is answered again. */
export function momentOf(evening: Evening, input: FollowInput, before: Before): Moment {
  const { frameCount, intervalMs } = evening;
  const { last, doubted } = before;
  const from = last ?? 0;
  const named = namedFrame(evening, input);
  if (typeof named !== 'number') {
    const here = { frame: from, asked: from, kind: 'on', doubted } as const;
    return named === undefined ? here : { ...here, warning: named };
  }
  if (isJump(evening, before, named) && input.jump !== true) {
    const agrees = doubted?.way === 'ahead' && bearsOut(evening, from, doubted.frame, named);
    if (!agrees) return aheadInDoubt(evening, from, named);
  }
  if (named >= frameCount) {
    const frame = frameCount - 1;
    const warning = warningOf({ kind: 'over', frameCount });
    return { frame, asked: frame, kind: 'on', doubted: undefined, warning };
  }
  if (last === undefined || named >= last) {
    return { frame: named, asked: named, kind: 'on', doubted: undefined };
  }
  // When a cue was done is no statement about what time it is.
  const late = input.done !== undefined || (last - named) * intervalMs <= LATE_MS;
  if (late) return { frame: last, asked: named, kind: 'late', doubted };
  return earlier(evening, last, named, input.jump === true, doubted);
}

/** Whether more than the next cue of hands would be passed over, or as much time as cues are told for. */
function isJump({ plan, frameCount, intervalMs }: Evening, { last, told }: Before, named: number): boolean {
  // Whoever joins late is believed; not that the evening is over before it began.
  if (last === undefined && named < frameCount) return false;
  const from = last ?? 0;
  if (named <= from || from === frameCount - 1) return false;
  // Of a rig nothing is taken as done.
  const passed = plan.shoot.crew === 'rig' ? 0 : told.filter(({ frame }) => frame < named).length;
  return passed > 1 || (named - from) * intervalMs >= JUMP_MS;
}

/** Whether a second time goes on from a first: about the same, or no farther from it than it was from before. */
function bearsOut({ intervalMs }: Evening, from: number, first: number, second: number): boolean {
  const apartMs = (second - first) * intervalMs;
  return apartMs >= -LATE_MS && apartMs <= Math.max(JUMP_MS, (first - from) * intervalMs);
}

function aheadInDoubt(evening: Evening, from: number, named: number): Moment {
  const { frameCount, intervalMs } = evening;
  const minutes = Math.round(((named - from) * intervalMs) / 60_000);
  const far =
    named < frameCount
      ? ({ reason: 'far-ahead', frame: named, at: frameText(evening, named), minutes } as const)
      : ({ reason: 'past-the-last', frame: named, frameCount } as const);
  return {
    frame: from,
    asked: from,
    kind: 'ahead',
    doubted: { way: 'ahead', count: 1, frame: named },
    warning: warningOf({ kind: 'jump-doubted', ...far }, evening.plan.clocksBack),
  };
}

function earlier(
  evening: Evening,
  last: number,
  named: number,
  sure: boolean,
  doubted: Doubted | undefined,
): Moment {
  const goesOn = doubted?.way === 'back' && named >= doubted.frame;
  const count = goesOn ? doubted.count + 1 : 1;
  const believed = sure || count >= REWINDS_BELIEVED;
  const at = frameText(evening, named);
  const said = { kind: 'clock-back', frames: last - named, frame: named, at, believed } as const;
  const warning = warningOf(said, evening.plan.clocksBack);
  if (believed) {
    return { frame: named, asked: named, kind: 'rewound', doubted: undefined, warning };
  }
  return { frame: last, asked: named, kind: 'back', doubted: { way: 'back', count, frame: named }, warning };
}

/** The frame that a line names, however far; undefined where it names none; what is wrong with one that cannot be. */
function namedFrame(
  { startMs, intervalMs }: Evening,
  { frame, atMs, reading }: FollowInput,
): number | FollowWarning | undefined {
  if (frame !== undefined) {
    if (Number.isInteger(frame) && frame >= 0) return frame;
    return noTime('frame', frame);
  }
  if (atMs !== undefined && !Number.isFinite(atMs)) return noTime('time', atMs);
  const whenMs = atMs ?? reading?.atMs;
  if (whenMs === undefined || !Number.isFinite(whenMs)) return undefined;
  // A reading a rounding after the frame's start is still for that frame. Adding 0 keeps -0 out of sight.
  return Math.max(0, Math.ceil((whenMs - startMs) / intervalMs - 1e-6)) + 0;
}

function noTime(what: 'frame' | 'time', given: number): FollowWarning {
  return warningOf({ kind: 'time-unknown', what, given: String(given) });
}
