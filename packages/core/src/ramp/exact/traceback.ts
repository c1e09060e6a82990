// Forward along the costs to go: from a setting, take the cheapest way, and so on to the end.

import { filterPrice } from '../lattice.js';
import {
  dialMoves,
  filterMoves,
  type Move,
  onDials,
  type State,
  shutterOf,
  standingPrice,
} from '../moves.js';
import { TIE, traceback, type Way } from '../way.js';
import { type Course, heldThrough, judgedFrames } from './course.js';
import { type CostToGo, cellOf } from './table.js';

/**
 * The cheapest way, or undefined where none exists.
 *
 * @param present what stands in segment 0; undefined where any setting may
 * @param costs the table for each number of filter changes made
 * @param waits share of its price that a cue of dials must save at segment k, or it waits
 */
export function cheapestWay(
  course: Course,
  present: State | undefined,
  costs: (changes: number) => CostToGo | undefined,
  waits: (k: number) => number,
): Way | undefined {
  const start = present ?? cheapestStart(course, costs(0)!);
  if (start === undefined || costOf(course, costs(0)!, 0, start) === Number.POSITIVE_INFINITY)
    return undefined;
  return traceback(course.grid, start, cheaperThanToStay(course, costs, waits));
}

/**
 * The cheapest way whose first cue comes at once and goes anywhere, whatever has to be turned for it: what hands left undone
 * is caught up with. Undefined where there is none.
 *
 * @param toldStack the filters that were told last and not put on
 */
export function caughtUpWay(
  course: Course,
  present: State,
  toldStack: number,
  costs: (changes: number) => CostToGo | undefined,
  waits: (k: number) => number,
): Way | undefined {
  const leap = cheapestLeap(course, present, toldStack, costs(0)!, costs(1));
  if (leap === undefined) return undefined;
  const goesOn = cheaperThanToStay(course, costs, waits);
  const way = traceback(course.grid, present, (k, ...rest) => (k === 1 ? leap : goesOn(k, ...rest)));
  return { start: present, cues: way.cues.map((cue, i) => (i === 0 ? { ...cue, whole: true } : cue)) };
}

/** The move at a segment that is cheaper than to stay, or undefined. */
function cheaperThanToStay(
  course: Course,
  costs: (changes: number) => CostToGo | undefined,
  waits: (k: number) => number,
) {
  return (k: number, state: State, changes: number): Move | undefined => {
    const table = costs(changes)!;
    const stay = costOf(course, table, k, state);
    const least = costOf(course, table, k - 1, state) - standingCost(course, k - 1, state);
    // Mostly to stay is best; only where a cue is cheaper are the cues looked at one by one.
    if (stay <= least + TIE) return undefined;
    const move = cheapestMove(course, table, costs(changes + 1), k, state, least);
    // A cue that may as well come later waits: readings are never quite still. So do those told ahead, which a person
    // who asks but now and then will do as told.
    return move === undefined || (!move.filter && stay - least < waits(k) * move.price) ? undefined : move;
  };
}

/**
 * The cheapest setting to go to at once. Each control that is touched has its price, a filter that of the frames it affects,
 * as in a plan; so one goes on or off only where that is better for what comes after, too. To tell other filters than
 * before costs what changing them would, so that what is told does not go to and fro from minute to minute.
 */
function cheapestLeap(
  course: Course,
  from: State,
  toldStack: number,
  table: CostToGo,
  afterFilter: CostToGo | undefined,
): Move | undefined {
  const { lattice, grid, hold, landing } = course;
  const { stops, price, apertureCount, isoCount } = lattice;
  let best: Move | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let stack = 0; stack < stops.length; stack++) {
    const filter = stack !== from.stack;
    const after = filter ? afterFilter : table;
    if (after === undefined || (filter && grid.freeAfterFilter[1] === 0)) continue;
    const told = stack === toldStack ? 0 : filterPrice(lattice, toldStack, stack);
    const affected = stack === toldStack ? 0 : lattice.affectedFrames * price.affectedFrame;
    const swap = filter ? filterPrice(lattice, from.stack, stack) : 0;
    const bands = filter ? landing : hold;
    const low = bands.low[stops.length + stack];
    const high = low + bands.count[stops.length + stack];
    for (let aperture = 0; aperture < apertureCount; aperture++) {
      for (let level = low; level < high; level++) {
        for (let iso = 0; iso < isoCount; iso++) {
          const to = { stack, aperture, level, iso };
          const dials =
            (shutterOf(lattice, to) === shutterOf(lattice, from) ? 0 : price.shutterReset) +
            (iso === from.iso ? 0 : price.isoReset) +
            (aperture === from.aperture ? 0 : Math.min(price.narrower, price.wider));
          const move = { to, price: told + affected + swap + dials, filter };
          const cost = move.price + arrival(course, after, 1, move);
          if (cost < least - TIE) {
            best = move;
            least = cost;
          }
        }
      }
    }
  }
  return best;
}

/** Cost to go of a state at a segment; Infinity where it is not looked at or leads nowhere. */
function costOf({ lattice, band }: Course, table: CostToGo, k: number, state: State): number {
  const at = k * lattice.stops.length + state.stack;
  const row = state.level - band.low[at];
  if (row < 0 || row >= band.count[at] || !onDials(lattice, state)) return Number.POSITIVE_INFINITY;
  const line = state.aperture * band.count[at] + row;
  return table.cost[cellOf(table, table.firstRow[at] + line) + state.iso];
}

/** The cheapest state of segment 0, or undefined where no ramp exists. */
function cheapestStart(course: Course, table: CostToGo): State | undefined {
  const { lattice, band } = course;
  let best: State | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let stack = 0; stack < lattice.stops.length; stack++) {
    if (lattice.startStack !== undefined && stack !== lattice.startStack) continue;
    const low = band.low[stack];
    for (let aperture = 0; aperture < lattice.apertureCount; aperture++) {
      for (let level = low; level < low + band.count[stack]; level++) {
        for (let iso = 0; iso < lattice.isoCount; iso++) {
          const state = { stack, aperture, level, iso };
          const cost = costOf(course, table, 0, state);
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

/** What a state costs in segment k. */
function standingCost({ lattice, grid, errors }: Course, k: number, state: State): number {
  const frames = grid.at[k + 1] - grid.at[k];
  return errors.over(k, state.stack, state.level) + frames * standingPrice(lattice, state);
}

/** The cheapest cue, of which the table knows the cost: `least`. */
function cheapestMove(
  course: Course,
  table: CostToGo,
  afterFilter: CostToGo | undefined,
  k: number,
  state: State,
  least: number,
): Move | undefined {
  const { lattice, grid } = course;
  let best: Move | undefined;
  let found = Number.POSITIVE_INFINITY;
  const consider = (move: Move, after: CostToGo) => {
    const cost = move.price + arrival(course, after, k, move);
    if (cost < found - TIE) {
      best = move;
      found = cost;
    }
  };
  for (const move of dialMoves(lattice, state)) consider(move, table);
  // The many ways to change a filter are gone through only where no dial is as cheap.
  if (afterFilter !== undefined && grid.freeAfterFilter[k] > 0 && found > least + TIE) {
    for (const move of filterMoves(lattice, state)) consider(move, afterFilter);
  }
  return best;
}

/** What arriving by a cue at segment k costs from there on; the same sums as in arrivals.ts. */
function arrival(course: Course, table: CostToGo, k: number, { to, filter }: Move): number {
  const { lattice, grid, errors } = course;
  const { stops, price, affectedFrames } = lattice;
  if (!onDials(lattice, to)) return Number.POSITIVE_INFINITY;
  const bands = filter ? course.landing : course.hold;
  const at = k * stops.length + to.stack;
  if (to.level < bands.low[at] || to.level >= bands.low[at] + bands.count[at])
    return Number.POSITIVE_INFINITY;
  const free = heldThrough(grid, k, filter);
  const frames = judgedFrames(course, k, free, filter);
  const spent =
    (filter ? affectedFrames * price.affectedFrame : 0) + errors.held(k, to.stack, to.level, filter);
  return spent + frames * standingPrice(lattice, to) + costOf(course, table, free, to);
}
