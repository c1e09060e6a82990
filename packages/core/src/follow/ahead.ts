// The cues ahead: the plan's own while it stands, else the ramp planned again from the setting on the camera.

import { type LiveRequest, planAhead } from '../ramp/live/live.js';
import { exposureEv } from '../ramp/moves.js';
import type { RampCue, Way } from '../ramp/way.js';
import type { CameraState } from './camera.js';
import { type Evening, frameStartMs } from './evening.js';
import { filtersAhead } from './filters-ahead.js';
import { sameState } from './setting.js';
import { expectedOffsetEv, type Trust } from './trust.js';

/** Corrected targets from a frame on, as far as is looked ahead. */
export function targetsAhead(evening: Evening, trust: Trust, frame: number): Float64Array {
  const { plan, aheadFrames, frameCount } = evening;
  const count = Math.min(aheadFrames, frameCount - frame);
  return Float64Array.from({ length: count }, (_, i) => {
    const { targetEv100, sceneEv100 } = plan.frames[frame + i]!;
    return targetEv100 + expectedOffsetEv(trust, frameStartMs(evening, frame + i), sceneEv100);
  });
}

/** What stands before the frame, or what to begin with, and the cues from the frame on. */
export function cuesAhead(
  evening: Evening,
  trust: Trust,
  camera: CameraState,
  frame: number,
  target: Float64Array,
): Way {
  const { live, frameCount } = evening;
  const { present, freeFrom } = camera;
  const mayStand = trust.lastUsedMs === undefined && evening.kitNow === undefined;
  const asPlanned = mayStand ? planItself(evening, camera, frame) : undefined;
  if (asPlanned !== undefined) return asPlanned;
  const { changesLeft, stacks } = filtersAhead(evening, camera, frame, target);
  const { start, cues } = planAhead(live, {
    target,
    framesLeft: frameCount - frame,
    present,
    waitFrames: Math.max(0, freeFrom - frame),
    catchUp: freeFrom > frame ? undefined : catchUpOf(evening, camera, target[0]!),
    filterChangesLeft: changesLeft,
    stacks,
  });
  return { start, cues: cues.map((cue) => ({ ...cue, frame: frame + cue.frame })) };
}

/**
 * What hands owe, where they have left a filter undone, or the camera farther off than one cue may move it. Light that jumps
 * by itself is followed step by step, as the plan's limits say; a person who comes back is told once what to set.
 */
function catchUpOf(
  { live, shoot }: Evening,
  { present, behind }: CameraState,
  targetEv100: number,
): LiveRequest['catchUp'] {
  if (behind === undefined || present === undefined || live.bulb !== undefined) return undefined;
  const offEv = Math.abs(exposureEv(live.lattice, present) - targetEv100);
  const far = offEv > shoot.limits.largestStepEv + 1e-9;
  return far || behind.stack !== present.stack ? behind : undefined;
}

/** The plan's own setting and cues, where the camera stands as the plan has it and its next cue may come in time. */
function planItself({ planned, aheadFrames }: Evening, { present, freeFrom }: CameraState, frame: number) {
  const start = present ?? planned[0]!;
  const from = [frame, frame + 1].find((each) => sameState(start, planned[Math.max(0, each - 1)]!));
  if (from === undefined) return undefined;
  const cues: RampCue[] = [];
  for (let at = Math.max(1, from); at < Math.min(planned.length, frame + aheadFrames); at++) {
    const [before, to] = [planned[at - 1]!, planned[at]!];
    if (!sameState(before, to)) cues.push({ frame: at, to, filter: before.stack !== to.stack });
  }
  return cues[0] !== undefined && cues[0].frame < freeFrom ? undefined : { start, cues };
}
