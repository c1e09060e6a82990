// What a rig that times the shutter freely can stand at, move to, and pays: on every frame the time makes the error
// zero, as far as its limits allow, so only filter, aperture and ISO are choices.

import { filterPrice, frameShare, type Lattice, timePrice } from '../lattice.js';
import { errorWeight, type LiveWeights } from '../live/errors.js';
import type { Grid } from '../live/grid.js';
import type { State } from '../moves.js';
import type { RampWeights } from '../weights.js';

/** The shutter's reach in steps, the longest not whole where the interval ends it. */
export interface BulbShutter {
  readonly longestStep: number;
  readonly shortestStep: number;
  readonly weights: RampWeights;
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

export interface BulbModel {
  readonly kit: Lattice;
  readonly shutter: BulbShutter;
  readonly grid: Grid;
  readonly target: ArrayLike<number>;
  readonly intervalS: number;
  readonly weights: LiveWeights;
}

/** From one choice to another, by index. */
export interface BulbMove {
  readonly to: number;
  readonly price: number;
  readonly filter: boolean;
}

/** Every stack, aperture and ISO; the level is left at 0, the shutter not being one of them. */
export function choicesOf({ stops, apertureCount, isoCount }: Lattice): State[] {
  return stops.flatMap((_, stack) =>
    Array.from({ length: apertureCount * isoCount }, (_, i) => ({
      stack,
      aperture: Math.floor(i / isoCount),
      level: 0,
      iso: i % isoCount,
    })),
  );
}

export function indexOf({ apertureCount, isoCount }: Lattice, { stack, aperture, iso }: State): number {
  return (stack * apertureCount + aperture) * isoCount + iso;
}

/** Cues of ISO and aperture, small steps before large. */
export function dialsFrom(kit: Lattice, from: State): BulbMove[] {
  const { price, largestStep, isoCount, apertureCount } = kit;
  const moves: BulbMove[] = [];
  const add = (aperture: number, iso: number, cuePrice: number) => {
    if (iso < 0 || iso >= isoCount || aperture < 0 || aperture >= apertureCount) return;
    moves.push({ to: indexOf(kit, { ...from, aperture, iso }), price: cuePrice, filter: false });
  };
  for (let step = 1; step <= largestStep; step++) {
    add(from.aperture, from.iso + step, price.isoUp);
    add(from.aperture, from.iso - step, price.isoDown);
    add(from.aperture - step, from.iso, price.wider);
    add(from.aperture + step, from.iso, price.narrower);
  }
  return moves;
}

/** Filter changes, with any ISO beside them. */
export function filtersFrom(kit: Lattice, { stack, aperture, iso }: State): BulbMove[] {
  return kit.stops.flatMap((_, other) => {
    if (other === stack) return [];
    const swap = filterPrice(kit, stack, other);
    return Array.from({ length: kit.isoCount }, (_, to) => ({
      to: indexOf(kit, { stack: other, aperture, level: 0, iso: to }),
      price: swap + (to === iso ? 0 : kit.price.isoReset),
      filter: true,
    }));
  });
}

/** EV rendered by each choice on the frame before a segment and on its first, at index segment * choices + choice. */
export function rendered({ kit, shutter, grid, target }: BulbModel, choices: readonly State[]) {
  const segments = grid.at.length - 1;
  const before = new Float64Array(segments * choices.length);
  const after = new Float64Array(segments * choices.length);
  for (let k = 0, at = 0; k < segments; k++) {
    // The frame before the first is not known here; light hardly moves in one.
    const last = target[Math.max(0, grid.at[k] - 1)];
    const first = target[grid.at[k]];
    for (const state of choices) {
      before[at] = bulbEv(kit, state, bulbStep(kit, shutter, state, last));
      after[at++] = bulbEv(kit, state, bulbStep(kit, shutter, state, first));
    }
  }
  return { before, after };
}

/** Cost of standing at each choice from segment 0 to before segment k, at index k * choices + choice. */
export function standingCosts(model: BulbModel, choices: readonly State[]): Float64Array {
  const { kit, shutter, grid, intervalS, weights } = model;
  const width = choices.length;
  const share = frameShare(intervalS);
  const spent = new Float64Array(grid.at.length * width);
  for (let k = 0; k + 1 < grid.at.length; k++) {
    const frames = grid.at[k + 1] - grid.at[k];
    const targetEv = middleOf(model, k);
    const weight = errorWeight(grid, k, intervalS, weights);
    for (let i = 0; i < width; i++) {
      const state = choices[i];
      const step = bulbStep(kit, shutter, state, targetEv);
      const errorEv = bulbEv(kit, state, step) - targetEv;
      const beyond = Math.max(0, Math.abs(errorEv) - kit.toleranceEv);
      const each =
        weight * errorEv * errorEv +
        share * weights.beyondTolerance * beyond * beyond +
        timePrice(step / kit.stepsPerStop, intervalS, shutter.weights) +
        kit.price.iso[state.iso];
      spent[(k + 1) * width + i] = spent[k * width + i] + frames * each;
    }
  }
  return spent;
}

function middleOf({ grid, target }: BulbModel, k: number): number {
  return target[Math.floor((grid.at[k] + grid.at[k + 1] - 1) / 2)];
}
