// What a rig that times the shutter freely can stand at, and what that costs: on every frame the time makes the error
// zero, as far as its limits allow, so only filter, aperture and ISO are choices.

import { longestTimeInside } from '../../footage/frames.js';
import type { Grid } from '../grid.js';
import { type Lattice, SLACK, timePrice, weightsOf } from '../lattice.js';
import type { State } from '../moves.js';
import { type RampProblem, shutterEnds } from '../problem.js';
import type { RampWeights } from '../weights.js';

/** The shutter's reach in steps, the longest not whole where the interval ends it between two marks of the dial. */
export interface BulbShutter {
  readonly longestStep: number;
  readonly shortestStep: number;
  readonly intervalS: number;
  readonly weights: RampWeights;
}

export function bulbShutter(problem: RampProblem): BulbShutter {
  const { kit, intervalS } = problem;
  const { longestStep, shortestStep } = shutterEnds(problem);
  const insideStep = -kit.stepsPerStop * Math.log2(longestTimeInside(intervalS, problem));
  return {
    longestStep: Math.max(longestStep, insideStep),
    shortestStep,
    intervalS,
    weights: weightsOf(problem),
  };
}

/** Shutter step for a target, whole or not, within the limits. */
export function bulbStep(kit: Lattice, shutter: BulbShutter, state: State, targetEv: number): number {
  const wanted =
    (targetEv - kit.stops[state.stack]) * kit.stepsPerStop -
    (kit.apertureMin + state.aperture) +
    kit.isoMin +
    state.iso;
  return Math.min(shutter.shortestStep, Math.max(shutter.longestStep, wanted));
}

/** EV that a state renders with that shutter. */
export function bulbEv(kit: Lattice, state: State, shutterStep: number): number {
  const level = kit.apertureMin + state.aperture + shutterStep - kit.isoMin - state.iso;
  return level / kit.stepsPerStop + kit.stops[state.stack];
}

/** What a frame's error costs. */
export interface ErrorPrices {
  /** Per squared stop, on a frame of segment k. */
  readonly squaredStop: (k: number) => number;
  /** Per squared stop beyond tolerance and frame; Infinity where none may be beyond it. */
  readonly beyondTolerance: number;
}

/** What is to be followed, and where cues may come. */
export interface BulbCourse {
  readonly kit: Lattice;
  readonly shutter: BulbShutter;
  readonly grid: Grid;
  readonly target: ArrayLike<number>;
  readonly errors: ErrorPrices;
}

/** A course with its costs, by segment and choice at index segment * choices.length + choice. */
export interface BulbModel extends BulbCourse {
  readonly choices: readonly State[];
  /** EV rendered on the frame before a segment. */
  readonly before: Float64Array;
  /** EV rendered on its first frame. */
  readonly first: Float64Array;
  /** Cost of standing at a choice from segment 0 to before this one; one more entry for the end. */
  readonly spent: Float64Array;
  /** The same: segments in which a choice is out of tolerance where none may be. */
  readonly misses: Int32Array;
}

export function bulbModel(course: BulbCourse): BulbModel {
  const { kit, shutter, grid, target, errors } = course;
  const choices = choicesOf(kit);
  const width = choices.length;
  const segments = grid.at.length - 1;
  const before = new Float64Array(segments * width);
  const first = new Float64Array(segments * width);
  const spent = new Float64Array((segments + 1) * width);
  const misses = new Int32Array((segments + 1) * width);
  const mayMiss = Number.isFinite(errors.beyondTolerance);
  const rendered = (state: State, targetEv: number) =>
    bulbEv(kit, state, bulbStep(kit, shutter, state, targetEv));
  for (let k = 0, at = 0; k < segments; k++) {
    const frames = grid.at[k + 1] - grid.at[k];
    const firstEv = target[grid.at[k]];
    const middleEv = target[grid.at[k] + Math.max(0, Math.floor((frames - 1) / 2))];
    // The frame before the first is not known here; light hardly moves in one.
    const beforeEv = target[Math.max(0, grid.at[k] - 1)];
    const followsOne = k > 0 && grid.at[k - 1] === grid.at[k] - 1;
    const squaredStop = errors.squaredStop(k);
    for (let i = 0; i < width; i++, at++) {
      const state = choices[i];
      const step = bulbStep(kit, shutter, state, middleEv);
      const exposureEv = bulbEv(kit, state, step);
      const errorEv = exposureEv - middleEv;
      const beyond = Math.max(0, Math.abs(errorEv) - kit.toleranceEv);
      const each =
        squaredStop * errorEv * errorEv +
        (mayMiss ? errors.beyondTolerance * beyond * beyond : 0) +
        timePrice(step / kit.stepsPerStop, shutter.intervalS, shutter.weights) +
        kit.price.iso[state.stack][state.iso];
      spent[at + width] = spent[at] + frames * each;
      misses[at + width] = misses[at] + (beyond > SLACK && !mayMiss ? 1 : 0);
      before[at] = followsOne ? first[at - width] : rendered(state, beforeEv);
      first[at] = frames === 1 ? exposureEv : rendered(state, firstEv);
    }
  }
  return { kit, shutter, grid, target, errors, choices, before, first, spent, misses };
}

/**
 * Cost of standing at a choice from place `from` to before place `to`; Infinity where that is out of tolerance and
 * may not be.
 */
export function standing(
  { choices, spent, misses }: BulbModel,
  choice: number,
  from: number,
  to: number,
): number {
  const width = choices.length;
  const start = from * width + choice;
  const end = to * width + choice;
  return misses[end] > misses[start] ? Number.POSITIVE_INFINITY : spent[end] - spent[start];
}

/** The same after a filter change at segment k, whose first frames are not judged. */
export function standingAfterFilter(model: BulbModel, choice: number, k: number): number {
  const { grid, kit } = model;
  const judged = grid.judgedAfterFilter[k];
  const whole = Math.floor(judged);
  const free = grid.freeAfterFilter[k];
  const share = judged - whole;
  const early = share === 0 ? 0 : share * standing(model, choice, whole, whole + 1);
  return kit.affectedFrames * kit.price.affectedFrame + standing(model, choice, whole, free) - early;
}

/** Whether a filter change at segment k alters the exposure by more than one cue may. */
export function isTooFar({ kit, choices, before, first }: BulbModel, k: number, from: number, to: number) {
  const net = Math.abs(first[k * choices.length + to] - before[k * choices.length + from]);
  return net > kit.largestStep / kit.stepsPerStop + SLACK;
}

/** Every stack, aperture and ISO; the level is left at 0, the shutter not being one of them. */
function choicesOf({ stops, apertureCount, isoCount }: Lattice): State[] {
  return stops.flatMap((_, stack) =>
    Array.from({ length: apertureCount * isoCount }, (_, i) => ({
      stack,
      aperture: Math.floor(i / isoCount),
      level: 0,
      iso: i % isoCount,
    })),
  );
}

/** Index of a choice. */
export function choiceAt({ apertureCount, isoCount }: Lattice, { stack, aperture, iso }: State): number {
  return (stack * apertureCount + aperture) * isoCount + iso;
}
