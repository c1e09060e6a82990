// What people and rigs report of the camera: another setting, a cue done early or late, a cue missed.

import type { State } from '../ramp/moves.js';
import type { RampCue } from '../ramp/way.js';
import { type CameraState, standingAt, withCue, withCueMovedTo, withoutLastCue } from './camera.js';
import type { Evening } from './evening.js';
import type { Moment } from './moment.js';
import { reportedState, sameState } from './setting.js';
import type { FollowInput, FollowWarning } from './types.js';

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

  function unknown(cue: number, why: string): CameraState {
    warnings.push({ kind: 'cue-unknown', text: `Cue ${cue} ${why}: nothing is changed.` });
    return heard;
  }

  function hearDone(cue: number): CameraState {
    const { lastCue, cueCount } = heard;
    const next = told[0];
    if (cue === cueCount + 1 && next !== undefined) return withCue(evening, heard, { ...next, frame: asked });
    if (lastCue === undefined || cue !== lastCue.cue) return unknown(cue, 'is neither the last nor the next');
    if (asked <= lastCue.frame) return heard;
    const late = asked - lastCue.frame;
    const text = `Cue ${cue} came ${late} ${late === 1 ? 'frame' : 'frames'} late, at frame ${asked + 1}.`;
    warnings.push({ kind: 'cue-late', text });
    return withCueMovedTo(evening, heard, lastCue, asked);
  }

  function hearMissed(cue: number): CameraState {
    const { lastCue } = heard;
    if (lastCue === undefined || cue !== lastCue.cue) return unknown(cue, 'is not the last that was told');
    const text = `Cue ${cue} has been missed since frame ${lastCue.frame + 1}: planned again from the setting before it.`;
    warnings.push({ kind: 'cue-missed', text });
    return withoutLastCue(heard, lastCue);
  }

  function hearSetting(setting: NonNullable<FollowInput['setting']>): CameraState {
    const before = heard.present ?? otherwise;
    const { state, outside, unknown } = reportedState(evening, before, setting);
    if (unknown !== undefined) {
      warnings.push({ kind: 'setting-unknown', text: `${unknown}: nothing of the setting is used.` });
      return heard;
    }
    if (outside !== undefined) {
      warnings.push({ kind: 'outside-kit', text: `${outside} cannot be used here: set what is answered.` });
    }
    if (heard.fixed && sameState(state, before)) return heard;
    const { lastCue } = heard;
    if (lastCue !== undefined && sameState(state, lastCue.before)) {
      warnings.push({
        kind: 'cue-missed',
        text: `Cue ${lastCue.cue} has not been done: planned again without it.`,
      });
      return withoutLastCue(heard, lastCue);
    }
    return standingAt(heard, state, frame);
  }
}
