// Every legal cue from a setting, in the order in which ties are broken.

import { filterPrice, type Lattice, shutterAt, standingRow } from './lattice.js';
import { swapsOf } from './swaps.js';

/** A setting in work units; see lattice.ts. */
export interface State {
  readonly stack: number;
  readonly aperture: number; // index
  readonly level: number;
  readonly iso: number; // index
}

export interface Move {
  readonly to: State;
  readonly price: number;
  readonly filter: boolean; // the stack changes
}

/** Shutter step of a state. */
export function shutterOf(lattice: Lattice, { aperture, level, iso }: State): number {
  return shutterAt(lattice, aperture, level) + iso;
}

/** What a state on the dials costs on a frame, without its error. */
export function standingPrice(lattice: Lattice, { stack, aperture, level, iso }: State): number {
  return lattice.price.standing[standingRow(lattice, stack, aperture, level) + iso];
}

/** EV at ISO 100 that a state renders. */
export function exposureEv({ stepsPerStop, stops }: Lattice, { stack, level }: State): number {
  return level / stepsPerStop + stops[stack];
}

/** Whether the state's shutter and ISO and aperture are on their dials. */
export function onDials(lattice: Lattice, state: State): boolean {
  const shutter = shutterOf(lattice, state);
  return (
    shutter >= lattice.shutterMin &&
    shutter <= lattice.shutterMax &&
    state.iso >= 0 &&
    state.iso < lattice.isoCount &&
    state.aperture >= 0 &&
    state.aperture < lattice.apertureCount
  );
}

/** Cues of one dial: shutter, then ISO, then aperture; small steps before large. Some lead off the dials. */
export function* dialMoves(lattice: Lattice, state: State): Generator<Move> {
  const { price, largestStep } = lattice;
  for (let step = 1; step <= largestStep; step++) {
    yield turn(state, -step, 0, 0, price.longer);
    yield turn(state, step, 0, 0, price.shorter);
  }
  yield* isoThenAperture(lattice, state);
}

function* isoThenAperture({ price, largestStep }: Lattice, state: State): Generator<Move> {
  for (let step = 1; step <= largestStep; step++) {
    yield turn(state, -step, step, 0, price.isoUp);
    yield turn(state, step, -step, 0, price.isoDown);
  }
  for (let step = 1; step <= largestStep; step++) {
    yield turn(state, -step, 0, -step, price.wider);
    yield turn(state, step, 0, step, price.narrower);
  }
}

function turn(
  { stack, aperture, level, iso }: State,
  levels: number,
  isos: number,
  apertures: number,
  price: number,
): Move {
  const to = { stack, aperture: aperture + apertures, level: level + levels, iso: iso + isos };
  return { to, price, filter: false };
}

/** Filter changes with any shutter and ISO beside them; weaker stacks first. Some lead off the dials. */
export function* filterMoves(lattice: Lattice, state: State): Generator<Move> {
  const { price, isoCount } = lattice;
  for (const { to: stack, price: swap, low, high } of swapsOf(lattice)[state.stack]) {
    for (let level = state.level + low; level <= state.level + high; level++) {
      for (let iso = 0; iso < isoCount; iso++) {
        const to = { stack, aperture: state.aperture, level, iso };
        const isoMoves = iso !== state.iso;
        const shutterMoves = shutterOf(lattice, to) !== shutterOf(lattice, state);
        const resets = (shutterMoves ? price.shutterReset : 0) + (isoMoves ? price.isoReset : 0);
        yield { to, price: swap + resets, filter: true };
      }
    }
  }
}

/** Cues of one dial where the shutter is timed freely, so that the level says nothing and is 0. */
export function* bulbDialMoves(lattice: Lattice, state: State): Generator<Move> {
  const { isoCount, apertureCount } = lattice;
  for (const { to, price } of isoThenAperture(lattice, state)) {
    const { aperture, iso } = to;
    if (iso < 0 || iso >= isoCount || aperture < 0 || aperture >= apertureCount) continue;
    yield { to: { ...to, level: 0 }, price, filter: false };
  }
}

/** The same with a filter change, and any ISO beside it; weaker stacks first. */
export function* bulbFilterMoves(lattice: Lattice, state: State): Generator<Move> {
  const { price, stops, isoCount } = lattice;
  for (let stack = 0; stack < stops.length; stack++) {
    if (stack === state.stack) continue;
    const swap = filterPrice(lattice, state.stack, stack);
    for (let iso = 0; iso < isoCount; iso++) {
      const reset = iso === state.iso ? 0 : price.isoReset;
      yield { to: { ...state, stack, iso }, price: swap + reset, filter: true };
    }
  }
}
