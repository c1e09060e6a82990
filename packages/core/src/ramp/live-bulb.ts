// The live solve of a rig that times the shutter freely. On every frame the time makes the error zero, as far as
// its limits allow, so only filter, aperture and ISO are left to plan: the recurrence of live-costs.ts over those.

import { filterPrice, frameShare, type Lattice, timePrice } from './lattice.js';
import { errorWeight, type LiveWeights } from './live-errors.js';
import type { Grid } from './live-grid.js';
import type { LiveCue } from './live-path.js';
import type { State } from './moves.js';
import type { RampWeights } from './weights.js';

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

interface Move {
  readonly to: number;
  readonly price: number;
  readonly filter: boolean;
}

/**
 * The cheapest way over the grid.
 *
 * @param present undefined where any state may be begun with
 * @param filterChangesLeft Infinity where there is no limit
 */
export function planBulb(
  model: BulbModel,
  present: State | undefined,
  filterChangesLeft: number,
): { start: State; cues: LiveCue[] } {
  const { kit, grid } = model;
  const choices = choicesOf(kit);
  const spent = standingCosts(model, choices);
  const { before, after } = rendered(model, choices);
  const netEv = kit.largestStep / kit.stepsPerStop + 1e-9;
  const width = choices.length;
  const segments = grid.at.length - 1;
  const moves = choices.map((from) => movesFrom(kit, choices, from));

  // One table where the free optimum keeps the limit, else one for each number of changes left.
  const free = table(filterChangesLeft > 0 ? 'same' : undefined);
  const first = walk([free], true);
  if (first.cues.filter(({ filter }) => filter).length <= filterChangesLeft) return first;
  const tables: Float64Array[] = [];
  for (let left = 0; left <= filterChangesLeft; left++) tables.push(table(tables.at(-1)));
  return walk(tables, false);

  function table(afterFilter: Float64Array | 'same' | undefined): Float64Array {
    const cost = new Float64Array((segments + 1) * width);
    const source = afterFilter === 'same' ? cost : afterFilter;
    for (let k = segments - 1; k >= 0; k--) {
      for (let from = 0; from < width; from++) {
        let least = stood(k, k + 1, from) + cost[(k + 1) * width + from];
        for (const move of moves[from]) {
          const after = move.filter ? source : cost;
          if (after !== undefined) least = Math.min(least, move.price + arrive(after, k, from, move));
        }
        cost[k * width + from] = least;
      }
    }
    return cost;
  }

  function stood(from: number, to: number, choice: number): number {
    return spent[to * width + choice] - spent[from * width + choice];
  }

  function arrive(cost: Float64Array, k: number, from: number, { to, filter }: Move): number {
    const free = filter ? grid.freeAfterFilter[k] : grid.freeAfterCue[k];
    // What a filter change moves the rendered exposure by is limited, as every cue is.
    const barred =
      filter && (free === 0 || Math.abs(before[k * width + from] - after[k * width + to]) > netEv);
    if (barred) return Number.POSITIVE_INFINITY;
    const frames = grid.at[free] - grid.at[k];
    const spoilt = filter ? kit.lost : 0;
    const paid = (stood(k, free, to) * (frames - spoilt)) / frames + spoilt * kit.price.affectedFrame;
    return paid + cost[free * width + to];
  }

  function walk(tables: readonly Float64Array[], isFree: boolean): { start: State; cues: LiveCue[] } {
    let left = tables.length - 1;
    let at = present === undefined ? cheapestBegin(tables[left]) : indexOf(kit, present);
    const start = choices[at];
    const cues: LiveCue[] = [];
    for (let k = present === undefined ? 1 : 0; k < segments; ) {
      const cost = tables[left];
      let least = stood(k, k + 1, at) + cost[(k + 1) * width + at] - 1e-9;
      let best: Move | undefined;
      for (const move of moves[at]) {
        const after = move.filter && !isFree ? tables[left - 1] : cost;
        if (after === undefined || (move.filter && filterChangesLeft === 0)) continue;
        const through = move.price + arrive(after, k, at, move);
        if (through < least) {
          least = through;
          best = move;
        }
      }
      if (best === undefined) {
        k++;
        continue;
      }
      if (best.filter && !isFree) left--;
      at = best.to;
      cues.push({ frame: grid.at[k], to: choices[at], filter: best.filter });
      k = best.filter ? grid.freeAfterFilter[k] : grid.freeAfterCue[k];
    }
    return { start, cues };
  }

  function cheapestBegin(cost: Float64Array): number {
    let best = 0;
    choices.forEach(({ stack }, i) => {
      if (kit.startStack !== undefined && stack !== kit.startStack) return;
      const other = kit.startStack !== undefined && choices[best].stack !== kit.startStack;
      const through = (choice: number) => stood(0, 1, choice) + cost[width + choice];
      if (other || through(i) < through(best) - 1e-9) best = i;
    });
    return best;
  }
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

function indexOf({ apertureCount, isoCount }: Lattice, { stack, aperture, iso }: State): number {
  return (stack * apertureCount + aperture) * isoCount + iso;
}

function movesFrom(kit: Lattice, choices: readonly State[], from: State): Move[] {
  const { price, largestStep } = kit;
  return choices.flatMap((to, index): Move[] => {
    const isoUp = to.iso - from.iso;
    const narrower = to.aperture - from.aperture;
    if (to.stack !== from.stack) {
      if (narrower !== 0) return [];
      const swap = filterPrice(kit, from.stack, to.stack);
      return [{ to: index, price: swap + (isoUp === 0 ? 0 : price.isoReset), filter: true }];
    }
    if (isoUp === 0 && narrower !== 0 && Math.abs(narrower) <= largestStep) {
      return [{ to: index, price: narrower > 0 ? price.narrower : price.wider, filter: false }];
    }
    if (narrower === 0 && isoUp !== 0 && Math.abs(isoUp) <= largestStep) {
      return [{ to: index, price: isoUp > 0 ? price.isoUp : price.isoDown, filter: false }];
    }
    return [];
  });
}

/** EV rendered by each choice on the frame before a segment and on its first, at index segment * choices + choice. */
function rendered({ kit, shutter, grid, target }: BulbModel, choices: readonly State[]) {
  const evAt = (frame: number) =>
    choices.map((state) => bulbEv(kit, state, bulbStep(kit, shutter, state, target[frame])));
  const starts = Array.from(grid.at.subarray(0, -1));
  return {
    // The frame before the first is not known here; light hardly moves in one.
    before: starts.flatMap((frame) => evAt(Math.max(0, frame - 1))),
    after: starts.flatMap(evAt),
  };
}

/** Cost of standing at each choice from segment 0 to before segment k, at index k * choices + choice. */
function standingCosts(model: BulbModel, choices: readonly State[]): Float64Array {
  const { kit, shutter, grid, intervalS, weights } = model;
  const width = choices.length;
  const spent = new Float64Array(grid.at.length * width);
  for (let k = 0; k + 1 < grid.at.length; k++) {
    const frames = grid.at[k + 1] - grid.at[k];
    const targetEv = middleOf(model, k);
    const weight = errorWeight(grid, k, intervalS, weights);
    choices.forEach((state, i) => {
      const step = bulbStep(kit, shutter, state, targetEv);
      const errorEv = bulbEv(kit, state, step) - targetEv;
      const beyond = Math.max(0, Math.abs(errorEv) - kit.toleranceEv);
      const each =
        weight * errorEv ** 2 +
        frameShare(intervalS) * weights.beyondTolerance * beyond ** 2 +
        timePrice(2 ** (-step / kit.stepsPerStop), intervalS, shutter.weights) +
        kit.price.iso[state.iso];
      spent[(k + 1) * width + i] = spent[k * width + i] + frames * each;
    });
  }
  return spent;
}

function middleOf({ grid, target }: BulbModel, k: number): number {
  return target[Math.floor((grid.at[k] + grid.at[k + 1] - 1) / 2)];
}
