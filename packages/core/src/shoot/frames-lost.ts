// How many frames a filter change may spoil where nobody says: what it takes to do it.

import { positive } from '../check.js';

/** To unscrew a filter in the dark and turn two dials. Our choice. */
const FILTER_CHANGE_S = 15;

/** Most frames a filter change may be said to spoil. */
export const MOST_FRAMES_LOST = 1000;

/**
 * Frames that a hand on the lens may spoil at a filter change where the shoot does not say: as many as 15 s take, at
 * least 2, at most 1000.
 *
 * @param intervalS seconds, > 0
 * @returns whole
 * @throws RangeError unless intervalS is positive and finite
 * @example
 * ```ts
 * import { framesLostByDefault } from '@evenfall/core';
 *
 * framesLostByDefault(8); // → 2
 * framesLostByDefault(2); // → 8
 * ```
 */
export function framesLostByDefault(intervalS: number): number {
  const frames = Math.ceil(FILTER_CHANGE_S / positive('intervalS', intervalS) - 1e-9);
  return Math.min(MOST_FRAMES_LOST, Math.max(2, frames));
}
