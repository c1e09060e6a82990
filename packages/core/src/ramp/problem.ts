// The ramp problem: a list of target EVs and a kit in, one setting a frame out.
// Nothing here knows of sky, sun or dates. The problem in words: docs/ramp.md.

import type { StepsPerStop } from '../dial.js';
import type { Crew, Direction, Limits } from '../shoot.js';
import type { RampWeights } from './weights.js';

/** What the camera can stand at, in dial steps (see dial.ts: up is shorter, more sensitive, narrower). */
export interface RampKit {
  readonly stepsPerStop: StepsPerStop;
  /** longestStep <= shortestStep. */
  readonly shutter: { readonly longestStep: number; readonly shortestStep: number };
  readonly iso: { readonly lowestStep: number; readonly highestStep: number };
  readonly aperture: { readonly widestStep: number; readonly narrowestStep: number };
  /** Exact stops of each filter stack, weakest first, at least one entry. */
  readonly stackStops: readonly number[];
  /** Index into stackStops the first frame must have; absent: free. */
  readonly startStack?: number;
  /** The shutter takes any time between its limits. */
  readonly bulb: boolean;
}

export interface RampProblem {
  /** One a frame, finite, intervalS apart. */
  readonly targetEv100: ArrayLike<number>;
  /** > 0. */
  readonly intervalS: number;
  readonly direction: Direction;
  /** >= 0. */
  readonly gapS: number;
  readonly darkFrame: boolean;
  readonly crew: Crew;
  readonly kit: RampKit;
  readonly limits: Limits;
  readonly weights?: Partial<RampWeights>;
}

/** One frame's setting: dial steps, and which filter stack. */
export interface RampFrame {
  /** Not whole under bulb. */
  readonly shutterStep: number;
  readonly isoStep: number;
  readonly apertureStep: number;
  /** Index into kit.stackStops. */
  readonly stack: number;
  readonly settingEv100: number;
  /** settingEv100 - target; positive is darker than wanted. */
  readonly errorEv: number;
  readonly affected: boolean;
}

export type RampResult =
  | { readonly kind: 'ok'; readonly frames: readonly RampFrame[]; readonly objective: number }
  | {
      readonly kind: 'infeasible';
      readonly reason: 'too-dark' | 'too-bright' | 'too-fast';
      /** First frame that cannot be met. */
      readonly frame: number;
      /** > 0, stops beyond tolerance on that frame. */
      readonly shortfallEv: number;
      /** The most that any frame lies beyond what the kit renders, or shortfallEv. */
      readonly worstShortfallEv: number;
    };

/** Largest change of one control at one cue, in dial steps. */
export function stepLimit(largestStepEv: number, stepsPerStop: StepsPerStop): number {
  return Math.max(1, Math.floor(largestStepEv * stepsPerStop + 1e-9));
}

/** Frames from one cue to the next at least. */
export function cueSpacing(secondsBetweenCues: number, intervalS: number): number {
  return Math.max(1, Math.ceil(secondsBetweenCues / intervalS - 1e-9));
}
