// What goes into following an evening and what comes out.

import type { EvBand } from '../light/band.js';
import type { Reading } from '../light/reading.js';
import type { PlanChange } from '../plan/types.js';
import type { Setting } from '../shoot/kit.js';
import type { FollowWarning } from './warning.js';

/** How an evening is followed. */
export interface FollowOptions {
  /**
   * How far ahead cues are planned, seconds, > 0; default 1200. With a freely timed shutter, where filter changes are limited,
   * it is all that is left.
   */
  readonly aheadS?: number | undefined;
  /**
   * By how much one reading differs from the next under the same light, standard deviation in stops, > 0;
   * default 0.07. A meter that trembles by more is smoothed over longer, and a reading must jump farther to be doubted.
   */
  readonly meterEv?: number | undefined;
}

/** The same, none left out. */
export type FollowOptionsFull = { readonly [Key in keyof FollowOptions]-?: number };

/** What the dials and filter rims say, as far as it is reported; what is left out is as it was. */
export interface ReportedSetting {
  /** As marked; not asked for where a rig times it freely. */
  readonly shutter?: string | undefined;
  /** As marked. */
  readonly iso?: number | undefined;
  /** As marked. */
  readonly aperture?: string | undefined;
  /** Names from the shoot, in any order; none: the bare lens. */
  readonly filters?: readonly string[] | undefined;
}

/** What the kit is from now on; what is left out is as it was. The interval stays. */
export interface KitReport {
  /** Times. */
  readonly shutter?:
    | {
        /** As marked. */
        readonly shortest?: string | undefined;
        /** As marked. */
        readonly longest?: string | undefined;
      }
    | undefined;
  /** Speeds. */
  readonly iso?:
    | {
        /** As marked. */
        readonly lowest?: number | undefined;
        /** As marked. */
        readonly highest?: number | undefined;
      }
    | undefined;
  /** Names of all filters at hand, out of the shoot's: those that are left out are lost, those that were lost are found. */
  readonly filters?: readonly string[] | undefined;
  /** Most filter changes from now on, whole, >= 0. */
  readonly maxFilterChanges?: number | undefined;
}

/** A reading; `sure` where somebody has looked twice: it is used however far from what was expected. */
export interface SureReading extends Reading {
  /** Whether somebody has looked twice; default not. */
  readonly sure?: boolean | undefined;
}

/** A reading that tells one side only: a frame that came out white, or black. {@link readingOfFrame} makes them. */
export interface BoundReading extends SureReading {
  /**
   * The scene is as bright as `ev100` at least, or at most: it says nothing where that is expected anyway, and is a reading of
   * `ev100` where it is not. Absent: a reading like any other.
   */
  readonly bound?: 'atLeast' | 'atMost' | undefined;
}

/**
 * One frame asked for, and what is known by then. The frame is `frame`, or the first to start at `atMs` or later,
 * or the same at the reading's time, or, with none of these, the one answered last.
 */
export interface FollowInput {
  /** Whole, from 0. */
  readonly frame?: number | undefined;
  /** UTC epoch milliseconds. */
  readonly atMs?: number | undefined;
  /** Metered since the last one; `null`: the meter failed. */
  readonly reading?: BoundReading | null | undefined;
  /** The time is meant as it says, however far from that of the last answer. */
  readonly jump?: boolean | undefined;
  /** What the camera stands at, where it is not what the last answer said. */
  readonly setting?: ReportedSetting | undefined;
  /** Name of a filter that is gone, whether it was on the lens or not: it is not on it now. */
  readonly lost?: string | undefined;
  /** What the kit is from now on. */
  readonly kit?: KitReport | undefined;
  /** A cue, by number, that stands on the camera from this frame on: one told ahead, or one that came late. */
  readonly done?: number | undefined;
  /** A cue that was told and has not been done, by its number, or by when it was due to within a minute. */
  readonly missed?:
    | number
    | {
        /** UTC epoch milliseconds. */
        readonly atMs: number;
      }
    | undefined;
}

/** One cue to come, or due. The number stays with a cue only until it is due: plans for later change. */
export interface FollowCue {
  /** From 1, counted through the evening. */
  readonly cue: number;
  /** First frame with the new setting, from 0. */
  readonly frame: number;
  /** Its start, RFC 3339 with the place's offset. */
  readonly at: string;
  /** One or more, in the order hands work: filter, shutter, ISO, aperture. */
  readonly changes: readonly PlanChange[];
  /**
   * Where the camera stands farther off than one cue may move it, because cues were missed, something else was set, or a rig
   * has not asked for a while: what to set now, whole. Several controls at once and by more than a step; absent in any other cue.
   */
  readonly setNow?: FollowSetting | undefined;
}

/** Stops off metered level, and so on, as in a plan's frame. */
export interface FollowSetting extends Setting {
  /** What it renders at metered level, filters counted, EV at ISO 100. */
  readonly settingEv100: number;
}

/** One frame of a followed evening: what to stand at, what comes, what is thought of the light. */
export interface FollowAnswer extends EvBand {
  /** From 0. */
  readonly frame: number;
  /** Start of the frame, RFC 3339 with the place's offset. */
  readonly at: string;
  /** For this frame. */
  readonly setting: FollowSetting;
  /** Due now: what brings the camera to `setting`. */
  readonly cue?: FollowCue | undefined;
  /** After this frame, in order. */
  readonly cuesAhead: readonly FollowCue[];
  /** Told ahead, on frames since passed over: taken as done. */
  readonly cuesTaken: readonly FollowCue[];
  /** Stops by which the light is brighter than the plan's forecast; negative: darker. */
  readonly offsetEv: number;
  /** The light as corrected, EV at ISO 100. */
  readonly sceneEv100: number;
  /** The target as corrected, EV at ISO 100. */
  readonly targetEv100: number;
  /** settingEv100 - targetEv100, stops, as far as is known. */
  readonly errorEv: number;
  /** A hand on the lens may spoil it. */
  readonly affected: boolean;
  /** The last reading is in doubt; another one, now, tells whether it is true. */
  readonly readAgain: boolean;
  /** None or more. */
  readonly warnings: readonly FollowWarning[];
}
