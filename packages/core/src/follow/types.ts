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
  /** As marked; not asked for where a rig times it freely. */
  readonly shutter?: string;
  /** As marked. */
  readonly iso?: number;
  /** As marked. */
  readonly aperture?: string;
  /** Names from the shoot, in any order; none: the bare lens. */
  readonly filters?: readonly string[];
}

/** A reading; `sure` where somebody has looked twice: it is used however far from what was expected. */
export interface SureReading extends Reading {
  readonly sure?: boolean;
}

/**
 * One frame asked for, and what is known by then. The frame is `frame`, or the first to start at `atMs` or later,
 * or the same at the reading's time, or, with none of these, the one answered last.
 */
export interface FollowInput {
  /** Whole, from 0. */
  readonly frame?: number;
  /** UTC epoch milliseconds. */
  readonly atMs?: number;
  readonly reading?: SureReading;
  /** What the camera stands at, where it is not what the last answer said. */
  readonly setting?: ReportedSetting;
  /** A cue, by number, that stands on the camera from this frame on: one told ahead, or one that came late. */
  readonly done?: number;
  /** A cue, by number, that was told and has not been done. */
  readonly missed?: number;
}

/** One cue to come, or due. The number stays with a cue only until it is due: plans for later change. */
export interface FollowCue {
  /** From 1, counted through the evening. */
  readonly cue: number;
  readonly frame: number;
  /** RFC 3339. */
  readonly at: string;
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
  /** For a person. */
  readonly text: string;
}

/** Stops off metered level, and so on, as in a plan's frame. */
export interface FollowSetting extends Setting {
  readonly settingEv100: number;
}

export interface FollowAnswer {
  readonly frame: number;
  /** Start of the frame, RFC 3339. */
  readonly at: string;
  /** For this frame. */
  readonly setting: FollowSetting;
  /** Due now: what brings the camera to `setting`. */
  readonly cue?: FollowCue;
  /** After this frame, in order. */
  readonly cuesAhead: readonly FollowCue[];
  /** Told ahead, on frames since passed over: taken as done. */
  readonly cuesTaken: readonly FollowCue[];
  /** By which the light is brighter than the plan's forecast; negative: darker. */
  readonly offsetEv: number;
  /** Corrected. */
  readonly sceneEv100: number;
  /** Of the scene, 90 %. */
  readonly band: { readonly lowEv100: number; readonly highEv100: number };
  /** Corrected. */
  readonly targetEv100: number;
  /** settingEv100 - targetEv100, as far as is known. */
  readonly errorEv: number;
  /** A hand on the lens may spoil it. */
  readonly affected: boolean;
  readonly warnings: readonly FollowWarning[];
}
