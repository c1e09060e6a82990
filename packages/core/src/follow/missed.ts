// A cue that was not done, found out after later ones: what it should have turned stands as before it, unless a later cue
// turned the same control, which sets it to a mark whatever it stood at.

import type { State } from '../ramp/moves.js';
import type { CameraState, DoneCue } from './camera.js';

/** A state control by control, the shutter counted from any step. */
interface Marks {
  readonly stack: number;
  readonly shutter: number;
  readonly iso: number;
  readonly aperture: number;
}

type Control = keyof Marks;

const CONTROLS: readonly Control[] = ['stack', 'shutter', 'iso', 'aperture'];

/** The camera as if a cue had not been done, and from which later cue on it is as if it had, where there is one. */
export interface Without {
  readonly camera: CameraState;
  readonly settledBy: DoneCue | undefined;
}

/**
 * @param index of the cue among those done, not the last
 * @param bulb whether the shutter is timed freely, whatever stood before
 * @param frame the one now answered for: hands may turn at once what they left
 */
export function withoutCue(camera: CameraState, index: number, bulb: boolean, frame: number): Without {
  const { done } = camera;
  const missed = done[index]!;
  const present = camera.present!;
  const after = (at: number) => done[at + 1]?.before ?? present;
  const was = marksOf(missed.before);
  let left = controlsOf(missed.before, after(index)).filter((each) => each !== 'shutter' || !bulb);
  let settledBy: DoneCue | undefined;
  const later = done.slice(index + 1).map((cue, i) => {
    const before = withMarks(cue.before, was, left);
    const turned = controlsOf(cue.before, after(index + 1 + i));
    const still = left.filter((each) => !turned.includes(each));
    if (still.length === 0 && left.length > 0) settledBy = cue;
    left = still;
    return { ...cue, before };
  });
  const filterChanges = camera.filterChanges - (missed.filter ? 1 : 0);
  const kept = { ...camera, filterChanges, done: [...done.slice(0, index), ...later] };
  if (left.length === 0) return { camera: kept, settledBy };
  const standing = withMarks(present, was, left);
  const behind = { stack: present.stack };
  const freeFrom = Math.min(camera.freeFrom, frame);
  return { camera: { ...kept, present: standing, behind, freeFrom }, settledBy };
}

function marksOf({ stack, aperture, level, iso }: State): Marks {
  return { stack, shutter: level - aperture + iso, iso, aperture };
}

function controlsOf(from: State, to: State): Control[] {
  const [a, b] = [marksOf(from), marksOf(to)];
  return CONTROLS.filter((each) => a[each] !== b[each]);
}

function withMarks(state: State, marks: Marks, controls: readonly Control[]): State {
  const set = { ...marksOf(state) };
  for (const each of controls) set[each] = marks[each];
  const { stack, shutter, iso, aperture } = set;
  return { stack, aperture, level: aperture + shutter - iso, iso };
}
