// What a motor can do in a time, and the time it needs. Lengths are in degrees or metres, whichever the axis has;
// speeds and accelerations in the same unit and seconds. Source: docs/sources.md#ease.

import { finite, positive } from '../check.js';

/** A motor's limits in its axis's unit. */
export interface Motor {
  /** Rest after a step, seconds, >= 0. */
  readonly settleS: number;
  /** Seconds of every step, > 0, where no top speed is known. */
  readonly moveS?: number | undefined;
  /** Unit a second, > 0. */
  readonly topSpeed?: number | undefined;
  /** Unit a second squared, > 0, both ways; at once where absent. */
  readonly acceleration?: number | undefined;
  /** One step of the motor, unit, > 0. */
  readonly smallestStep?: number | undefined;
}

/**
 * Seconds from rest to rest over a length: up to top speed, along, and down again; a step too short to reach top
 * speed is a triangle. 10° at 5° a second and 5° a second squared take 3 s; 1° takes 0.894 s. Nothing takes none.
 *
 * @throws RangeError where the motor has neither a top speed nor a time for every step
 */
export function stepTimeS(length: number, { moveS, topSpeed, acceleration }: Motor): number {
  const way = Math.abs(finite('length', length));
  if (way === 0) return 0;
  if (topSpeed === undefined) return positive('moveS', moveS ?? Number.NaN);
  if (acceleration === undefined) return way / positive('topSpeed', topSpeed);
  const rampWay = topSpeed ** 2 / positive('acceleration', acceleration); // both ends
  return way < rampWay ? 2 * Math.sqrt(way / acceleration) : way / topSpeed + topSpeed / acceleration;
}

/** Longest way from rest to rest in a time: `stepTimeS` backwards. A motor timed by `moveS` goes anywhere in it. */
export function wayInS(timeS: number, { moveS, topSpeed, acceleration }: Motor): number {
  if (!(timeS > 0)) return 0;
  if (topSpeed === undefined)
    return timeS >= positive('moveS', moveS ?? Number.NaN) ? Number.POSITIVE_INFINITY : 0;
  if (acceleration === undefined) return timeS * topSpeed;
  const rampS = (2 * topSpeed) / acceleration; // up and down again
  return timeS < rampS ? (acceleration * timeS ** 2) / 4 : (timeS - rampS / 2) * topSpeed;
}
