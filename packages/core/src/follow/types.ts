// What goes into following an evening and what comes out.

import type { Setting } from '../kit.js';
import type { Reading } from '../light/reading.js';
import type { PlanChange } from '../plan-format.js';

export interface FollowOptions {
  /** How far ahead cues are planned; default 1200. Where filter changes are limited it is all that is left. */
  readonly aheadS?: number;
  /** By how much one reading differs from the next under the same light, standard deviation in stops; default 0.07. */
  readonly meterEv?: number;
}

/** What the dials and filter rims say, as far as it is reported; what is left out is as it was. */
export interface ReportedSetting {
  readonly shutter?: string; // as marked; not asked for where a rig times it freely
  readonly iso?: number; // as marked
  readonly aperture?: string; // as marked
  readonly filters?: readonly string[]; // names from the shoot, in any order; none: the bare lens
}

/**
 * One frame asked for, and what is known by then. The frame is `frame`, or the first to start at `atMs` or later,
 * or the same at the reading's time, or, with none of these, the one answered last.
 */
export interface FollowInput {
  readonly frame?: number; // whole, from 0
  readonly atMs?: number; // UTC epoch milliseconds
  readonly reading?: Reading;
  /** What the camera stands at, where it is not what the last answer said. */
  readonly setting?: ReportedSetting;
  /** A cue, by number, that stands on the camera from this frame on: one told ahead, or one that came late. */
  readonly done?: number;
  /** A cue, by number, that was told and has not been done. */
  readonly missed?: number;
}

/** One cue to come, or due. The number stays with a cue only until it is due: plans for later change. */
export interface FollowCue {
  readonly cue: number; // from 1, counted through the evening
  readonly frame: number;
  readonly at: string; // RFC 3339
  readonly changes: readonly PlanChange[];
}

export type FollowWarningKind =
  | 'reading-doubted' // far from what was expected; not used unless it goes on
  | 'reading-believed' // it went on: the light has stepped
  | 'reading-impossible' // no sky gives it
  | 'reading-old' // older than one already used, or of a time to come
  | 'no-reading' // none for a while: the forecast is carried on
  | 'clock-back' // earlier than what was answered; not believed yet, or now believed
  | 'clock-ahead' // frames were passed over
  | 'joined-late' // the first frame asked for is not the first of the shoot
  | 'over' // after the last frame
  | 'cue-late'
  | 'cue-missed'
  | 'cue-unknown'
  | 'outside-kit' // the reported setting is not one the kit may stand at
  | 'out-of-reach'; // the light will leave what the kit can follow

export interface FollowWarning {
  readonly kind: FollowWarningKind;
  readonly text: string; // for a person
}

/** Stops off metered level, and so on, as in a plan's frame. */
export interface FollowSetting extends Setting {
  readonly settingEv100: number;
}

export interface FollowAnswer {
  readonly frame: number;
  readonly at: string; // start of the frame, RFC 3339
  readonly setting: FollowSetting; // for this frame
  readonly cue?: FollowCue; // due now: what brings the camera to `setting`
  readonly cuesAhead: readonly FollowCue[]; // after this frame, in order
  readonly cuesTaken: readonly FollowCue[]; // told ahead, on frames since passed over: taken as done
  readonly offsetEv: number; // by which the light is brighter than the plan's forecast; negative: darker
  readonly sceneEv100: number; // corrected
  readonly band: { readonly lowEv100: number; readonly highEv100: number }; // of the scene, 90 %
  readonly targetEv100: number; // corrected
  readonly errorEv: number; // settingEv100 - targetEv100, as far as is known
  readonly affected: boolean; // a hand on the lens may spoil it
  readonly warnings: readonly FollowWarning[];
}
