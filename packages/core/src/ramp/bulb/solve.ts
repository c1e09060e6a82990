// The ramp of a rig that times the shutter freely. On every frame the time makes the error zero, clamped to
// its limits, so only filter, aperture and ISO are left to choose: the recurrence of cost-to-go.ts over far
// fewer settings, with each frame's cost tabled instead of summed by a formula.

import { longestTimeInside } from '../../footage/frames.js';
import { beyondKit } from '../infeasible.js';
import { filterPrice, type Lattice, SLACK, timePrice, weightsOf } from '../lattice.js';
import type { RampFrame, RampProblem } from '../problem.js';

/** What is left to choose, as indices; see lattice.ts. */
interface Choice {
  readonly stack: number;
  readonly aperture: number;
  readonly iso: number;
}

interface Move {
  readonly to: number; // index into choices
  readonly price: number;
  readonly filter: boolean;
}

/** Everything by frame and choice, at index frame * choices.length + choice. */
interface Model {
  readonly choices: readonly Choice[];
  readonly moves: readonly (readonly Move[])[]; // by choice, in the order in which ties are broken
  readonly shutterStep: Float64Array;
  readonly exposureEv: Float64Array;
  readonly spent: Float64Array; // standing cost of all frames before
  readonly misses: Int32Array; // frames before that are out of tolerance
}

/** The cheapest path, or the first frame none can meet. */
export type BulbPath =
  | { readonly kind: 'ok'; readonly frames: readonly RampFrame[] }
  | { readonly kind: 'none'; readonly frame: number; readonly excessEv: number };

/** {@link solveRamp} for a kit with `bulb`. */
export function solveBulb(problem: RampProblem, lattice: Lattice): BulbPath {
  const model = modelOf(problem, lattice);
  const unlimited = rollOut(lattice, model, costToGo(lattice, model, 'same'));
  const limit = problem.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY;
  if (unlimited !== undefined && filterChanges(unlimited) <= limit) return { kind: 'ok', frames: unlimited };

  const tables: Float64Array[] = [];
  for (let left = 0; unlimited !== undefined && left <= limit; left++) {
    tables.push(costToGo(lattice, model, tables.at(-1)));
  }
  const limited = tables.length === 0 ? undefined : rollOut(lattice, model, tables);
  if (limited !== undefined) return { kind: 'ok', frames: limited };
  const frame = firstUnmet(lattice, model, limit);
  return { kind: 'none', frame, excessEv: nearestMiss(lattice, model, frame) };
}

/** Whether any ramp exists: the verdict of {@link solveBulb} alone, and sooner. */
export function bulbRampExists(problem: RampProblem, lattice: Lattice): boolean {
  // A time between two marks may reach further than the last of them.
  if (beyondKit(lattice, 1 / lattice.stepsPerStop)) return false;
  const model = modelOf(problem, lattice);
  const limit = problem.limits.maxFilterChanges;
  if (limit !== undefined) return firstUnmet(lattice, model, limit) === lattice.frameCount;
  return cheapestStart(lattice, model, costToGo(lattice, model, 'same')) >= 0;
}

function modelOf(problem: RampProblem, lattice: Lattice): Model {
  const { frameCount, stops, stepsPerStop, isoCount, apertureCount, target, price, toleranceEv } = lattice;
  const weights = weightsOf(problem);
  const choices: Choice[] = [];
  for (let stack = 0; stack < stops.length; stack++) {
    for (let aperture = 0; aperture < apertureCount; aperture++) {
      for (let iso = 0; iso < isoCount; iso++) choices.push({ stack, aperture, iso });
    }
  }
  // The interval may end the shutter between two marks of the dial.
  const insideS = longestTimeInside(problem.intervalS, problem);
  const longest = Math.max(problem.kit.shutter.longestStep, -stepsPerStop * Math.log2(insideS));
  const shortest = problem.kit.shutter.shortestStep;

  const width = choices.length;
  const model: Model = {
    choices,
    moves: choices.map((choice, index) => movesOf(lattice, choice, index)),
    shutterStep: new Float64Array(frameCount * width),
    exposureEv: new Float64Array(frameCount * width),
    spent: new Float64Array((frameCount + 1) * width),
    misses: new Int32Array((frameCount + 1) * width),
  };
  for (let frame = 0, at = 0; frame < frameCount; frame++) {
    for (const { stack, aperture, iso } of choices) {
      const others = lattice.apertureMin + aperture - lattice.isoMin - iso; // steps, without the shutter
      const wanted = (target[frame] - stops[stack]) * stepsPerStop - others;
      const shutter = Math.min(shortest, Math.max(longest, wanted));
      const exposure = (shutter + others) / stepsPerStop + stops[stack];
      const error = exposure - target[frame];
      const time = timePrice(shutter / stepsPerStop, problem.intervalS, weights);
      model.shutterStep[at] = shutter;
      model.exposureEv[at] = exposure;
      model.spent[at + width] = model.spent[at] + price.error * error * error + time + price.iso[iso];
      model.misses[at + width] = model.misses[at] + (Math.abs(error) > toleranceEv + SLACK ? 1 : 0);
      at++;
    }
  }
  return model;
}

function movesOf(lattice: Lattice, { stack, aperture, iso }: Choice, index: number): Move[] {
  const { stops, isoCount, apertureCount, largestStep, price } = lattice;
  const moves: Move[] = [];
  for (let step = 1; step <= largestStep; step++) {
    if (iso + step < isoCount) moves.push({ to: index + step, price: price.isoUp, filter: false });
    if (iso - step >= 0) moves.push({ to: index - step, price: price.isoDown, filter: false });
  }
  for (let step = 1; step <= largestStep; step++) {
    if (aperture - step >= 0) moves.push({ to: index - step * isoCount, price: price.wider, filter: false });
    if (aperture + step < apertureCount) {
      moves.push({ to: index + step * isoCount, price: price.narrower, filter: false });
    }
  }
  for (let other = 0; other < stops.length; other++) {
    if (other === stack) continue;
    const swap = filterPrice(lattice, stack, other);
    for (let to = 0; to < isoCount; to++) {
      const at = (other * apertureCount + aperture) * isoCount + to;
      moves.push({ to: at, price: swap + (to === iso ? 0 : price.isoReset), filter: true });
    }
  }
  return moves;
}

/** Standing cost of a choice over frames from…to; Infinity where one is out of tolerance. */
function standing({ choices, spent, misses }: Model, choice: number, from: number, to: number): number {
  const width = choices.length;
  const first = from * width + choice;
  const end = (to + 1) * width + choice;
  return misses[end] > misses[first] ? Number.POSITIVE_INFINITY : spent[end] - spent[first];
}

/** Cost from a choice set at frame j on, `spoilt` frames lost and then held as the rules want; the move's price comes on top. */
function arrivalCost(
  lattice: Lattice,
  model: Model,
  j: number,
  to: number,
  spoilt: number,
  after: Float64Array,
): number {
  const { frameCount, spacing, price } = lattice;
  if (j + spoilt >= frameCount) return Number.POSITIVE_INFINITY;
  const free = Math.min(j + Math.max(spacing - 1, spoilt), frameCount - 1);
  const heldCost = free === j + spoilt ? 0 : standing(model, to, j + spoilt, free - 1);
  return spoilt * price.affectedFrame + heldCost + after[free * model.choices.length + to];
}

/** Whether a filter change at frame j alters the exposure by no more than one cue may. */
function isNetWithin(
  { largestStep, stepsPerStop }: Lattice,
  model: Model,
  j: number,
  from: number,
  to: number,
) {
  const width = model.choices.length;
  const net = model.exposureEv[j * width + to] - model.exposureEv[(j - 1) * width + from];
  return Math.abs(net) <= largestStep / stepsPerStop + SLACK;
}

/** Cost to go by frame and choice; `afterFilter` as in cost-to-go.ts. */
function costToGo(
  lattice: Lattice,
  model: Model,
  afterFilter: Float64Array | 'same' | undefined,
): Float64Array {
  const { frameCount, lost } = lattice;
  const width = model.choices.length;
  const cost = new Float64Array(frameCount * width);
  const filtered = afterFilter === 'same' ? cost : afterFilter;
  // Many moves arrive at one choice: what follows is reckoned once.
  const turned = new Float64Array(width);
  const swapped = new Float64Array(width).fill(Number.POSITIVE_INFINITY);
  for (let frame = frameCount - 1; frame >= 0; frame--) {
    const j = frame + 1;
    const last = j === frameCount;
    for (let to = 0; to < width && !last; to++) {
      turned[to] = arrivalCost(lattice, model, j, to, 0, cost);
      if (filtered) swapped[to] = arrivalCost(lattice, model, j, to, lost, filtered);
    }
    for (let choice = 0; choice < width; choice++) {
      let least = last ? 0 : cost[j * width + choice];
      for (const { to, price, filter } of last ? [] : model.moves[choice]) {
        const way = price + (filter ? swapped[to] : turned[to]);
        if (way < least && (!filter || isNetWithin(lattice, model, j, choice, to))) least = way;
      }
      cost[frame * width + choice] = least + standing(model, choice, frame, frame);
    }
  }
  return cost;
}

/** Forward along the costs to go; tables as in rollout.ts. Undefined where no ramp exists. */
function rollOut(
  lattice: Lattice,
  model: Model,
  tables: Float64Array | readonly Float64Array[],
): RampFrame[] | undefined {
  const { frameCount, lost, spacing } = lattice;
  const width = model.choices.length;
  let left = Array.isArray(tables) ? tables.length - 1 : 0;
  const tableWith = (changes: number) => (tables instanceof Float64Array ? tables : tables[changes]);
  let choice = cheapestStart(lattice, model, tableWith(left));
  if (choice < 0) return undefined;
  const frames = [frameOf(lattice, model, 0, choice, false)];
  while (frames.length < frameCount) {
    const next = frames.length;
    const table = tableWith(left);
    let least = table[next * width + choice];
    let best: Move | undefined;
    for (const move of model.moves[choice]) {
      const after = move.filter ? tableWith(left - 1) : table;
      if (after === undefined) continue;
      if (move.filter && !isNetWithin(lattice, model, next, choice, move.to)) continue;
      const cost = move.price + arrivalCost(lattice, model, next, move.to, move.filter ? lost : 0, after);
      if (cost < least - 1e-10) {
        least = cost;
        best = move;
      }
    }
    const spoilt = best?.filter ? lost : 0;
    const free = best === undefined ? next : Math.min(next + Math.max(spacing - 1, spoilt), frameCount - 1);
    if (best?.filter) left--;
    choice = best?.to ?? choice;
    for (let frame = next; frame <= free; frame++) {
      frames.push(frameOf(lattice, model, frame, choice, frame < next + spoilt));
    }
  }
  return frames;
}

/** The choice from which the first frame on costs least; -1 where none has a way on. */
function cheapestStart({ startStack }: Lattice, { choices }: Model, cost: Float64Array): number {
  let best = -1;
  for (let start = 0; start < choices.length; start++) {
    if (startStack !== undefined && choices[start].stack !== startStack) continue;
    if (cost[start] < (best < 0 ? Number.POSITIVE_INFINITY : cost[best] - 1e-10)) best = start;
  }
  return best;
}

function frameOf(
  lattice: Lattice,
  model: Model,
  frame: number,
  choice: number,
  affected: boolean,
): RampFrame {
  const { stack, aperture, iso } = model.choices[choice];
  const at = frame * model.choices.length + choice;
  return {
    shutterStep: model.shutterStep[at],
    isoStep: lattice.isoMin + iso,
    apertureStep: lattice.apertureMin + aperture,
    stack,
    settingEv100: model.exposureEv[at],
    errorEv: model.exposureEv[at] - lattice.target[frame],
    affected,
  };
}

function filterChanges(frames: readonly RampFrame[]): number {
  return frames.filter(({ stack }, i) => i > 0 && stack !== frames[i - 1].stack).length;
}

/** First frame no legal start can meet: forward, with the fewest filter changes each choice can be reached by. */
function firstUnmet(lattice: Lattice, model: Model, limit: number): number {
  const { frameCount, spacing, lost } = lattice;
  const width = model.choices.length;
  const used = new Float64Array(frameCount * width).fill(Number.POSITIVE_INFINITY);
  let last = -1;
  const met = (choice: number, from: number, to: number) => {
    let frame = from;
    while (frame <= to && standing(model, choice, frame, frame) < Number.POSITIVE_INFINITY) frame++;
    if (frame > from) last = Math.max(last, frame - 1);
    return frame > to;
  };
  for (let choice = 0; choice < width; choice++) {
    const mayStart = lattice.startStack === undefined || model.choices[choice].stack === lattice.startStack;
    if (mayStart && met(choice, 0, 0)) used[choice] = 0;
  }
  for (let frame = 0; frame < frameCount - 1; frame++) {
    const j = frame + 1;
    for (let choice = 0; choice < width; choice++) {
      const so = used[frame * width + choice];
      if (so === Number.POSITIVE_INFINITY) continue;
      if (met(choice, j, j)) used[j * width + choice] = Math.min(used[j * width + choice], so);
      for (const move of model.moves[choice]) {
        const after = so + (move.filter ? 1 : 0);
        const spoilt = move.filter ? lost : 0;
        if (after > limit || j + spoilt >= frameCount) continue;
        const free = Math.min(j + Math.max(spacing - 1, spoilt), frameCount - 1);
        if (move.filter && !isNetWithin(lattice, model, j, choice, move.to)) continue;
        if (!met(move.to, j + spoilt, free)) continue;
        used[free * width + move.to] = Math.min(used[free * width + move.to], after);
      }
    }
  }
  return last + 1;
}

/** How far outside tolerance the choice nearest to the target is on a frame; 0 where one is within it. */
function nearestMiss(lattice: Lattice, model: Model, frame: number): number {
  const width = model.choices.length;
  const misses = model.choices.map((_, choice) =>
    Math.abs(model.exposureEv[frame * width + choice] - lattice.target[frame]),
  );
  return Math.max(0, Math.min(...misses) - lattice.toleranceEv);
}
