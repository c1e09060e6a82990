// Several exposures in one interval, for merging afterwards: what they take of it together, and how far their ends lie from
// the middle one, which is the one that a plan states. Source: docs/ramp.md, "Exactly".

import { positive } from '../check.js';
import { aGroup, hold } from '../hold.js';

/** Exposures about a middle one, at the same ISO and aperture. */
export interface Bracket {
  /** How many. */
  readonly frames: 3 | 5 | 7 | 9;
  /** From one exposure time to the next, stops, > 0. */
  readonly stepEv: number;
  /** Pause from one exposure to the next, seconds, >= 0. */
  readonly betweenS: number;
}

/** What is exposed in an interval beside the time that a plan states. */
export interface Exposing {
  /** Whether a dark frame as long follows every exposure. */
  readonly darkFrame: boolean;
  /** Absent: one exposure. */
  readonly bracket?: Bracket | undefined;
}

/** Exposures in an interval, 1 or more. */
export function exposuresOf(bracket: Bracket | undefined): number {
  return bracket?.frames ?? 1;
}

/** From the middle exposure to the longest, and to the shortest, stops, >= 0: three exposures 2 stops apart reach 2. */
export function bracketReachEv(bracket: Bracket | undefined): number {
  return bracket === undefined ? 0 : ((bracket.frames - 1) / 2) * bracket.stepEv;
}

/** All exposure times as a multiple of the middle one: 1/4 + 1 + 4 are 5.25. */
export function bracketSum(bracket: Bracket | undefined): number {
  if (bracket === undefined) return 1;
  const reach = (bracket.frames - 1) / 2;
  let sum = 0;
  for (let k = -reach; k <= reach; k++) sum += 2 ** (k * bracket.stepEv);
  return sum;
}

/** A camera's supplies by the interval: a frame of a bracket takes the space and the charge of all its exposures. */
export function suppliesByFrame<
  Camera extends {
    readonly bracket?: Bracket | undefined;
    readonly frameMB?: number | undefined;
    readonly batteryFrames?: number | undefined;
  },
>(camera: Camera): Camera {
  const { bracket, frameMB, batteryFrames } = camera;
  const count = exposuresOf(bracket);
  return {
    ...camera,
    ...(frameMB === undefined ? {} : { frameMB: frameMB * count }),
    ...(batteryFrames === undefined ? {} : { batteryFrames: batteryFrames / count }),
  };
}

/** Seconds of all pauses between the exposures. */
export function pausesS(bracket: Bracket | undefined): number {
  return bracket === undefined ? 0 : (bracket.frames - 1) * bracket.betweenS;
}

/**
 * Seconds from the first exposure's start to the end of the last, or of its dark frame.
 *
 * @param shutterS exact time of the middle exposure, > 0
 * @param exposing a bracket, and whether a dark frame follows
 * @returns seconds, all exposures and the pauses between them
 * @throws RangeError where shutterS is not positive and finite
 * @example
 * ```ts
 * import { exposingS } from '@evenfall/core';
 *
 * const bracket = { frames: 3, stepEv: 2, betweenS: 0.3 } as const;
 * // 0.5 + 0.3 + 2 + 0.3 + 8
 * exposingS(2, { darkFrame: false, bracket }); // → 11.1
 * ```
 */
export function exposingS(shutterS: number, exposing: Exposing): number {
  positive('shutterS', shutterS);
  hold('exposing', exposing, aGroup);
  const { darkFrame, bracket } = exposing;
  return shutterS * bracketSum(bracket) * (darkFrame ? 2 : 1) + pausesS(bracket);
}
