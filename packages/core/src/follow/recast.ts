// What stands on the camera, counted in another kit: its nearest setting, where a filter is gone or a mark not allowed any more.

import { type State, shutterOf } from '../ramp/moves.js';
import type { CameraState } from './camera.js';
import type { Evening } from './evening.js';
import { nearestState } from './setting.js';

/** A state of one kit in another. */
function recast(from: Evening, to: Evening, state: State): { state: State; outside: boolean } {
  const { lattice, bulb } = from.live;
  const { names } = from.kit.stacks[state.stack]!;
  return nearestState(to, {
    shutter: bulb === undefined ? shutterOf(lattice, state) : undefined,
    iso: lattice.isoMin + state.iso,
    aperture: lattice.apertureMin + state.aperture,
    filters: names,
  });
}

/**
 * The camera in another kit, and whether what stands on it has to be turned. What a lost filter leaves undone, or a limit,
 * is set at once.
 *
 * @param frame the one now answered for
 */
export function cameraRecast(
  from: Evening,
  to: Evening,
  camera: CameraState,
  frame: number,
): { readonly camera: CameraState; readonly outside: boolean } {
  const done = camera.done.map((cue) => ({ ...cue, before: recast(from, to, cue.before).state }));
  const kept = { ...camera, done, refused: undefined };
  if (camera.present === undefined) return { camera: { ...kept, behind: undefined }, outside: false };
  const { state, outside } = recast(from, to, camera.present);
  if (!outside) {
    const behind = camera.behind && { stack: state.stack };
    return { camera: { ...kept, present: state, behind }, outside };
  }
  const freeFrom = Math.min(camera.freeFrom, frame);
  return { camera: { ...kept, present: state, behind: { stack: state.stack }, freeFrom }, outside };
}
