// What was on the lens at each shot. No file says it: it is given, or logged, or as the cues that stand have it; and where the
// frames' levels tell otherwise, they are right.

import { filterStops } from '../exposure/filter.js';
import { stackText } from '../plan/cues.js';
import type { PlanMade } from '../plan/types.js';
import type { Shoot } from '../shoot/shoot.js';
import type { Shot } from './taken.js';
import type { ReviewOptions } from './types.js';

/** What is on the lens. */
export interface Lens {
  readonly names: readonly string[];
  readonly stops: number;
}

/** What was on the lens, and the changes of filter that came out of the levels. */
export interface LensFound {
  /** One a shot. */
  readonly lenses: readonly Lens[];
  /** By the cue's place in the plan: the first shot with the new filter, undefined where it stayed. */
  readonly seen: ReadonlyMap<number, number | undefined>;
  /** Whether nothing but the plan tells of the filters, which change. */
  readonly isAssumed: boolean;
}

/** Filters weaker than this are not told from the light. */
const LEAST_STOPS = 0.8;

interface Known {
  readonly plan: PlanMade;
  readonly options: Pick<ReviewOptions, 'filterLog'>;
  /** True UTC epoch milliseconds of each shot. */
  readonly timesMs: readonly number[];
  /** Cues that stand at each shot. */
  readonly done: readonly number[];
  /** Light that each frame shows without filters, less the forecast; NaN where it has no level. */
  readonly bareOverForecastEv: readonly number[];
}

/** @throws RangeError on a filter that is not the shoot's */
export function lensesOf(shots: readonly Shot[], known: Known): LensFound {
  const { plan, options, timesMs, done } = known;
  const ofNames = lensReader(plan.shoot);
  const log = [...(options.filterLog ?? [])]
    .sort((a, b) => a.atMs - b.atMs)
    .map(({ atMs, filters }) => ({ atMs, lens: ofNames(filters) }));
  const states = [0, ...plan.cues.map(({ frame }) => frame)].map((frame) => {
    const { filters: names, filterStops: stops } = plan.frames[frame]!;
    return { names, stops };
  });
  const lenses = shots.map(({ taken }, i): Lens => {
    if (taken.filters !== undefined) return ofNames(taken.filters);
    const logged = log.filter(({ atMs }) => atMs <= timesMs[i]!).at(-1);
    return logged?.lens ?? states[done[i]!]!;
  });
  const changes = plan.cues.flatMap((cue, index) =>
    cue.changes.some(({ control }) => control === 'filter') ? [index] : [],
  );
  const isGiven = log.length > 0 || shots.some(({ taken }) => taken.filters !== undefined);
  const hasLevels = known.bareOverForecastEv.some((ev) => !Number.isNaN(ev));
  const seen = new Map<number, number | undefined>();
  if (!isGiven && hasLevels) {
    for (const [nth, cue] of changes.entries()) {
      const last = changes[nth - 1];
      const from = last === undefined ? 0 : (seen.get(last) ?? startOf(last, lenses, known));
      const to = nth + 1 < changes.length ? startOf(changes[nth + 1]!, lenses, known) : shots.length;
      const at = changeIn(known.bareOverForecastEv, {
        from,
        to,
        before: lenses[from]!,
        after: states[cue + 1]!,
      });
      if (at === 'untold') continue;
      seen.set(cue, at);
      const before = lenses[from]!;
      for (let i = from; i < to; i++) lenses[i] = at !== undefined && i >= at ? states[cue + 1]! : before;
    }
  }
  return { lenses, seen, isAssumed: changes.length > 0 && !isGiven && !hasLevels };
}

/** First shot at which so many cues stand. */
function startOf(cue: number, lenses: readonly Lens[], { done }: Known): number {
  const at = done.findIndex((count) => count > cue);
  return at < 0 ? lenses.length : at;
}

/**
 * The shot from which on the new filter makes one light of all frames, undefined where the old one does to the end; by the
 * absolute differences from the light before. 'untold' where too little is known.
 */
function changeIn(
  overForecastEv: readonly number[],
  { from, to, before, after }: { from: number; to: number; before: Lens; after: Lens },
): number | undefined | 'untold' {
  if (Math.abs(after.stops - before.stops) < LEAST_STOPS) return 'untold';
  const shots = Array.from({ length: to - from }, (_, k) => from + k).filter(
    (i) => !Number.isNaN(overForecastEv[i]!),
  );
  if (shots.length < 6) return 'untold';
  // Either filter, with the light carried on from the shots before: what fits the one does not fit the other.
  const offFrom = (lens: Lens) => (i: number) => overForecastEv[i]! + lens.stops;
  const lightEv = median(shots.slice(0, Math.max(3, Math.min(30, shots.length >> 2))).map(offFrom(before)));
  const misfit = (lens: Lens, i: number) => Math.min(3, Math.abs(offFrom(lens)(i) - lightEv));
  let cost = shots.reduce((sum, i) => sum + misfit(after, i), 0);
  let least = { cost, at: shots[0] as number | undefined };
  for (const [k, i] of shots.entries()) {
    cost += misfit(before, i) - misfit(after, i);
    if (cost < least.cost) least = { cost, at: shots[k + 1] };
  }
  return least.at;
}

function lensReader({ filters }: Shoot): (names: readonly string[]) => Lens {
  const stopsOf = new Map(filters.map((spec) => [spec.name, filterStops(spec)]));
  return (names) => {
    const stops = names.reduce((sum, name) => {
      const own = stopsOf.get(name);
      if (own !== undefined) return sum + own;
      throw new RangeError(`filters must be the shoot's, ${stackText([...stopsOf.keys()])}, got "${name}"`);
    }, 0);
    return { names, stops };
  };
}

export function median(values: readonly number[]): number {
  const inOrder = [...values].sort((a, b) => a - b);
  const middle = inOrder.length >> 1;
  return inOrder.length % 2 === 1 ? inOrder[middle]! : (inOrder[middle - 1]! + inOrder[middle]!) / 2;
}
