// What people and rigs report of the camera: another setting, a cue done early or late, a cue missed.

import type { State } from '../ramp/moves.js';
import type { RampCue } from '../ramp/way.js';
import {
  type CameraState,
  lastCueOf,
  standingAt,
  withCue,
  withCueMovedTo,
  withoutLastCue,
} from './camera.js';
import { warningOf } from './english.js';
import { type Evening, frameStartMs, timeText } from './evening.js';
import { withoutCue } from './missed.js';
import type { Moment } from './moment.js';
import { reportedState, sameState } from './setting.js';
import type { FollowInput } from './types.js';
import type { FollowWarning, FollowWarningFacts } from './warning.js';

/** Clocks are read to the minute. */
const NEAR_MS = 60_000;
const YEAR_MS = 366 * 86_400_000;

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
  warnRefused(standing.refused);
  return { camera: standing, warnings };

  function warn(said: FollowWarningFacts): void {
    warnings.push(warningOf(said, evening.plan.clocksBack));
  }

  /** Once is a slip; twice asks what to do. */
  function warnRefused(refused: CameraState['refused']): void {
    if (refused === undefined || refused.times < 2 || refused.times === camera.refused?.times) return;
    const { names } = evening.kit.stacks[refused.stack]!;
    const standingNames = evening.kit.stacks[standing.present?.stack ?? otherwise.stack]!.names;
    warn({ kind: 'filter-refused', times: refused.times, filters: names, standing: standingNames });
  }

  function applyDone(cue: number): CameraState {
    const lastCue = lastCueOf(standing);
    const { cueCount } = standing;
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

  function applyMissed(missed: NonNullable<FollowInput['missed']>): CameraState {
    const index = doneIndex(missed);
    const cue = standing.done[index];
    if (cue === undefined) {
      warn(noCue(missed));
      return standing;
    }
    const { cue: number, frame: sinceFrame } = cue;
    if (index === standing.done.length - 1) {
      warn({ kind: 'cue-missed', cue: number, sinceFrame });
      return withoutLastCue(standing, cue);
    }
    const { camera, settledBy } = withoutCue(standing, index, evening.live.bulb !== undefined, frame);
    const until = settledBy === undefined ? {} : { untilFrame: settledBy.frame };
    warn({ kind: 'cue-missed', cue: number, sinceFrame, ...until });
    return camera;
  }

  function noCue(missed: NonNullable<FollowInput['missed']>): FollowWarningFacts {
    if (typeof missed === 'number') return { kind: 'cue-unknown', cue: missed, reason: 'not-told' };
    const { atMs } = missed;
    const ofThisYear = Math.abs(atMs - evening.startMs) < YEAR_MS;
    return ofThisYear
      ? { kind: 'cue-unknown', at: timeText(evening, atMs), reason: 'none-then' }
      : { kind: 'time-unknown', what: 'time', given: String(atMs) };
  }

  /** Of a cue by its number, or the nearest to a time, where one is near. */
  function doneIndex(missed: NonNullable<FollowInput['missed']>): number {
    const { done } = standing;
    if (typeof missed === 'number') return done.findIndex(({ cue }) => cue === missed);
    const offMs = done.map(({ frame }) => Math.abs(frameStartMs(evening, frame) - missed.atMs));
    const least = Math.min(...offMs);
    return least <= NEAR_MS ? offMs.lastIndexOf(least) : -1;
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
    const lastCue = lastCueOf(standing);
    if (lastCue !== undefined && sameState(state, lastCue.before)) {
      warn({ kind: 'cue-missed', cue: lastCue.cue });
      return withoutLastCue(standing, lastCue);
    }
    return standingAt(standing, state, frame);
  }
}
