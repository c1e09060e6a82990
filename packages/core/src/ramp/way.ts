// A ramp as what it starts with and the cues that follow; and how costs to go lead to one.

import type { Grid } from './grid.js';
import type { Move, State } from './moves.js';

/** Two ways whose costs are closer than this are as good as each other, and the order of moves decides. */
export const TIE = 1e-10;

/** One cue: `frame` is the first with the new setting. */
export interface RampCue {
  readonly frame: number;
  readonly to: State;
  readonly filter: boolean;
  /** Set whole, all controls at once and by however much: what hands left undone is caught up with. */
  readonly whole?: true;
}

/** A ramp. */
export interface Way {
  readonly start: State;
  readonly cues: readonly RampCue[]; // in order
}

/**
 * The cheapest way with so many filter changes at most. One table where the optimum of any number keeps the limit,
 * else one for each number of changes left.
 *
 * @param table costs to go, where a filter change leads into `afterFilter`: 'same' where their number is free, the
 *   table with one change fewer left where it is limited, undefined where none may be made
 * @param trace the cheapest way along the table that `costs` gives for each number of changes made; undefined where
 *   there is none
 */
export function withinLimit<Table>(
  limit: number,
  table: (afterFilter: Table | 'same' | undefined) => Table,
  trace: (costs: (changes: number) => Table | undefined) => Way | undefined,
): Way | undefined {
  if (limit > 0) {
    const free = table('same');
    const way = trace(() => free);
    if (way === undefined || way.cues.filter(({ filter }) => filter).length <= limit) return way;
  }
  const tables: Table[] = [];
  for (let left = 0; left <= limit; left++) tables.push(table(tables.at(-1)));
  return trace((changes) => tables[limit - changes]);
}

/**
 * Forward from what stands in segment 0: the cheapest move at each place for a cue, and on to the next place.
 *
 * @param cheapest the move that is cheaper at segment k than to stay, or undefined; `changes` filters were changed before
 */
export function traceback(
  { at, freeAfterCue, freeAfterFilter }: Grid,
  start: State,
  cheapest: (k: number, state: State, changes: number) => Move | undefined,
): Way {
  const cues: RampCue[] = [];
  let state = start;
  let changes = 0;
  for (let k = 1; k < at.length - 1; ) {
    const move = cheapest(k, state, changes);
    if (move === undefined) {
      k++;
      continue;
    }
    if (move.filter) changes++;
    state = move.to;
    cues.push({ frame: at[k], to: state, filter: move.filter });
    k = move.filter ? freeAfterFilter[k] : freeAfterCue[k];
  }
  return { start, cues };
}
