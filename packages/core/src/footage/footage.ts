// Recording time, interval and clip length: any two give the third, before anything starts.
// Sources: docs/sources.md#interval, docs/sources.md#frame-rates.

import { positive } from '../check.js';
import { dialLabel, dialStep, type StepsPerStop, timeOfStep } from '../exposure/dial.js';
import { aGroup, flag, group, groupWith, hold } from '../hold.js';
import { clipLengthS, frameCountOf, longestTimeInside } from './frames.js';

/** A frame rate as it is named and as it is. */
export interface FrameRate {
  /** As it is named: "23.976". */
  readonly label: string;
  /** Frames a second, exact: 24000/1001. */
  readonly fps: number;
}

/**
 * Frame rates of film and video. "23.976", "29.97" and "59.94" are 24, 30 and 60 slowed by 1000/1001. Source:
 * NTSC rates, 1000/1001 of the round ones.
 */
export const FRAME_RATES: readonly FrameRate[] = [
  { label: '23.976', fps: 24_000 / 1001 },
  { label: '24', fps: 24 },
  { label: '25', fps: 25 },
  { label: '29.97', fps: 30_000 / 1001 },
  { label: '30', fps: 30 },
  { label: '50', fps: 50 },
  { label: '59.94', fps: 60_000 / 1001 },
  { label: '60', fps: 60 },
];

/**
 * The rate that a number means: 23.976 and 23.98 are 24000/1001; a number that is near no named rate is
 * itself. Source: NTSC rates, 1000/1001 of the round ones.
 *
 * @param clipFps frames a second, > 0
 * @returns frames a second, exact
 * @throws RangeError unless clipFps is positive and finite
 * @example
 * ```ts
 * import { exactFps } from '@evenfall/core';
 *
 * exactFps(23.98); // → 24000 / 1001
 * exactFps(25); // → 25
 * ```
 */
export function exactFps(clipFps: number): number {
  positive('clipFps', clipFps);
  return FRAME_RATES.find(({ fps }) => Math.abs(fps - clipFps) < 0.005)?.fps ?? clipFps;
}

/**
 * Two of three: `recordingS`, the time that the light or the patience lasts; `intervalS`, from one frame to
 * the next; `clipS`, the length of the clip. Seconds, > 0.
 */
export type FootageGiven =
  | { readonly recordingS: number; readonly intervalS: number }
  | { readonly recordingS: number; readonly clipS: number }
  | { readonly intervalS: number; readonly clipS: number };

/** All three, and the frames that tie them: `recordingS = (frameCount - 1) · intervalS`, `clipS = frameCount / fps`. */
export interface Footage {
  /** Whole, 1 or more. */
  readonly frameCount: number;
  /** Seconds from the first shutter to the last. */
  readonly recordingS: number;
  /** Seconds from one frame's start to the next. */
  readonly intervalS: number;
  /** Seconds of clip. */
  readonly clipS: number;
}

/**
 * The third from any two. Frames are whole: a clip is never shorter than asked for, a recording never longer.
 * Source: arithmetic, both ends exposed.
 *
 * @param given two of recording time, interval and clip length, seconds, > 0
 * @param clipFps frames a second of the clip, > 0; 23.976 is taken as 24000/1001
 * @param options `wholeSeconds`: at an interval that any intervalometer can count, the whole second below, so that the clip
 *   grows rather than shrinks and the recording is at most one interval shorter; footage under a second apart stays as it is
 * @returns all three, and the frames that tie them
 * @throws RangeError unless clipFps and the two of recordingS, intervalS and clipS are positive and finite,
 *   or where a clip of one frame is to fill a time
 * @example
 * ```ts
 * import { footageOf } from '@evenfall/core';
 *
 * // 12 s at 24 frames a second are 288 frames: 287 intervals in an hour and a half.
 * footageOf({ recordingS: 5400, clipS: 12 }, 24); // → { frameCount: 288, intervalS: 5400 / 287 }
 * // 10 s at 30 are 300 frames, every 4 s.
 * footageOf({ intervalS: 4, clipS: 10 }, 30); // → { frameCount: 300, recordingS: 1196 }
 * // 5400 s every 18 s are 301 frames, 12.54 s at 24 frames a second.
 * footageOf({ recordingS: 5400, clipS: 12 }, 24, { wholeSeconds: true });
 * // → { intervalS: 18, frameCount: 301, clipS: 12.54 }
 * ```
 */
export function footageOf(
  given: FootageGiven,
  clipFps: number,
  options: { readonly wholeSeconds?: boolean | undefined } = {},
): Footage {
  hold('given', given, groupWith({}));
  hold('options', options, group({}, { wholeSeconds: flag }));
  const fps = exactFps(clipFps);
  const asAsked = (found: Footage) => (options.wholeSeconds ? inWholeSeconds(found, fps) : found);
  if (!('clipS' in given)) {
    const { recordingS, intervalS } = given;
    return asAsked(footage(frameCountOf(positive('recordingS', recordingS), intervalS), intervalS, fps));
  }
  // A clip of a whole number of frames must not gain one to rounding.
  const frameCount = Math.ceil(positive('clipS', given.clipS) * fps - 1e-6);
  if ('intervalS' in given)
    return asAsked(footage(Math.max(1, frameCount), positive('intervalS', given.intervalS), fps));
  if (frameCount < 2) throw new RangeError(`clipS must hold two frames or more, got ${given.clipS}`);
  return asAsked(footage(frameCount, positive('recordingS', given.recordingS) / (frameCount - 1), fps));
}

/** The same recording at the whole second below; footage under a second apart stays as it is. */
function inWholeSeconds(found: Footage, fps: number): Footage {
  const whole = Math.floor(found.intervalS + 1e-9);
  return whole < 1 ? found : footage(frameCountOf(found.recordingS, whole), whole, fps);
}

/** A shutter time as the dial marks it, and what it is. */
export interface MarkedTime {
  /** What the dial says: "15". */
  readonly label: string;
  /** Seconds, exact: 16. */
  readonly timeS: number;
}

/**
 * The longest marked shutter that an interval holds in its true time.
 *
 * @param intervalS seconds, > 0
 * @param camera `gapS`, seconds of every interval that the shutter may not use, >= 0; `darkFrame`, whether
 *   the camera takes one as long after every frame; `stepsPerStop` of its dial
 * @returns label and exact time; undefined where not even 1/8000 s fits
 * @throws RangeError unless intervalS is positive and finite
 * @example
 * ```ts
 * import { longestMarkedShutter } from '@evenfall/core';
 *
 * // "30" is 32 s. In 40 s with its dark frame only "15" fits, which is 16 s twice.
 * const camera = { gapS: 1, darkFrame: true, stepsPerStop: 3 } as const;
 * longestMarkedShutter(40, camera); // → { label: '15', timeS: 16 }
 * longestMarkedShutter(40, { ...camera, darkFrame: false }); // → { label: '30', timeS: 32 }
 * ```
 */
export function longestMarkedShutter(
  intervalS: number,
  camera: { readonly gapS: number; readonly darkFrame: boolean; readonly stepsPerStop: StepsPerStop },
): MarkedTime | undefined {
  positive('intervalS', intervalS);
  hold('camera', camera, aGroup);
  const { gapS, darkFrame, stepsPerStop } = camera;
  const roomS = longestTimeInside(intervalS, { gapS, darkFrame });
  const shortest = dialStep('shutter', '1/8000', stepsPerStop) as number; // on every dial
  if (roomS < timeOfStep(shortest, stepsPerStop) * (1 - 1e-9)) return undefined;
  // Rounding must not lose a time that fits to the last bit; labels end at 2^14 s.
  const step = Math.max(-14 * stepsPerStop, Math.ceil(-stepsPerStop * Math.log2(roomS) - 1e-9));
  return { label: dialLabel('shutter', step, stepsPerStop), timeS: timeOfStep(step, stepsPerStop) };
}

/** Share of the interval that the shutter is open, as the angle of a film camera's: half the interval is 180°. */
export function shutterAngleDeg(timeS: number, intervalS: number): number {
  return (360 * positive('timeS', timeS)) / positive('intervalS', intervalS);
}

function footage(frameCount: number, intervalS: number, fps: number): Footage {
  return {
    frameCount,
    intervalS,
    recordingS: (frameCount - 1) * intervalS,
    clipS: clipLengthS(frameCount, fps),
  };
}
