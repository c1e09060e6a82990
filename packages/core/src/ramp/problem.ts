// The ramp problem: a list of target EVs and a kit in, one setting a frame out.
// Nothing here knows of sky, sun or dates. The problem in words: docs/ramp.md.

import type { StepsPerStop } from '../dial.js';
import type { Crew, Direction, Limits } from '../shoot.js';

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

/** Prices of the cost; see docs/ramp.md. Defaults: {@link rampWeights}. */
export interface RampWeights {
  readonly error: number; // per frame and squared stop
  readonly blur: number; // per frame and squared stop away from half the interval
  readonly shortShutter: number; // per frame and stop shorter than 1/100 s
  readonly iso: number; // per frame and stop above the lowest ISO
  readonly affectedFrame: number; // per frame a hand on the lens may spoil
  readonly shutterCue: number;
  readonly isoCue: number;
  readonly apertureCue: number;
  readonly filterCue: number;
  readonly againstLight: number; // per cue and control that moves against the light
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

/** The contract's prices for a crew. */
export function rampWeights(crew: Crew): RampWeights {
  return {
    error: crew === 'rig' ? 5 : 0.33,
    blur: 0.005,
    shortShutter: 0.02,
    iso: 0.07,
    affectedFrame: 1,
    shutterCue: 1,
    isoCue: 1.5,
    apertureCue: 50,
    filterCue: 20,
    againstLight: 6,
  };
}

/** Largest change of one control at one cue, in dial steps. */
export function stepLimit(largestStepEv: number, stepsPerStop: StepsPerStop): number {
  return Math.max(1, Math.floor(largestStepEv * stepsPerStop + 1e-9));
}

/** Frames from one cue to the next at least. */
export function cueSpacing(secondsBetweenCues: number, intervalS: number): number {
  return Math.max(1, Math.ceil(secondsBetweenCues / intervalS - 1e-9));
}
