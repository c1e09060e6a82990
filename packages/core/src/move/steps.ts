// Where a move stands at each frame, and the steps between frames, in the move's own unit.

import { easeAt, largestStepShare } from './ease.js';
import type { Travel } from './resolve.js';

/**
 * Position at a frame, from 0 at the first to the whole length at the last, both exact.
 *
 * @param frame from 0; fractions lie between frames; outside the shoot the move stands still
 */
export function positionAt({ length, ease }: Travel, frame: number, frameCount: number): number {
  return frameCount < 2 ? 0 : length * easeAt(ease, frame / (frameCount - 1));
}

/** Way from a frame to the next, signed; 0 at the last frame. */
export function stepAfter(travel: Travel, frame: number, frameCount: number): number {
  return frame >= frameCount - 1
    ? 0
    : positionAt(travel, frame + 1, frameCount) - positionAt(travel, frame, frameCount);
}

/** Longest way between two frames, > 0; 0 where there is but one frame. */
export function largestStep({ length, ease }: Travel, frameCount: number): number {
  return Math.abs(length) * largestStepShare(ease, frameCount - 1);
}

/** Whole motor steps from the start to the nearest to a position, or undefined where the motor's step is not known. */
export function motorStepsAt(position: number, { motor }: Travel): number | undefined {
  // Adding 0 keeps "-0" out of files.
  return motor.smallestStep === undefined ? undefined : Math.round(position / motor.smallestStep) + 0;
}

/** How many of the steps between frames are smaller than the motor can make: the picture stands still there. */
export function stepsBelowSmallest(travel: Travel, frameCount: number): number {
  const { smallestStep } = travel.motor;
  if (smallestStep === undefined) return 0;
  let count = 0;
  for (let frame = 0; frame < frameCount - 1; frame++) {
    // A linear move cuts equal steps that differ in their last bits.
    if (Math.abs(stepAfter(travel, frame, frameCount)) < smallestStep * (1 - 1e-9)) count++;
  }
  return count;
}
