// Whether every interval has time to spare, beyond what camera and move are said to take.

import type { Note } from './note-context.js';
import type { PlanFrame } from './types.js';

/** Less than this share of an interval is no margin: triggers and cards are not that steady. Our choice. */
const LEAST_SPARE = 0.05;

/** Whether so many seconds of an interval are a margin. */
export function isMargin(spareS: number, intervalS: number): boolean {
  return spareS >= LEAST_SPARE * intervalS;
}

/**
 * A caution where the tightest interval has hardly any time to spare.
 *
 * @param tightest its frame, from 0, and the seconds that its interval has left
 */
export function tightNotes(
  { frame, slackS }: { readonly frame: number; readonly slackS: number },
  frames: readonly PlanFrame[],
  intervalS: number,
): Note[] {
  if (isMargin(slackS, intervalS)) return [];
  const { at } = frames[frame];
  // Exact times rounded end inside the interval; a rest below zero is rounding too.
  return [{ level: 'caution', kind: 'tight-interval', frame, at, spareS: Math.max(0, slackS), intervalS }];
}
