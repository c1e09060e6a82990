// The ramp problem: a list of target EVs and a kit in, one setting a frame out.
// Nothing here knows of sky, sun or dates. The problem in words: docs/ramp.md.

import type { StepsPerStop } from '../exposure/dial.js';
import { type Bracket, bracketReachEv } from '../footage/bracket.js';
import type { Direction } from '../sky/direction.js';
import type { SomeWeights } from './weights.js';

/** Who turns the dials: a person between frames, or a program. */
export type Crew = 'hand' | 'rig';

/** What a schedule may ask of the picture and of the crew. */
export interface Limits {
  /** Largest error of a frame, stops, > 0. */
  readonly toleranceEv: number;
  /** Largest change of one control at one cue, stops, > 0. */
  readonly largestStepEv: number;
  /** Least time from one cue to the next, seconds, >= 0. */
  readonly secondsBetweenCues: number;
  /** Most filter changes, whole, >= 0; no limit where absent. */
  readonly maxFilterChanges?: number | undefined;
  /** Frames that a hand on the lens may spoil, whole, >= 0. */
  readonly framesLostPerFilterChange: number;
}

/** What the camera can stand at, in dial steps (see dial.ts: up is shorter, more sensitive, narrower). */
export interface RampKit {
  /** Of every dial. */
  readonly stepsPerStop: StepsPerStop;
  /** From `longestStep` to `shortestStep`, longestStep <= shortestStep. */
  readonly shutter: { readonly longestStep: number; readonly shortestStep: number };
  /** From `lowestStep` to `highestStep`, lowestStep <= highestStep. */
  readonly iso: { readonly lowestStep: number; readonly highestStep: number };
  /** From `widestStep` to `narrowestStep`, widestStep <= narrowestStep. */
  readonly aperture: { readonly widestStep: number; readonly narrowestStep: number };
  /** Exact stops of each filter stack, weakest first, at least one entry. */
  readonly stackStops: readonly number[];
  /** Index into stackStops that the first frame must have; absent: free. */
  readonly startStack?: number | undefined;
  /** Whether the shutter takes any time between its limits. */
  readonly bulb: boolean;
}

/** What is to be followed, with what, under which limits. */
export interface RampProblem {
  /** EV at ISO 100, one a frame, finite, one or more, intervalS apart. */
  readonly targetEv100: ArrayLike<number>;
  /** Seconds, > 0. */
  readonly intervalS: number;
  /** Which way the light goes on the whole: a control that moves against it is priced. */
  readonly direction: Direction;
  /** Seconds of every interval that the shutter may not use, >= 0. */
  readonly gapS: number;
  /** Whether a dark frame as long follows every frame. */
  readonly darkFrame: boolean;
  /** Exposures about the one that a frame states, in the same interval; absent: that one alone. */
  readonly bracket?: Bracket | undefined;
  /** Who turns the dials: decides the default prices. */
  readonly crew: Crew;
  /** What the camera can stand at. */
  readonly kit: RampKit;
  /** What the schedule may ask. */
  readonly limits: Limits;
  /** Prices that differ from {@link rampWeights}. */
  readonly weights?: SomeWeights | undefined;
}

/** One frame's setting: dial steps, and which filter stack. */
export interface RampFrame {
  /** Whole, but not under bulb. */
  readonly shutterStep: number;
  /** Whole. */
  readonly isoStep: number;
  /** Whole. */
  readonly apertureStep: number;
  /** Index into kit.stackStops. */
  readonly stack: number;
  /** What it renders at metered level, EV at ISO 100. */
  readonly settingEv100: number;
  /** settingEv100 - target, stops; positive is darker than wanted. */
  readonly errorEv: number;
  /** Whether a hand on the lens may spoil it; its error is then not judged. */
  readonly affected: boolean;
}

/** The optimum, `frames`, one a target, and its cost, `objective`; or the `reason` why there is none. */
export type RampResult =
  | { readonly kind: 'ok'; readonly frames: readonly RampFrame[]; readonly objective: number }
  | {
      readonly kind: 'infeasible';
      readonly reason: 'too-dark' | 'too-bright' | 'too-fast';
      /** First frame that cannot be met, from 0. */
      readonly frame: number;
      /** Stops beyond tolerance on that frame, > 0. */
      readonly shortfallEv: number;
      /** The most stops that any frame lies beyond what the kit renders, or shortfallEv. */
      readonly worstShortfallEv: number;
    };

/** Largest change of one control at one cue, in dial steps. */
export function stepLimit(largestStepEv: number, stepsPerStop: StepsPerStop): number {
  return Math.max(1, Math.floor(largestStepEv * stepsPerStop + 1e-9));
}

/**
 * Where the shutter of a frame may stand, in dial steps: of a bracket the middle exposure, whose longest and shortest are
 * within the kit too.
 */
export function shutterEnds({ kit, bracket }: Pick<RampProblem, 'kit' | 'bracket'>): RampKit['shutter'] {
  const reach = Math.round(bracketReachEv(bracket) * kit.stepsPerStop);
  return { longestStep: kit.shutter.longestStep + reach, shortestStep: kit.shutter.shortestStep - reach };
}

/** Frames from one cue to the next at least. */
export function cueSpacing(secondsBetweenCues: number, intervalS: number): number {
  return Math.max(1, Math.ceil(secondsBetweenCues / intervalS - 1e-9));
}
