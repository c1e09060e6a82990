// What the moves of a shoot leave its shutter: the wall between a shoot's words and the arithmetic of moves.

import { timeOfStep } from '../exposure/dial.js';
import { exposingS } from '../footage/bracket.js';
import { aGroup, aList, groupWith, hold } from '../hold.js';
import type { Optics } from '../move/angle.js';
import { type Travel, travelsOf } from '../move/resolve.js';
import { type GapParts, gapOf } from '../move/time-budget.js';
import { type RampProblem, shutterEnds } from '../ramp/problem.js';
import type { Camera, Shoot } from './shoot.js';

/**
 * Lens and sensor, where both are known.
 *
 * @param camera as far as it is known
 * @returns both, or undefined
 */
export function opticsOf({ lens, sensor }: Pick<Camera, 'lens' | 'sensor'>): Optics | undefined {
  return lens === undefined || sensor === undefined ? undefined : { lens, sensor };
}

/** The moves of a shoot in numbers; throws RangeError on moves that `moveFaults` would name. */
export function shootTravels({ camera, moves }: Pick<Shoot, 'camera' | 'moves'>): Travel[] {
  return travelsOf(moves, opticsOf(camera));
}

const SHOOT = groupWith({ camera: aGroup, moves: aList });

/**
 * The part of every interval that the shutter may not use, and what it is made of; `camera.gapS` without
 * moves.
 *
 * @param shoot its camera and moves
 * @param frameCount whole, 1 or more: moves take longer steps over fewer frames
 * @returns seconds
 * @throws RangeError on moves that a shoot file may not hold
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { shootGap } from '@evenfall/core';
 *
 * shootGap(shoot, 1029); // → { gapS: 1, writeS: 1, moveS: 0, settleS: 0 }
 * ```
 */
export function shootGap(shoot: Pick<Shoot, 'camera' | 'moves'>, frameCount: number): GapParts {
  hold('shoot', shoot, SHOOT);
  return gapOf(shootTravels(shoot), frameCount, shoot.camera.gapS);
}

/** Whether the shortest shutter, its dark frame and the gap fit the interval: else there is no ramp to look for. */
export function shutterFits(
  problem: Pick<RampProblem, 'kit' | 'intervalS' | 'gapS' | 'darkFrame' | 'bracket'>,
): boolean {
  const shortestS = timeOfStep(shutterEnds(problem).shortestStep, problem.kit.stepsPerStop);
  return exposingS(shortestS, problem) + problem.gapS <= problem.intervalS + 1e-9;
}
