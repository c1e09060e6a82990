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

export interface Heard {
  readonly camera: CameraState;
  readonly warnings: readonly FollowWarning[];
}

/**
 * @param at the frame now answered for, and the one that the line names: when a cue was done
 * @param told cues told ahead, in order, the first of them the next
 * @param otherwise what the camera would stand at if nothing had been said of it
 */
export function hear(
  evening: Evening,
  camera: CameraState,
  input: FollowInput,
  { frame, asked }: Pick<Moment, 'frame' | 'asked'>,
  told: readonly RampCue[],
  otherwise: State,
): Heard {
  const warnings: FollowWarning[] = [];
  let heard = camera;
  if (input.done !== undefined) heard = hearDone(input.done);
  if (input.missed !== undefined) heard = hearMissed(input.missed);
  if (input.setting !== undefined) heard = hearSetting(input.setting);
  return { camera: heard, warnings };

  function warn(said: FollowWarningFacts): void {
    warnings.push(warningOf(said));
  }

  function hearDone(cue: number): CameraState {
    const { lastCue, cueCount } = heard;
    const next = told[0];
    if (cue === cueCount + 1 && next !== undefined) return withCue(evening, heard, { ...next, frame: asked });
    if (lastCue === undefined || cue !== lastCue.cue) {
      warn({ kind: 'cue-unknown', cue, reason: 'neither-last-nor-next' });
      return heard;
    }
    if (asked <= lastCue.frame) return heard;
    warn({ kind: 'cue-late', cue, lateFrames: asked - lastCue.frame, frame: asked });
    return withCueMovedTo(evening, heard, lastCue, asked);
  }

  function hearMissed(cue: number): CameraState {
    const { lastCue } = heard;
    if (lastCue === undefined || cue !== lastCue.cue) {
      warn({ kind: 'cue-unknown', cue, reason: 'not-the-last' });
      return heard;
    }
    warn({ kind: 'cue-missed', cue, sinceFrame: lastCue.frame });
    return withoutLastCue(heard, lastCue);
  }

  function hearSetting(setting: NonNullable<FollowInput['setting']>): CameraState {
    const before = heard.present ?? otherwise;
    const { state, outside, unknown } = reportedState(evening, before, setting);
    if (unknown.length > 0) {
      warn({ kind: 'setting-unknown', unknown });
      return heard;
    }
    if (outside.length > 0) warn({ kind: 'outside-kit', outside });
    if (heard.fixed && sameState(state, before)) return heard;
    const { lastCue } = heard;
    if (lastCue !== undefined && sameState(state, lastCue.before)) {
      warn({ kind: 'cue-missed', cue: lastCue.cue });
      return withoutLastCue(heard, lastCue);
    }
    return standingAt(heard, state, frame);
  }
}
