// What happened in the field, as told by presses. The list is all that is kept: what the camera stands at and what is
// left to do follow from it, on a page that has just come back from the dead as well.

import { isGroup } from '../state/path.js';

interface Pressed {
  readonly seen: number; // frame under way when it was pressed, from 0
  readonly frame: number; // first frame that it counts for
}

/** `done`: the next cue is on the camera. `missed`: it is not, and what is left is to be planned without it. */
interface CueEvent extends Pressed {
  readonly kind: 'done' | 'missed';
}

/** All cues told up to `seen` are on the camera, though nobody said so in time. */
interface CaughtUpEvent extends Pressed {
  readonly kind: 'caught-up';
}

export interface ReadingEvent extends Pressed {
  readonly kind: 'reading';
  readonly atMs: number; // UTC epoch milliseconds
  readonly ev100: number;
  readonly sure?: boolean; // used however far it jumps
}

export type FieldEvent = CueEvent | CaughtUpEvent | ReadingEvent;

/** The events among what was kept, which anybody may have written. */
export function readEvents(value: unknown): FieldEvent[] {
  return Array.isArray(value) ? value.filter(isEvent) : [];
}

function isEvent(value: unknown): value is FieldEvent {
  if (!isGroup(value) || !isFrame(value.seen) || !isFrame(value.frame)) return false;
  const { kind, atMs, ev100, sure } = value;
  if (kind === 'done' || kind === 'missed' || kind === 'caught-up') return true;
  return (
    kind === 'reading' &&
    typeof atMs === 'number' &&
    Math.abs(atMs) < 8e15 &&
    typeof ev100 === 'number' &&
    Math.abs(ev100) <= 25 &&
    (sure === undefined || typeof sure === 'boolean')
  );
}

const isFrame = (value: unknown) => Number.isSafeInteger(value) && (value as number) >= 0;
