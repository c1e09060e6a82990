// The ramp problem: a list of target EVs and a kit in, one setting a frame out.
// Nothing here knows of sky, sun or dates. The problem in words: docs/ramp.md.

import type { StepsPerStop } from '../dial.js';
import type { Crew, Direction, Limits } from '../shoot.js';
import type { RampWeights } from './weights.js';

/** What the camera can stand at, in dial steps (see dial.ts: up is shorter, more sensitive, narrower). */
export interface RampKit {
  readonly stepsPerStop: StepsPerStop;
  readonly shutter: { readonly longestStep: number; readonly shortestStep: number }; // longestStep <= shortestStep
  readonly iso: { readonly lowestStep: number; readonly highestStep: number };
  readonly aperture: { readonly widestStep: number; readonly narrowestStep: number };
  readonly stackStops: readonly number[]; // exact stops of each filter stack, weakest first, at least one entry
  readonly startStack?: number; // index into stackStops the first frame must have; absent: free
  readonly bulb: boolean; // the shutter takes any time between its limits
}

export interface RampProblem {
  readonly targetEv100: ArrayLike<number>; // one a frame, finite, intervalS apart
  readonly intervalS: number; // > 0
  readonly direction: Direction;
  readonly gapS: number; // >= 0
  readonly darkFrame: boolean;
  readonly crew: Crew;
  readonly kit: RampKit;
  readonly limits: Limits;
  readonly weights?: Partial<RampWeights>;
}

/** One frame's setting: dial steps, and which filter stack. */
export interface RampFrame {
  readonly shutterStep: number; // not whole under bulb
  readonly isoStep: number;
  readonly apertureStep: number;
  readonly stack: number; // index into kit.stackStops
  readonly settingEv100: number;
  readonly errorEv: number; // settingEv100 - target; positive is darker than wanted
  readonly affected: boolean;
}

export type RampResult =
  | { readonly kind: 'ok'; readonly frames: readonly RampFrame[]; readonly objective: number }
  | {
      readonly kind: 'infeasible';
      readonly reason: 'too-dark' | 'too-bright' | 'too-fast';
      readonly frame: number; // first frame that cannot be met
      readonly shortfallEv: number; // > 0, stops beyond tolerance on that frame
      readonly worstShortfallEv: number; // the most that any frame lies beyond what the kit renders, or shortfallEv
    };

/** Largest change of one control at one cue, in dial steps. */
export function stepLimit(largestStepEv: number, stepsPerStop: StepsPerStop): number {
  return Math.max(1, Math.floor(largestStepEv * stepsPerStop + 1e-9));
}

/** Frames from one cue to the next at least. */
export function cueSpacing(secondsBetweenCues: number, intervalS: number): number {
  return Math.max(1, Math.ceil(secondsBetweenCues / intervalS - 1e-9));
}
