// The cheapest way of a shutter timed freely: the recurrence of exact/cost-to-go.ts between places for cues, over
// filter, aperture and ISO alone, with each segment's cost tabled instead of summed by a formula.
//
//   cost(k, s)   = min( segment k at s + cost(k+1, s),  cue price + arrive(k, s') )    s' one legal cue away
//   arrive(k, s') = segments k … free-1 at s' + cost(free, s')                        free: next place for a cue

import { filterPrice } from '../lattice.js';
import { bulbDialMoves, bulbFilterMoves, type Move, type State } from '../moves.js';
import { TIE, traceback, type Way, withinLimit } from '../way.js';
import { type BulbModel, choiceAt, isTooFar, standing, standingAfterFilter } from './model.js';

/** The moves of dials by choice; side by side as numbers, for the loop that reads them most. */
interface DialMoves {
  readonly moves: readonly (readonly Move[])[];
  readonly from: Int32Array; // of each choice in the lists below, and the end
  readonly to: Int32Array;
  readonly price: Float64Array;
}

/**
 * The cheapest way over the grid, or undefined where none exists.
 *
 * @param present what stands in segment 0; undefined where any state may
 * @param limit most filter changes; Infinity where there is none
 */
export function bulbWay(model: BulbModel, present: State | undefined, limit: number): Way | undefined {
  const dials = dialMovesOf(model);
  return withinLimit<Float64Array>(
    limit,
    (afterFilter) => costsOf(model, dials, afterFilter),
    (costs) => trace(model, dials, present, costs),
  );
}

function dialMovesOf({ kit, choices }: BulbModel): DialMoves {
  const moves = choices.map((state) => [...bulbDialMoves(kit, state)]);
  const from = new Int32Array(choices.length + 1);
  moves.forEach((each, i) => {
    from[i + 1] = from[i] + each.length;
  });
  const all = moves.flat();
  return {
    moves,
    from,
    to: Int32Array.from(all, ({ to }) => choiceAt(kit, to)),
    price: Float64Array.from(all, ({ price }) => price),
  };
}

/** Costs by place and choice, before the segment there. */
function costsOf(
  model: BulbModel,
  dials: DialMoves,
  afterFilter: Float64Array | 'same' | undefined,
): Float64Array {
  const { grid, choices, spent, misses } = model;
  const { from, to, price } = dials;
  const width = choices.length;
  const segments = grid.at.length - 1;
  const costs = new Float64Array((segments + 1) * width);
  const filters = afterFilter && new FilterWays(model, afterFilter === 'same' ? costs : afterFilter);
  const turned = new Float64Array(width); // cost of each choice once a dial has been turned to it
  for (let k = segments - 1; k >= 0; k--) {
    const free = grid.freeAfterCue[k] * width;
    const row = k * width;
    const next = row + width;
    const mayChange = filters !== undefined && grid.freeAfterFilter[k] > 0;
    if (mayChange) filters.arriveAt(k);
    for (let i = 0; i < width; i++) {
      const isWithin = misses[free + i] === misses[row + i];
      turned[i] = isWithin ? spent[free + i] - spent[row + i] + costs[free + i] : Number.POSITIVE_INFINITY;
    }
    for (let i = 0; i < width; i++) {
      const stays = misses[next + i] === misses[row + i];
      let least = stays ? spent[next + i] - spent[row + i] + costs[next + i] : Number.POSITIVE_INFINITY;
      for (let move = from[i]; move < from[i + 1]; move++) {
        const through = price[move] + turned[to[move]];
        if (through < least) least = through;
      }
      if (mayChange) least = filters.cheaperThan(least, k, i);
      costs[row + i] = least;
    }
  }
  return costs;
}

/** The ways on by a filter change at one place. */
class FilterWays {
  private readonly model: BulbModel;
  private readonly after: Float64Array;
  private readonly reached: Float64Array; // cost of each choice once a filter change has led to it
  private readonly best: Int32Array; // the cheapest choice of each stack and aperture

  constructor(model: BulbModel, after: Float64Array) {
    this.model = model;
    this.after = after;
    this.reached = new Float64Array(model.choices.length);
    this.best = new Int32Array(model.choices.length / model.kit.isoCount);
  }

  arriveAt(k: number): void {
    const { model, after, reached, best } = this;
    const { choices, grid, kit } = model;
    const free = grid.freeAfterFilter[k] * choices.length;
    for (let to = 0, line = -1; to < choices.length; to++) {
      reached[to] = standingAfterFilter(model, to, k) + after[free + to];
      if (to % kit.isoCount === 0) best[++line] = to;
      else if (reached[to] < reached[best[line]]) best[line] = to;
    }
  }

  /**
   * The cheapest way that costs less than `least`, or `least`: with ISO as it is, or the cheapest of the stack; each ISO
   * only where a net limit bars that.
   */
  cheaperThan(least: number, k: number, choice: number): number {
    const { model, reached, best } = this;
    const { kit, choices } = model;
    const { isoCount, apertureCount, price, stops } = kit;
    const { stack, aperture, iso } = choices[choice];
    let cost = least;
    for (let other = 0; other < stops.length; other++) {
      if (other === stack) continue;
      const line = other * apertureCount + aperture;
      const swap = filterPrice(kit, stack, other);
      const same = line * isoCount + iso;
      if (swap + reached[same] < cost && !isTooFar(model, k, choice, same)) cost = swap + reached[same];
      const reset = swap + price.isoReset;
      if (reset + reached[best[line]] >= cost) continue;
      if (!isTooFar(model, k, choice, best[line])) {
        cost = reset + reached[best[line]];
        continue;
      }
      for (let to = line * isoCount; to < (line + 1) * isoCount; to++) {
        if (reset + reached[to] < cost && !isTooFar(model, k, choice, to)) cost = reset + reached[to];
      }
    }
    return cost;
  }
}

function trace(
  model: BulbModel,
  dials: DialMoves,
  present: State | undefined,
  costs: (changes: number) => Float64Array | undefined,
): Way | undefined {
  const { kit, grid, choices } = model;
  const width = choices.length;
  const start = present ?? cheapestStart(model, costs(0)!);
  if (start === undefined) return undefined;
  return traceback(grid, start, (k, state, changes) => {
    const table = costs(changes)!;
    const choice = choiceAt(kit, state);
    const stay = standing(model, choice, k, k + 1) + table[(k + 1) * width + choice];
    if (stay <= table[k * width + choice] + TIE) return undefined;
    let least = stay;
    let best: Move | undefined;
    const consider = (move: Move, cost: number) => {
      if (cost >= least - TIE) return;
      least = cost;
      best = move;
    };
    for (const move of dials.moves[choice]) {
      const to = choiceAt(kit, move.to);
      const free = grid.freeAfterCue[k];
      consider(move, move.price + standing(model, to, k, free) + table[free * width + to]);
    }
    const after = costs(changes + 1);
    const free = grid.freeAfterFilter[k];
    if (after === undefined || free === 0) return best;
    for (const move of bulbFilterMoves(kit, state)) {
      const to = choiceAt(kit, move.to);
      if (isTooFar(model, k, choice, to)) continue;
      consider(move, move.price + standingAfterFilter(model, to, k) + after[free * width + to]);
    }
    return best;
  });
}

/** The choice from which the first segment on costs least; undefined where none has a way on. */
function cheapestStart(model: BulbModel, costs: Float64Array): State | undefined {
  const { kit, choices } = model;
  let best: State | undefined;
  let least = Number.POSITIVE_INFINITY;
  choices.forEach((state, choice) => {
    if (kit.startStack !== undefined && state.stack !== kit.startStack) return;
    const cost = standing(model, choice, 0, 1) + costs[choices.length + choice];
    if (cost < least - TIE) {
      least = cost;
      best = state;
    }
  });
  return best;
}
