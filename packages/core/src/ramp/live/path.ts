// Forward along the costs ahead: the setting for the next frame and the cues after it.

import type { Lattice } from '../lattice.js';
import { dialMoves, filterMoves, type Move, onDials, type State, shutterOf } from '../moves.js';
import { traceback, type Way } from '../way.js';
import type { LiveCosts, LiveModel } from './costs.js';

const TIE = 1e-9;

/** The cheapest state to stand at through segment 0; of equals the first in order of stack, aperture, level, ISO. */
export function cheapestBegin(model: LiveModel, costs: LiveCosts): State | undefined {
  const { kit, errors } = model;
  let best: State | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let stack = 0; stack < kit.stops.length; stack++) {
    if (kit.startStack !== undefined && stack !== kit.startStack) continue;
    const { low, count } = errors[stack];
    for (let aperture = 0; aperture < kit.apertureCount; aperture++) {
      for (let level = low[0]; level < low[0] + count[0]; level++) {
        for (let iso = 0; iso < kit.isoCount; iso++) {
          const state = { stack, aperture, level, iso };
          if (!onDials(kit, state)) continue;
          const cost = standing(model, 0, 1, state) + costAt(model, costs, 1, state);
          if (cost < least - TIE) {
            best = state;
            least = cost;
          }
        }
      }
    }
  }
  return best;
}

/** Whether a state has a way to the end from a segment on. */
export function leadsOn(model: LiveModel, costs: LiveCosts, state: State, from: number): boolean {
  return costAt(model, costs, from, state) < Number.POSITIVE_INFINITY;
}

/**
 * The cues from a state on.
 *
 * @param from segment at which the first may come
 * @param waits share of its price that a cue of dials must save over one a segment later
 * @param costs the table for each number of filter changes made
 */
export function cuesFrom(
  model: LiveModel,
  start: State,
  from: number,
  waits: (k: number) => number,
  costs: (changes: number) => LiveCosts | undefined,
): Way {
  const { grid } = model;
  return traceback(grid, start, from, (k, state, changes) => {
    const table = costs(changes)!;
    const worth = costAt(model, table, k, state);
    const stay = standing(model, k, k + 1, state) + costAt(model, table, k + 1, state);
    const best = stay <= worth + TIE ? undefined : cheapest(k, state, table, costs(changes + 1));
    // A cue that may as well come later waits: readings are never quite still. So do those told ahead, which a person
    // who asks but now and then will do as told.
    return best !== undefined && !best.filter && stay - worth < waits(k) * best.price ? undefined : best;
  });

  /** The first move that is worth what the table says; filters are in the table's place only where no dial is. */
  function cheapest(
    k: number,
    state: State,
    table: LiveCosts,
    afterFilter: LiveCosts | undefined,
  ): Move | undefined {
    const worth = costAt(model, table, k, state) + TIE;
    let best: Move | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const move of dialMoves(model.kit, state)) {
      const cost = move.price + arrival(model, table, k, move);
      if (cost <= worth) return move;
      if (cost < least) {
        best = move;
        least = cost;
      }
    }
    if (afterFilter === undefined || grid.freeAfterFilter[k] === 0) return best;
    for (const move of filterMoves(model.kit, state)) {
      const cost = move.price + arrival(model, afterFilter, k, move);
      if (cost < least - TIE) {
        best = move;
        least = cost;
      }
    }
    return best;
  }
}

/** Cost from segment k on; Infinity outside the funnel or off the dials. */
function costAt({ kit, errors }: LiveModel, { cost, base }: LiveCosts, k: number, state: State): number {
  const { low, count, isoTop } = errors[state.stack];
  const i = state.level - low[k];
  if (i < 0 || i >= count[k] || !onDials(kit, state)) return Number.POSITIVE_INFINITY;
  if (state.iso > isoTop[k]) return Number.POSITIVE_INFINITY;
  const row = base[k * kit.stops.length + state.stack] + (state.aperture * count[k] + i) * (isoTop[k] + 1);
  return cost[row + state.iso];
}

/** What standing at a state from segment `from` to before segment `to` costs. */
function standing({ kit, errors, grid }: LiveModel, from: number, to: number, state: State): number {
  const { spent, width, base } = errors[state.stack];
  const column = state.level - base;
  const frames = grid.at[to] - grid.at[from];
  return spent[to * width + column] - spent[from * width + column] + frames * framePrice(kit, state);
}

function framePrice(kit: Lattice, state: State): number {
  return kit.price.time[shutterOf(kit, state) - kit.shutterMin] + kit.price.iso[state.iso];
}

/** The same sums as in live-costs.ts. */
function arrival(model: LiveModel, table: LiveCosts, k: number, { to, filter }: Move): number {
  const { kit, grid, errors } = model;
  const free = filter ? grid.freeAfterFilter[k] : grid.freeAfterCue[k];
  const after = costAt(model, table, free, to);
  if (after === Number.POSITIVE_INFINITY) return after;
  if (!filter) return after + standing(model, k, free, to);
  const { spent, width, base } = errors[to.stack];
  const column = to.level - base;
  const frames = grid.at[free] - grid.at[k];
  const judged = frames - kit.lost;
  const stood = spent[free * width + column] - spent[k * width + column];
  const paid = (stood * judged) / frames + kit.lost * kit.price.affectedFrame;
  return after + paid + judged * framePrice(kit, to);
}
