// Which frame of the plan each shot is, by its time: the place it has. The camera's own interval may be a little longer or
// shorter than the plan's, and it may have been started between two frames: the places follow it slowly.

import type { PlanMade } from '../plan/types.js';
import type { Shot } from './taken.js';

/** Shots with their places, counted from the plan's first frame; below 0 before it. */
export interface Places {
  /** One a shot. */
  readonly places: readonly number[];
  /** Whether another shot has the same place and is nearer to what was planned there: of a bracket the middle one stays. */
  readonly isDoubled: readonly boolean[];
}

/** How fast the places follow the camera's own rhythm: a fifth of what a shot is off. */
const FOLLOW = 0.2;

/**
 * @param shots in order
 * @param timesMs their starts, true UTC epoch milliseconds
 */
export function placesOf(
  shots: readonly Shot[],
  timesMs: readonly number[],
  { startMs, plan }: { readonly startMs: number; readonly plan: PlanMade },
): Places {
  const { intervalS } = plan.shoot;
  const inIntervals = timesMs.map((ms) => (ms - startMs) / (1000 * intervalS));
  const places: number[] = [];
  let phase = 0;
  for (const [i, at] of inIntervals.entries()) {
    if (i === 0) phase = at - Math.round(at);
    const place = Math.round(at - phase);
    // Past a long pause the rhythm may be another.
    phase += FOLLOW * (at - phase - place);
    places.push(place);
  }
  // Times in whole seconds: two shots of short intervals may seem to have one place, beside an empty one.
  for (let i = 1; i < places.length; i++) {
    if (places[i] !== places[i - 1] || shots[i]!.isFine) continue;
    const next = places[i + 1] ?? Number.POSITIVE_INFINITY;
    const before = places[i - 2] ?? Number.NEGATIVE_INFINITY;
    const isNear = (place: number) =>
      Math.abs(inIntervals[i]! - phase - place) * intervalS <= 1 + intervalS / 2;
    if (next >= places[i]! + 2 && i + 1 < places.length && isNear(places[i]! + 1)) places[i]! += 1;
    else if (before <= places[i - 1]! - 2 && i > 1 && isNear(places[i]!)) places[i - 1]! -= 1;
  }
  // Sorted times never go back, their places may by a step of the rhythm.
  for (let i = 1; i < places.length; i++) places[i] = Math.max(places[i]!, places[i - 1]!);
  const offOf = (i: number) => {
    const frame = plan.frames[Math.min(plan.frames.length - 1, Math.max(0, places[i]!))]!;
    return Math.abs(shots[i]!.bareEv100 - (frame.settingEv100 - frame.filterStops));
  };
  const kept = new Map<number, number>();
  for (const [i, place] of places.entries()) {
    const other = kept.get(place);
    // The first of equals.
    if (other === undefined || offOf(i) < offOf(other) - 1e-9) kept.set(place, i);
  }
  return { places, isDoubled: places.map((place, i) => kept.get(place) !== i) };
}
