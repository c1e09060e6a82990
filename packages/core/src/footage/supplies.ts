// Card and battery: how many frames they hold, when they run out by the clock, and what would fit.
// Sources: docs/sources.md#storage, docs/sources.md#battery-cold.

import { positive, whole, within } from '../check.js';
import { groupWith, hold } from '../hold.js';
import { type Bracket, suppliesByFrame } from './bracket.js';

/**
 * Whole frames that fit a card; megabytes and gigabytes are decimal, as cards are sold. Source:
 * IEC 80000-13, decimal megabytes and gigabytes.
 *
 * @param cardGB gigabytes of 10⁹ bytes, > 0
 * @param frameMB megabytes of 10⁶ bytes that one frame takes, > 0
 * @returns whole frames, 0 or more
 * @throws RangeError unless cardGB and frameMB are positive and finite
 */
export function framesOnCard(cardGB: number, frameMB: number): number {
  // A card that holds a whole number of frames must not lose one to rounding.
  return Math.floor((positive('cardGB', cardGB) * 1000) / positive('frameMB', frameMB) + 1e-9);
}

/**
 * Whole frames one charge gives in the cold. Source: Battery University, BU-502.
 *
 * @param batteryFrames that one charge gives in the warm, > 0
 * @param coldFactor share of the charge that is left to use, 0 to 1; 1 in the warm
 * @returns whole frames, 0 or more
 * @throws RangeError unless batteryFrames is positive and finite and coldFactor is from 0 to 1
 */
export function framesOnCharge(batteryFrames: number, coldFactor = 1): number {
  return Math.floor(positive('batteryFrames', batteryFrames) * within('coldFactor', coldFactor, 0, 1) + 1e-9);
}

/** What a camera has for its frames, as far as it is known; exposures of a bracket are one frame. */
export interface FramesHeld {
  /** Whole frames that fit the card, 0 or more. */
  readonly onCard?: number | undefined;
  /** Whole frames that one charge gives, 0 or more. */
  readonly onCharge?: number | undefined;
}

/**
 * How many frames card and battery are good for. Sources: IEC 80000-13, decimal megabytes and gigabytes, Battery University, BU-502.
 *
 * @param camera of a shoot: `cardGB` and `frameMB`, decimal, each > 0; `batteryFrames`, exposures a charge, > 0;
 *   `coldFactor`, the share of the charge that is left to use, 0 to 1; its `bracket`
 * @returns frames for what is stated of them
 * @throws RangeError on a number that is out of range
 * @example
 * ```ts
 * import { framesHeld } from '@evenfall/core';
 *
 * const camera = { cardGB: 64, frameMB: 30, batteryFrames: 900, coldFactor: 0.75 };
 * framesHeld(camera); // → { onCard: 2133, onCharge: 675 }
 * const bracket = { frames: 3, stepEv: 2, betweenS: 0.3 } as const;
 * framesHeld({ ...camera, bracket }); // → { onCard: 711, onCharge: 225 }
 * ```
 */
export function framesHeld(camera: {
  readonly cardGB?: number | undefined;
  readonly frameMB?: number | undefined;
  readonly batteryFrames?: number | undefined;
  readonly coldFactor?: number | undefined;
  readonly bracket?: Bracket | undefined;
}): FramesHeld {
  hold('camera', camera, groupWith({}));
  const { cardGB, frameMB, batteryFrames, coldFactor } = suppliesByFrame(camera);
  return {
    ...(cardGB === undefined || frameMB === undefined ? {} : { onCard: framesOnCard(cardGB, frameMB) }),
    ...(batteryFrames === undefined ? {} : { onCharge: framesOnCharge(batteryFrames, coldFactor) }),
  };
}

/** A shoot that uses something up frame by frame. */
export interface SuppliedShoot {
  /** First frame, UTC epoch milliseconds. */
  readonly startMs: number;
  /** Frames wanted, whole, 1 or more. */
  readonly frameCount: number;
  /** Seconds, > 0. */
  readonly intervalS: number;
}

/** How far a supply of so many frames lasts. */
export interface Lasting {
  /** That the supply gives, whole. */
  readonly frames: number;
  /** Whether it gives all that are wanted. */
  readonly lasts: boolean;
  /** Start of the first frame that is not to be had, UTC epoch milliseconds; absent where it lasts. */
  readonly outAtMs?: number | undefined;
  /** Interval at which these frames last to the end, seconds, to hundredths; absent for one frame or none. */
  readonly fitIntervalS?: number | undefined;
  /** Supplies of this size the shoot wants, rounded up; absent where this one gives nothing. */
  readonly needed?: number | undefined;
}

/**
 * Whether a supply of frames lasts, when it is out, and what would fit.
 *
 * @param frames whole, 0 or more: from {@link framesHeld}
 * @param use the shoot that uses them up
 * @returns when the supply is out and the interval at which it would last
 * @throws RangeError unless frames is a whole number not below 0 and intervalS is positive and finite
 */
export function lastingOf(frames: number, { startMs, frameCount, intervalS }: SuppliedShoot): Lasting {
  within('frames', whole('frames', frames), 0, Number.MAX_SAFE_INTEGER);
  positive('intervalS', intervalS);
  const needed = frames === 0 ? {} : { needed: Math.ceil(frameCount / frames) };
  if (frameCount <= frames) return { frames, lasts: true, ...needed };
  const recordingS = (frameCount - 1) * intervalS;
  return {
    frames,
    lasts: false,
    outAtMs: startMs + frames * intervalS * 1000,
    // Rounded up, so that the number to set is enough.
    ...(frames < 2 ? {} : { fitIntervalS: Math.ceil((recordingS / (frames - 1)) * 100 - 1e-7) / 100 }),
    ...needed,
  };
}

/** What the frames take and whether it is there; absent where it is not known. */
export interface Supplies {
  /** Space the frames take, decimal gigabytes. */
  readonly cardNeededGB?: number | undefined;
  /** Whether the card has it. */
  readonly cardFits?: boolean | undefined;
  /** Whether one charge lasts. */
  readonly batteryFits?: boolean | undefined;
}

/**
 * Card and battery for so many frames.
 *
 * @param frameCount whole, 0 or more
 * @param camera `frameMB`, `cardGB` and `batteryFrames` as far as known, each > 0; `coldFactor` 0 to 1, 1
 *   where absent
 * @returns what can be said from them
 * @throws RangeError on a battery or a cold factor out of range
 */
export function suppliesFor(
  frameCount: number,
  {
    frameMB,
    cardGB,
    batteryFrames,
    coldFactor = 1,
  }: {
    readonly frameMB?: number | undefined;
    readonly cardGB?: number | undefined;
    readonly batteryFrames?: number | undefined;
    readonly coldFactor?: number | undefined;
  },
): Supplies {
  const cardNeededGB = frameMB === undefined ? undefined : (frameCount * frameMB) / 1000;
  return {
    ...(cardNeededGB === undefined ? {} : { cardNeededGB }),
    ...(cardNeededGB === undefined || cardGB === undefined ? {} : { cardFits: cardNeededGB <= cardGB }),
    ...(batteryFrames === undefined
      ? {}
      : { batteryFits: frameCount <= framesOnCharge(batteryFrames, coldFactor) }),
  };
}
