// What one interval must hold, one after the other: the shutter in its true time, the same again for a dark frame,
// writing, the move to the next frame's place, and settling there. Source: docs/moves.md, "Time in one interval".

import { within } from '../check.js';
import { type Bracket, bracketSum, type Exposing, exposingS, pausesS } from '../footage/bracket.js';
import { frameCountOf, longestTimeInside } from '../footage/frames.js';
import { stepTimeS, wayInS } from './gear.js';
import type { Travel } from './resolve.js';
import { largestStep, stepAfter } from './steps.js';

/** What the camera needs beside the shutter. */
export interface CameraTimes {
  /** `camera.gapS`: writing and whatever else is no move, >= 0. */
  readonly writeS: number;
  readonly darkFrame: boolean;
  /** Absent: one exposure. */
  readonly bracket?: Bracket | undefined;
}

/** One interval, cut up. They add up to the interval; `slackS` below 0 is time that is missing. */
export interface FrameBudget {
  /** Exact seconds, "30" is 32. */
  readonly shutterS: number;
  /** The other exposures of a bracket, and the pauses between them, seconds; absent without one. */
  readonly bracketS?: number | undefined;
  /** Dark frames, as long as the exposures, or 0, seconds. */
  readonly darkS: number;
  /** Writing and what else is neither shutter nor move, seconds. */
  readonly writeS: number;
  /** Of stopped moves, the slowest of those that move at once, seconds; 0 after the last frame. */
  readonly moveS: number;
  /** Rest until the picture stands, the longest of those that move, seconds; 0 after the last frame. */
  readonly settleS: number;
  /** What is left, seconds; below 0 it is missing. */
  readonly slackS: number;
}

/** The part of every interval that the shutter may not use, and what it is made of. */
export interface GapParts {
  /** Writing and what else is neither shutter nor move, seconds. */
  readonly writeS: number;
  /** The longest step of all, seconds. */
  readonly moveS: number;
  /** Rest after it, seconds. */
  readonly settleS: number;
  /** Their sum, seconds. */
  readonly gapS: number;
}

/** Seconds by which sums of times may miss the interval through rounding. */
const ROUNDING_S = 1e-9;

/** Budget of one frame. */
export function budgetOf(
  travels: readonly Travel[],
  {
    frame,
    frameCount,
    shutterS,
    intervalS,
  }: { frame: number; frameCount: number; shutterS: number; intervalS: number },
  { writeS, darkFrame, bracket }: CameraTimes,
): FrameBudget {
  const lengths = travels.map((travel) => stepAfter(travel, frame, frameCount));
  const { moveS, settleS } = timesOf(travels, lengths);
  const exposedS = shutterS * bracketSum(bracket);
  const darkS = darkFrame ? exposedS : 0;
  const bracketS = exposedS - shutterS + pausesS(bracket);
  const slackS = intervalS - shutterS - bracketS - darkS - writeS - moveS - settleS;
  return {
    shutterS,
    ...(bracket === undefined ? {} : { bracketS }),
    darkS,
    writeS,
    moveS,
    settleS,
    slackS,
  };
}

/** Whether everything fits. */
export function fits({ slackS }: FrameBudget): boolean {
  return slackS >= -ROUNDING_S;
}

/**
 * The gap of every interval of a shoot: what the camera needs, and the longest step with its rest. It is the same
 * for all frames, so that a ramp solved with it leaves every move its time. Without stopped moves it is `writeS`.
 */
export function gapOf(travels: readonly Travel[], frameCount: number, writeS: number): GapParts {
  const lengths = travels.map((travel) => largestStep(travel, frameCount));
  const { moveS, settleS } = timesOf(travels, lengths);
  return { writeS, moveS, settleS, gapS: writeS + moveS + settleS };
}

/** Longest exact shutter time beside a gap; may be negative. */
export function shutterRoomS(intervalS: number, gapS: number, exposing: Exposing): number {
  return longestTimeInside(intervalS, { gapS, ...exposing });
}

/**
 * Least interval, in whole seconds, at which a shutter fits every frame of a recording with these moves.
 * Fewer frames take longer steps, so a longer interval needs more of itself; undefined where the motor is too slow
 * for the whole way in the whole time.
 *
 * @param recordingS from the first frame to the last, > 0
 */
export function leastIntervalS(
  travels: readonly Travel[],
  recordingS: number,
  shutterS: number,
  { writeS, ...exposing }: CameraTimes,
): number | undefined {
  const busyS = exposingS(shutterS, exposing);
  let intervalS = Math.max(1, Math.ceil(busyS + writeS - ROUNDING_S));
  while (intervalS <= recordingS) {
    const frameCount = frameCountOf(recordingS, intervalS);
    const { gapS } = gapOf(travels, frameCount, writeS);
    const needS = Math.max(intervalS, Math.ceil(busyS + gapS - ROUNDING_S));
    // All intervals that give so many frames need as much: of them the first that is enough, or none.
    if (needS <= recordingS && frameCountOf(recordingS, needS) === frameCount) return needS;
    intervalS = Math.max(intervalS + 1, frameCount < 2 ? 0 : Math.floor(recordingS / (frameCount - 1)));
  }
  return undefined;
}

/**
 * Share of the planned lengths that fits the time between the frames, 0 to 1: 1 where all fits now, 0 where even
 * standing still would not.
 *
 * @param roomS seconds each interval leaves for moving, after shutter, dark frame, writing and settling
 */
export function lengthShareThatFits(travels: readonly Travel[], roomS: readonly number[]): number {
  const stopped = travels.filter(({ mode }) => mode === 'stopped');
  let share = 1;
  for (const [frame, timeS] of roomS.entries()) {
    for (const travel of stopped) {
      const step = Math.abs(stepAfter(travel, frame, roomS.length));
      if (step > 0) share = Math.min(share, wayInS(timeS + ROUNDING_S, travel.motor) / step);
    }
  }
  return within('share', share, 0, 1);
}

function timesOf(travels: readonly Travel[], lengths: readonly number[]): { moveS: number; settleS: number } {
  let [moveS, settleS] = [0, 0];
  for (const [i, { mode, motor }] of travels.entries()) {
    if (mode !== 'stopped' || lengths[i] === 0) continue;
    moveS = Math.max(moveS, stepTimeS(lengths[i], motor));
    settleS = Math.max(settleS, motor.settleS);
  }
  return { moveS, settleS };
}
