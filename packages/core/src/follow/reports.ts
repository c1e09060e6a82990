// What people and rigs report of the camera: another setting, a cue done early or late, a cue missed.

import type { State } from '../ramp/moves.js';
import type { RampCue } from '../ramp/way.js';
import { type CameraState, standingAt, withCue, withCueMovedTo, withoutLastCue } from './camera.js';
import { warningOf } from './english.js';
import type { Evening } from './evening.js';
import type { Moment } from './moment.js';
import { reportedState, sameState } from './setting.js';
import type { FollowInput } from './types.js';
import type { FollowWarning, FollowWarningFacts } from './warning.js';

export interface Reported {
  readonly camera: CameraState;
  readonly warnings: readonly FollowWarning[];
}

/**
 * @param at the frame now answered for, and the one that the line names: when a cue was done
 * @param told cues told ahead, in order, the first of them the next
 * @param otherwise what the camera would stand at if nothing had been said of it
 */
export function applyReports(
  evening: Evening,
  camera: CameraState,
  input: FollowInput,
  { frame, asked }: Pick<Moment, 'frame' | 'asked'>,
  told: readonly RampCue[],
  otherwise: State,
): Reported {
  const warnings: FollowWarning[] = [];
  let standing = camera;
  if (input.done !== undefined) standing = applyDone(input.done);
  if (input.missed !== undefined) standing = applyMissed(input.missed);
  if (input.setting !== undefined) standing = applySetting(input.setting);
  return { camera: standing, warnings };

  function warn(said: FollowWarningFacts): void {
    warnings.push(warningOf(said));
  }

  function applyDone(cue: number): CameraState {
    const { lastCue, cueCount } = standing;
    const next = told[0];
    if (cue === cueCount + 1 && next !== undefined)
      return withCue(evening, standing, { ...next, frame: asked });
    if (lastCue === undefined || cue !== lastCue.cue) {
      warn({ kind: 'cue-unknown', cue, reason: 'neither-last-nor-next' });
      return standing;
    }
    if (asked <= lastCue.frame) return standing;
    warn({ kind: 'cue-late', cue, lateFrames: asked - lastCue.frame, frame: asked });
    return withCueMovedTo(evening, standing, lastCue, asked);
  }

  function applyMissed(cue: number): CameraState {
    const { lastCue } = standing;
    if (lastCue === undefined || cue !== lastCue.cue) {
      warn({ kind: 'cue-unknown', cue, reason: 'not-the-last' });
      return standing;
    }
    warn({ kind: 'cue-missed', cue, sinceFrame: lastCue.frame });
    return withoutLastCue(standing, lastCue);
  }

  function applySetting(setting: NonNullable<FollowInput['setting']>): CameraState {
    const before = standing.present ?? otherwise;
    const { state, outside, unknown } = reportedState(evening, before, setting);
    if (unknown.length > 0) {
      warn({ kind: 'setting-unknown', unknown });
      return standing;
    }
    if (outside.length > 0) warn({ kind: 'outside-kit', outside });
    if (standing.fixed && sameState(state, before)) return standing;
    const { lastCue } = standing;
    if (lastCue !== undefined && sameState(state, lastCue.before)) {
      warn({ kind: 'cue-missed', cue: lastCue.cue });
      return withoutLastCue(standing, lastCue);
    }
    return standingAt(standing, state, frame);
  }
}
