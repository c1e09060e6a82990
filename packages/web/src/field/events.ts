// What happened in the field, as told by presses. The list is all that is kept: what the camera stands at and what is
// left to do follow from it, on a page that has just come back from the dead as well.

import { isGroup } from '../state/path.js';

interface Pressed {
  readonly seen: number; // frame under way when it was pressed, from 0
  readonly frame: number; // first frame that it counts for
}

/**
 * `ready`: what to begin with is on the camera. `done`: so is the next cue, or the whole setting where that is what
 * was asked for. `missed`: the next cue is not, and what is left is to be planned without it.
 */
interface CueEvent extends Pressed {
  readonly kind: 'ready' | 'done' | 'missed';
}

export interface ReadingEvent extends Pressed {
  readonly kind: 'reading';
  readonly atMs: number; // UTC epoch milliseconds
  readonly ev100: number;
  readonly sure?: boolean; // used however far it jumps
}

/** The kit is another one from now on. */
export interface KitEvent extends Pressed {
  readonly kind: 'kit';
  readonly filters: readonly string[]; // names of those at hand
  readonly highestIso: number; // as marked
}

export type FieldEvent = CueEvent | ReadingEvent | KitEvent;

/** The events among what was kept, which anybody may have written. */
export function readEvents(value: unknown): FieldEvent[] {
  return Array.isArray(value) ? value.filter(isEvent) : [];
}

function isEvent(value: unknown): value is FieldEvent {
  if (!isGroup(value) || !isFrame(value.seen) || !isFrame(value.frame)) return false;
  const { kind, atMs, ev100, sure, filters, highestIso } = value;
  if (kind === 'ready' || kind === 'done' || kind === 'missed') return true;
  if (kind === 'kit') {
    const areNames = Array.isArray(filters) && filters.every((name) => typeof name === 'string');
    return areNames && typeof highestIso === 'number' && highestIso > 0;
  }
  return (
    kind === 'reading' &&
    typeof atMs === 'number' &&
    Math.abs(atMs) < 8e15 &&
    typeof ev100 === 'number' &&
    Math.abs(ev100) <= 25 &&
    (sure === undefined || typeof sure === 'boolean')
  );
}

/** A frame's number, as anybody may have written it. */
export const isFrame = (value: unknown): value is number =>
  Number.isSafeInteger(value) && (value as number) >= 0;
