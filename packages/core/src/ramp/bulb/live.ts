// The live solve of a rig that times the shutter freely: the recurrence of live-costs.ts over filter, aperture and ISO.

import { filterPrice } from '../lattice.js';
import type { LiveCue } from '../live/path.js';
import type { State } from '../moves.js';
import {
  type BulbModel,
  type BulbMove,
  choicesOf,
  dialsFrom,
  filtersFrom,
  indexOf,
  rendered,
  standingCosts,
} from './model.js';

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
  const dials = choices.map((from) => dialsFrom(kit, from));
  // The same as numbers side by side, for the loop that reads them most: moves of choice i from dialAt[i] on.
  const dialAt = new Int32Array(width + 1);
  dials.forEach((moves, i) => {
    dialAt[i + 1] = dialAt[i] + moves.length;
  });
  const dialTo = Int32Array.from(dials.flatMap((moves) => moves.map(({ to }) => to)));
  const dialPrice = Float64Array.from(dials.flatMap((moves) => moves.map(({ price }) => price)));
  const lines = kit.stops.length * kit.apertureCount; // of ISO, one for each stack and aperture

  // One table where the free optimum keeps the limit, else one for each number of changes left.
  const free = table(filterChangesLeft > 0 ? 'same' : undefined);
  const first = walk([free], true);
  if (first.cues.filter(({ filter }) => filter).length <= filterChangesLeft) return first;
  const tables: Float64Array[] = [];
  for (let left = 0; left <= filterChangesLeft; left++) tables.push(table(tables.at(-1)));
  return walk(tables, false);

  function table(filtered: Float64Array | 'same' | undefined): Float64Array {
    const cost = new Float64Array((segments + 1) * width);
    const source = filtered === 'same' ? cost : filtered;
    const reached = new Float64Array(width); // cost of each choice once a filter change has led to it
    const cheapest = new Int32Array(lines); // of each line
    const turned = new Float64Array(width); // cost of each choice once a dial has been turned to it
    for (let k = segments - 1; k >= 0; k--) {
      const filters = source !== undefined && grid.freeAfterFilter[k] > 0;
      if (filters) reach(source, k, reached, cheapest);
      const free = grid.freeAfterCue[k];
      for (let to = 0; to < width; to++) turned[to] = stood(k, free, to) + cost[free * width + to];
      for (let from = 0; from < width; from++) {
        let least = stood(k, k + 1, from) + cost[(k + 1) * width + from];
        for (let i = dialAt[from]; i < dialAt[from + 1]; i++) {
          const through = dialPrice[i] + turned[dialTo[i]];
          if (through < least) least = through;
        }
        cost[k * width + from] = filters ? Math.min(least, bestFilter(k, from, reached, cheapest)) : least;
      }
    }
    return cost;
  }

  /** Fills what a filter change at segment k leads to, by choice, and the cheapest of each line. */
  function reach(source: Float64Array, k: number, reached: Float64Array, cheapest: Int32Array): void {
    for (let to = 0; to < width; to++) {
      reached[to] = afterFilter(source, k, to);
      const line = Math.floor(to / kit.isoCount);
      if (to % kit.isoCount === 0 || reached[to] < reached[cheapest[line]]) cheapest[line] = to;
    }
  }

  /** The cheapest filter change: with ISO as it is, or the line's cheapest; each ISO only where a net limit bars that. */
  function bestFilter(k: number, from: number, reached: Float64Array, cheapest: Int32Array): number {
    const { stack, aperture, iso } = choices[from];
    let least = Number.POSITIVE_INFINITY;
    for (let other = 0; other < kit.stops.length; other++) {
      if (other === stack) continue;
      const swap = filterPrice(kit, stack, other);
      const line = other * kit.apertureCount + aperture;
      const same = line * kit.isoCount + iso;
      if (!barred(k, from, same)) least = Math.min(least, swap + reached[same]);
      const reset = swap + kit.price.isoReset;
      if (!barred(k, from, cheapest[line])) {
        least = Math.min(least, reset + reached[cheapest[line]]);
        continue;
      }
      for (let to = line * kit.isoCount; to < (line + 1) * kit.isoCount; to++) {
        if (!barred(k, from, to)) least = Math.min(least, reset + reached[to]);
      }
    }
    return least;
  }

  function stood(from: number, to: number, choice: number): number {
    return spent[to * width + choice] - spent[from * width + choice];
  }

  /** What a filter change moves the rendered exposure by is limited, as every cue is. */
  function barred(k: number, from: number, to: number): boolean {
    return Math.abs(before[k * width + from] - after[k * width + to]) > netEv;
  }

  function afterFilter(source: Float64Array, k: number, to: number): number {
    const free = grid.freeAfterFilter[k];
    const frames = grid.at[free] - grid.at[k];
    const paid = (stood(k, free, to) * (frames - kit.lost)) / frames + kit.lost * kit.price.affectedFrame;
    return paid + source[free * width + to];
  }

  function arrive(cost: Float64Array, k: number, from: number, { to, filter }: BulbMove): number {
    if (!filter) return stood(k, grid.freeAfterCue[k], to) + cost[grid.freeAfterCue[k] * width + to];
    if (grid.freeAfterFilter[k] === 0 || barred(k, from, to)) return Number.POSITIVE_INFINITY;
    return afterFilter(cost, k, to);
  }

  function walk(tables: readonly Float64Array[], isFree: boolean): { start: State; cues: LiveCue[] } {
    let left = tables.length - 1;
    let at = present === undefined ? cheapestBegin(tables[left]) : indexOf(kit, present);
    const start = choices[at];
    const cues: LiveCue[] = [];
    for (let k = present === undefined ? 1 : 0; k < segments; ) {
      const cost = tables[left];
      let least = stood(k, k + 1, at) + cost[(k + 1) * width + at] - 1e-9;
      let best: BulbMove | undefined;
      const stays = least <= cost[k * width + at];
      for (const move of stays ? [] : [...dials[at], ...filtersFrom(kit, choices[at])]) {
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
