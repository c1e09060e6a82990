// A camera that moves: where it stands at each frame, whether each interval has time for it, how fast the clip
// will pass, and what to change. Keys and meaning: docs/moves.md.

import { positive } from '../check.js';
import { type Bracket, bracketReachEv } from '../footage/bracket.js';
import { aboveZero, aList, groupWith, hold, listOf } from '../hold.js';
import type { Optics } from './angle.js';
import type { Asked } from './asked.js';
import { type MoveCaution, moveCautions } from './cautions.js';
import type { MoveFinding } from './finding.js';
import type { Move } from './moves.js';
import { type Travel, travelsOf } from './resolve.js';
import { blurPx, fastestOnScreen, type ScreenSpeed, widthsOf } from './screen.js';
import { onScreen, smallSteps, smear } from './screen-advice.js';
import { motorStepsAt, positionAt, stepAfter } from './steps.js';
import { gearTooSlow, noTime, tightestFrame } from './time-advice.js';
import { budgetOf, type FrameBudget, type GapParts, gapOf } from './time-budget.js';
import { type MoveLines, moveLines } from './words.js';

export type {
  Lens,
  Optics,
  PicturePoint,
  Sensor,
  Way,
} from './angle.js';
export type { MoveCaution } from './cautions.js';
export type { Ease } from './ease.js';
export type { MoveFaultFacts } from './fault.js';
export type { LengthChange, MoveChange, MoveFinding, MoveFound, MoveRemedy, Pace } from './finding.js';
export type {
  Move,
  MoveAxis,
  MoveMode,
  SlideBy,
  SlideGear,
  SlideMove,
  TurnBy,
  TurnGear,
  TurnMove,
} from './moves.js';
export type { Travel } from './resolve.js';
export type { ScreenSpeed } from './screen.js';
export type { FrameBudget, GapParts } from './time-budget.js';
export type { MoveLines } from './words.js';

/** What a move is planned for: the frames as the ramp exposes them, and how they become a clip. */
export interface MoveRequest {
  /** At most one an axis. */
  readonly moves: readonly Move[];
  /** One or more, each with its exact `shutterS`, seconds, > 0. */
  readonly frames: readonly { readonly shutterS: number }[];
  /** Seconds from one frame's start to the next, > 0. */
  readonly intervalS: number;
  /** Frames a second of the clip, exact, > 0. */
  readonly clipFps: number;
  /** What the camera needs beside shutter and move, seconds, >= 0: `camera.gapS`. */
  readonly writeS: number;
  /** Whether the camera takes a dark frame as long after every frame. */
  readonly darkFrame: boolean;
  /** Several exposures in every interval; absent: one. */
  readonly bracket?: Bracket | undefined;
  /** Needed for moves by points and for speed on screen. */
  readonly optics?: Optics | undefined;
}

/** One frame of a move: what a plan's frame has beside its exposure. */
export interface MoveFrame extends Omit<FrameBudget, 'shutterS'> {
  /** From where it starts, degrees, right positive. */
  readonly panDeg?: number | undefined;
  /** From where it starts, degrees, up positive. */
  readonly tiltDeg?: number | undefined;
  /** From where it starts, metres, right, or forward, positive. */
  readonly slideM?: number | undefined;
  /** Whole motor steps from the start. */
  readonly panSteps?: number | undefined;
  /** Whole motor steps from the start. */
  readonly tiltSteps?: number | undefined;
  /** Whole motor steps from the start. */
  readonly slideSteps?: number | undefined;
  /** Frame widths a second of clip, on the way to the next frame. */
  readonly widthsPerS?: number | undefined;
  /** Smear while the shutter is open, pixels; 0 for stopped moves. */
  readonly blurPx?: number | undefined;
}

/** A move, whole. */
export interface MovePlan {
  /** The moves in numbers, in the order given. */
  readonly travels: readonly Travel[];
  /** One a frame; entry i is frame i. */
  readonly frames: readonly MoveFrame[];
  /** Seconds of every interval that the shutter may not use. */
  readonly gap: GapParts;
  /** The `frame` with the least time to spare, from 0, and its `slackS`, seconds. */
  readonly tightest: { readonly frame: number; readonly slackS: number };
  /** Absent where the lens, or a slide's distance, is not known. */
  readonly fastest?: ScreenSpeed | undefined;
  /** None or more, warnings first. */
  readonly findings: readonly MoveFinding[];
  /** In sentences, one entry a move. */
  readonly lines: readonly MoveLines[];
  /** Of gear and place, none or more. */
  readonly cautions: readonly MoveCaution[];
}

/**
 * Plans moves over frames that are already exposed: nothing here changes a shutter. A move that has no time,
 * or is hard to watch, is answered with findings and their remedies.
 *
 * @param request moves, frames and how they become a clip
 * @returns positions, the time of every interval, speed on screen, and what to change
 * @throws RangeError on moves that a shoot file may not hold, on no frames (`frames.length`), and unless
 *   intervalS, clipFps and shutterS are positive and finite and writeS is 0 or more
 * @example
 * ```ts
 * import { planMoves } from '@evenfall/core';
 *
 * const request = {
 *   moves: [{
 *     axis: 'pan',
 *     by: { deg: 90 },
 *     mode: 'stopped',
 *     ease: 'linear',
 *     gear: { settleS: 1, topSpeedDegPerS: 15 },
 *   }],
 *   frames: [{ shutterS: 2 }, { shutterS: 2 }, { shutterS: 2 }],
 *   intervalS: 8,
 *   clipFps: 24,
 *   writeS: 1,
 *   darkFrame: false,
 * } as const;
 * const { frames, tightest } = planMoves(request);
 * frames.map(({ panDeg }) => panDeg); // → [0, 45, 90]
 * // 45° at 15° a second are 3 s: with 2 of shutter, 1 of writing and 1 of rest 1 is to spare.
 * tightest; // → { frame: 0, slackS: 1 }
 * ```
 */
export function planMoves(request: MoveRequest): MovePlan {
  hold('request', request, groupWith({ moves: aList, frames: listOf(groupWith({ shutterS: aboveZero })) }));
  const { moves, frames, optics, darkFrame, bracket } = request;
  const times = { darkFrame, ...(bracket === undefined ? {} : { bracket }) };
  // The longest exposure smears most, wherever it stands among them.
  const longest = 2 ** bracketReachEv(bracket);
  const intervalS = positive('intervalS', request.intervalS);
  const clipFps = positive('clipFps', request.clipFps);
  const frameCount = positive('frames.length', frames.length);
  const writeS = request.writeS === 0 ? 0 : positive('writeS', request.writeS);
  const travels = travelsOf(moves, optics);
  const budgets = frames.map(({ shutterS }, frame) =>
    budgetOf(
      travels,
      { frame, frameCount, shutterS: positive('shutterS', shutterS), intervalS },
      { writeS, ...times },
    ),
  );
  const moved = frames.map(({ shutterS }, frame): MoveFrame => {
    const steps = travels.map((travel) => stepAfter(travel, frame, frameCount));
    const widths = widthsOf(travels, steps, optics);
    const blur = blurPx(travels, frame, frame + (longest * shutterS) / intervalS, frameCount, optics);
    const { bracketS, darkS, writeS: busyS, moveS, settleS, slackS } = budgets[frame];
    // Key by key: a shoot has thousands of frames, and gathering keys into new objects takes longer than the moves.
    const filled: BeingFilled = {};
    for (const travel of travels) fillPosition(filled, travel, positionAt(travel, frame, frameCount));
    if (bracketS !== undefined) filled.bracketS = bracketS;
    filled.darkS = darkS;
    filled.writeS = busyS;
    filled.moveS = moveS;
    filled.settleS = settleS;
    filled.slackS = slackS;
    if (widths !== undefined) filled.widthsPerS = widths * clipFps;
    if (blur !== undefined) filled.blurPx = blur;
    return filled as MoveFrame;
  });

  const asked: Asked = {
    travels,
    budgets,
    intervalS,
    clipFps,
    writeS,
    ...times,
    ...(optics === undefined ? {} : { optics }),
  };
  const fastest = fastestOnScreen(travels, frameCount, clipFps, optics);
  const frame = tightestFrame(budgets);
  const order = ['warning', 'caution', 'info'];
  return {
    travels,
    frames: moved,
    gap: gapOf(travels, frameCount, writeS),
    tightest: { frame, slackS: budgets[frame].slackS },
    ...(fastest === undefined ? {} : { fastest }),
    findings: [
      ...noTime(asked),
      ...gearTooSlow(asked),
      ...onScreen(asked),
      ...smear(
        asked,
        moved.map(({ blurPx: px }) => px),
      ),
      ...smallSteps(asked),
    ].sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level)),
    lines: travels.map((travel) => moveLines(travel, frameCount)),
    cautions: moveCautions(moves),
  };
}

type BeingFilled = { -readonly [Key in keyof MoveFrame]?: MoveFrame[Key] };

/** Position of one axis under its own keys: "panDeg", and "panSteps" where the motor's step is known. */
function fillPosition(filled: BeingFilled, travel: Travel, position: number): void {
  const { axis } = travel;
  filled[axis === 'slide' ? 'slideM' : axis === 'tilt' ? 'tiltDeg' : 'panDeg'] = position;
  const steps = motorStepsAt(position, travel);
  if (steps !== undefined) {
    filled[axis === 'slide' ? 'slideSteps' : axis === 'tilt' ? 'tiltSteps' : 'panSteps'] = steps;
  }
}
