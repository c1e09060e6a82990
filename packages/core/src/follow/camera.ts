// What stands on the camera, and the cues that brought it there.

import type { State } from '../ramp/moves.js';
import type { RampCue } from '../ramp/way.js';
import type { Evening } from './evening.js';

/** A cue that is taken as done. */
export interface DoneCue {
  readonly cue: number; // its number
  readonly frame: number; // first frame under the new setting
  readonly before: State;
  readonly filter: boolean;
  readonly freeBefore: number; // `freeFrom` before it
}

export interface CameraState {
  /** Undefined until the first answer; after it, until frame 1, what was last proposed to begin with. */
  readonly present: State | undefined;
  /** Whether `present` can no longer be chosen: it was reported, or frames have been taken with it. */
  readonly fixed: boolean;
  /**
   * Where hands have left it off what was told, cues missed or another setting reported and no cue done since: the filters
   * that were told last.
   */
  readonly behind: { readonly stack: number } | undefined;
  /** Filters that were told and refused, until they are on the lens, and how many times. */
  readonly refused: { readonly stack: number; readonly times: number } | undefined;
  readonly freeFrom: number; // first frame at which the next cue may come
  readonly affectedUntil: number; // frames before it and from the last filter change on are affected
  readonly cueCount: number;
  readonly filterChanges: number;
  /** The last of them, in order, as far back as one may be reported missed. */
  readonly done: readonly DoneCue[];
}

export const BLANK: CameraState = {
  present: undefined,
  fixed: false,
  behind: undefined,
  refused: undefined,
  freeFrom: 0,
  affectedUntil: 0,
  cueCount: 0,
  filterChanges: 0,
  done: [],
};

/** Our choice: about half an hour of a person's evening. */
const MOST_DONE = 24;

/** The cue that was done last; undefined where something else has been set since. */
export function lastCueOf({ done }: CameraState): DoneCue | undefined {
  return done[done.length - 1];
}

function withDone({ done }: CameraState, cue: DoneCue): readonly DoneCue[] {
  return [...done, cue].slice(-MOST_DONE);
}

/** The camera after a cue; its setting holds from the cue's frame on. */
export function withCue({ live }: Evening, camera: CameraState, { frame, to, filter }: RampCue): CameraState {
  const { spacing, affectedFrames } = live.lattice;
  const before = camera.present ?? to;
  return {
    present: to,
    fixed: true,
    behind: undefined,
    refused: camera.present?.stack === camera.refused?.stack ? undefined : camera.refused,
    freeFrom: frame + (filter ? Math.max(spacing, affectedFrames + 1) : spacing),
    affectedUntil: filter ? frame + affectedFrames : camera.affectedUntil,
    cueCount: camera.cueCount + 1,
    filterChanges: camera.filterChanges + (filter ? 1 : 0),
    done: withDone(camera, {
      cue: camera.cueCount + 1,
      frame,
      before,
      filter,
      freeBefore: camera.freeFrom,
    }),
  };
}

/** The camera after several cues that are done as one, at a frame; `then`: after them. */
export function movedAtOnce(
  { live }: Evening,
  camera: CameraState,
  then: CameraState,
  frame: number,
): CameraState {
  const before = camera.present ?? then.present!;
  const filter = before.stack !== then.present!.stack;
  const { cueCount, freeFrom: freeBefore } = camera;
  return {
    ...then,
    affectedUntil: filter ? frame + live.lattice.affectedFrames : camera.affectedUntil,
    cueCount: cueCount + 1,
    done: withDone(camera, { cue: cueCount + 1, frame, before, filter, freeBefore }),
  };
}

/** The camera as if the last cue had not been done; the next may come at once. */
export function withoutLastCue(camera: CameraState, lastCue: DoneCue): CameraState {
  return {
    ...camera,
    present: lastCue.before,
    behind: { stack: (camera.present ?? lastCue.before).stack },
    refused: refusedAfter(camera, lastCue.before.stack),
    freeFrom: lastCue.freeBefore,
    affectedUntil: lastCue.filter ? 0 : camera.affectedUntil,
    cueCount: camera.cueCount - 1,
    filterChanges: camera.filterChanges - (lastCue.filter ? 1 : 0),
    done: camera.done.slice(0, -1),
  };
}

/** What has been refused where the last cue told of filters and these stand. */
function refusedAfter(camera: CameraState, stack: number): CameraState['refused'] {
  const { present, refused } = camera;
  if (present === undefined || !lastCueOf(camera)?.filter || present.stack === stack) return refused;
  return { stack: present.stack, times: present.stack === refused?.stack ? refused.times + 1 : 1 };
}

/** The camera with the last cue done at another frame than it was told for. */
export function withCueMovedTo(
  evening: Evening,
  camera: CameraState,
  lastCue: DoneCue,
  frame: number,
): CameraState {
  const { filter } = lastCue;
  const done = withCue(evening, withoutLastCue(camera, lastCue), {
    frame,
    to: camera.present ?? lastCue.before,
    filter,
  });
  return { ...done, refused: undefined };
}

/** The camera standing at something else than was thought; hands may turn it again at once. */
export function standingAt(camera: CameraState, present: State, frame: number): CameraState {
  const filter = camera.present !== undefined && camera.present.stack !== present.stack;
  return {
    ...camera,
    present,
    fixed: true,
    behind: { stack: present.stack },
    refused: refusedAfter(camera, present.stack),
    freeFrom: Math.min(camera.freeFrom, frame),
    filterChanges: camera.filterChanges + (filter ? 1 : 0),
    done: [],
  };
}

/** The camera with all its frames earlier by `frames`: the clock was set back. */
export function shifted(camera: CameraState, frames: number): CameraState {
  const { done, freeFrom, affectedUntil } = camera;
  return {
    ...camera,
    behind: camera.present && { stack: camera.present.stack },
    freeFrom: Math.max(0, freeFrom - frames),
    affectedUntil: Math.max(0, affectedUntil - frames),
    done: done.map((cue) => ({ ...cue, frame: Math.max(0, cue.frame - frames) })),
  };
}
