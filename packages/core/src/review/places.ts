// Which frame of the plan each shot is, by its time: the place it has. The camera's own interval may be a little longer or
// shorter than the plan's, and it may have been started between two frames: the places follow it slowly.

import type { Shot } from './taken.js';

/** Shots with their places, counted from the plan's first frame; below 0 before it. */
export interface Places {
  /** One a shot. */
  readonly places: readonly number[];
  /** Whether a shot has the place of the one before it. */
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
  { startMs, intervalS }: { readonly startMs: number; readonly intervalS: number },
): Places {
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
  return { places, isDoubled: places.map((place, i) => i > 0 && place <= places[i - 1]!) };
}
