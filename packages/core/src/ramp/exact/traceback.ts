// Forward along the costs to go: from a setting, take the cheapest way, and so on to the last frame.

import { everyFrame } from '../grid.js';
import type { Lattice } from '../lattice.js';
import { dialMoves, filterMoves, type Move, onDials, type State, shutterOf } from '../moves.js';
import { traceback, type Way } from '../way.js';
import type { HeldErrors } from './held.js';
import { type CostToGo, cellOf } from './table.js';

/** Two ways closer than this are as good as each other, and the order of moves decides. */
const TIE = 1e-10;

/** Cost to go of a state at a frame; Infinity where it is out of tolerance or leads nowhere. */
function costOf(lattice: Lattice, table: CostToGo, frame: number, state: State): number {
  const at = frame * lattice.stops.length + state.stack;
  const row = state.level - lattice.band.low[at];
  if (row < 0 || row >= lattice.band.count[at] || !onDials(lattice, state)) return Number.POSITIVE_INFINITY;
  const line = state.aperture * lattice.band.count[at] + row;
  return table.cost[cellOf(table, table.firstRow[at] + line) + state.iso];
}

/** The cheapest state of the first frame, or undefined where no ramp exists. */
function cheapestStart(lattice: Lattice, table: CostToGo): State | undefined {
  let best: State | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let stack = 0; stack < lattice.stops.length; stack++) {
    if (lattice.startStack !== undefined && stack !== lattice.startStack) continue;
    const low = lattice.band.low[stack];
    for (let aperture = 0; aperture < lattice.apertureCount; aperture++) {
      for (let level = low; level < low + lattice.band.count[stack]; level++) {
        for (let iso = 0; iso < lattice.isoCount; iso++) {
          const state = { stack, aperture, level, iso };
          const cost = costOf(lattice, table, 0, state);
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

/**
 * The cheapest ramp, or undefined where none exists.
 *
 * @param costs the table for each number of filter changes made
 */
export function cheapestWay(
  lattice: Lattice,
  held: HeldErrors,
  costs: (changes: number) => CostToGo | undefined,
): Way | undefined {
  const start = cheapestStart(lattice, costs(0)!);
  if (start === undefined) return undefined;
  const grid = everyFrame(lattice.frameCount, lattice);
  return traceback(grid, start, 1, (next, state, changes) => {
    const table = costs(changes)!;
    const stay = costOf(lattice, table, next, state);
    const least = costOf(lattice, table, next - 1, state) - standingCost(lattice, next - 1, state);
    // Most frames stay; only where a cue is cheaper are the cues looked at one by one.
    if (stay <= least + TIE) return undefined;
    return cheapestMove(lattice, held, table, costs(changes + 1), next, state, least);
  });
}

function standingCost(lattice: Lattice, frame: number, state: State): number {
  const { price, stepsPerStop, stops, target } = lattice;
  const error = state.level / stepsPerStop + stops[state.stack] - target[frame];
  const shutter = shutterOf(lattice, state) - lattice.shutterMin;
  return price.error * error * error + price.time[shutter] + price.iso[state.iso];
}

/** The cheapest cue, of which the table knows the cost: `least`. */
function cheapestMove(
  lattice: Lattice,
  held: HeldErrors,
  table: CostToGo,
  afterFilter: CostToGo | undefined,
  j: number,
  state: State,
  least: number,
): Move | undefined {
  let best: Move | undefined;
  let found = Number.POSITIVE_INFINITY;
  const consider = (move: Move, after: CostToGo) => {
    const cost = move.price + arrival(lattice, held, after, j, move);
    if (cost < found - TIE) {
      best = move;
      found = cost;
    }
  };
  for (const move of dialMoves(lattice, state)) consider(move, table);
  // The many ways to change a filter are gone through only where no dial is as cheap.
  if (afterFilter !== undefined && found > least + TIE) {
    for (const move of filterMoves(lattice, state)) consider(move, afterFilter);
  }
  return best;
}

/** What arriving by a cue at frame j costs from there on; the same sums as in cost-to-go.ts. */
function arrival(
  lattice: Lattice,
  held: HeldErrors,
  table: CostToGo,
  j: number,
  { to, filter }: Move,
): number {
  const { frameCount, spacing, lost, stops, stepsPerStop, price } = lattice;
  const spoilt = filter ? lost : 0;
  const judged = j + spoilt;
  if (judged >= frameCount || !onDials(lattice, to)) return Number.POSITIVE_INFINITY;
  const bands = filter ? lattice.landing : lattice.hold;
  const at = j * stops.length + to.stack;
  if (to.level < bands.low[at] || to.level >= bands.low[at] + bands.count[at])
    return Number.POSITIVE_INFINITY;
  const free = Math.min(j + Math.max(spacing - 1, spoilt), frameCount - 1);
  const errors = price.error * held.sum(to.level / stepsPerStop + stops[to.stack], judged, free);
  const standing = price.time[shutterOf(lattice, to) - lattice.shutterMin] + price.iso[to.iso];
  return (
    spoilt * price.affectedFrame + errors + (free - judged) * standing + costOf(lattice, table, free, to)
  );
}
