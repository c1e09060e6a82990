// What the library answers: a plan, whole, so that a rig's software needs no arithmetic of its own, and a light
// table. These are the formats evenfall-plan/1 and evenfall-light/1 of docs/formats.md.

import type { MoveFrame, MovePlan } from './move.js';
import type { Shoot } from './shoot.js';
import type { SkyEvent } from './sun.js';

/**
 * One frame of a plan: when, what light, what the camera stands at. All exposures in exact values. Where the shoot
 * has moves, also where they are and what the interval holds.
 */
export interface PlanFrame extends Partial<MoveFrame> {
  /** From 0. */
  readonly frame: number;
  /** RFC 3339 with the place's offset. */
  readonly at: string;
  readonly sunAltitudeDeg: number;
  readonly sceneEv100: number;
  /** 5 % of evenings are darker. */
  readonly lowEv100: number;
  /** 5 % are brighter. */
  readonly highEv100: number;
  /** sceneEv100 less the look's offset. */
  readonly targetEv100: number;
  /** What the dial says. */
  readonly shutter: string;
  /** Exact. */
  readonly shutterS: number;
  /** What the dial says. */
  readonly iso: number;
  readonly isoExact: number;
  /** What the dial says, "5.6". */
  readonly aperture: string;
  /** Exact. */
  readonly fNumber: number;
  readonly filters: readonly string[];
  /** Exact. */
  readonly filterStops: number;
  readonly settingEv100: number;
  /** settingEv100 - targetEv100, positive is darker than wanted. */
  readonly errorEv: number;
  /** A hand on the lens may spoil it. */
  readonly affected: boolean;
}

export type Control = 'shutter' | 'iso' | 'aperture' | 'filter';

/** One control's part in a cue; labels as on the dial; filter is names joined by " + ", or "none". */
export interface PlanChange {
  readonly control: Control;
  readonly from: string;
  readonly to: string;
}

/** One moment at which one or more controls change; the new setting holds from `frame` on. */
export interface PlanCue {
  readonly frame: number;
  readonly at: string;
  readonly sunAltitudeDeg: number;
  readonly changes: readonly PlanChange[];
}

export interface PlanSummary {
  readonly frameCount: number;
  /** By when everything should stand ready. */
  readonly setUpAt: string;
  readonly startAt: string;
  /** Start of the last frame. */
  readonly endAt: string;
  readonly clipS: number;
  readonly cardNeededGB?: number;
  readonly cardFits?: boolean;
  readonly batteryFits?: boolean;
  readonly sceneFromEv100: number;
  readonly sceneToEv100: number;
  /** Target's range over the span. */
  readonly rampStops: number;
  /** The whole scene may be so many stops darker than forecast, >= 0 … */
  readonly reserveDarkEv: number;
  /** … or brighter, before a frame has no setting within tolerance. */
  readonly reserveBrightEv: number;
  /** 0 to 1: how often an evening's light stays within that reserve. */
  readonly eveningsHeldShare: number;
  /** Largest |errorEv| of a frame not affected. */
  readonly worstErrorEv: number;
  /** Over frames not affected. */
  readonly rmsErrorEv: number;
  readonly cueCount: number;
  /** The cost of docs/ramp.md. */
  readonly objective: number;
}

/** An event of sun or moon with its clock time. */
export interface PlanEvent {
  readonly name: SkyEvent;
  readonly at: string;
  readonly sunAltitudeDeg: number;
}

export interface PlanNote {
  readonly level: 'info' | 'caution' | 'warning';
  readonly text: string;
}

/** The moves of a plan; their frames' part stands in the frames. */
export type PlanMove = Pick<MovePlan, 'travels' | 'gap' | 'tightest' | 'fastest' | 'findings' | 'lines'>;

export interface PlanMade {
  readonly format: 'evenfall-plan/1';
  readonly shoot: Shoot;
  readonly summary: PlanSummary;
  readonly events: readonly PlanEvent[];
  readonly frames: readonly PlanFrame[];
  readonly cues: readonly PlanCue[];
  /** Where the shoot has moves. */
  readonly move?: PlanMove;
  readonly notes: readonly PlanNote[];
}

/** Whole values of those keys of a shoot that a remedy changes. */
export type ShootChange = Partial<
  Pick<Shoot, 'span' | 'intervalS' | 'camera' | 'filters' | 'look' | 'limits' | 'moves'>
>;

/** One change that would make an impossible ramp possible, with its least amount. */
export interface Remedy {
  /** The kind of change. */
  readonly change: string;
  /** For a person. */
  readonly text: string;
  /** `{ ...shoot, ...apply }` has a plan. */
  readonly apply: ShootChange;
}

export interface PlanInfeasible {
  readonly format: 'evenfall-plan/1';
  readonly shoot: Shoot;
  readonly infeasible: {
    readonly reason: 'too-dark' | 'too-bright' | 'too-fast' | 'no-time' | 'no-span';
    readonly frame?: number;
    readonly at?: string;
    readonly shortfallEv?: number;
    /** For a person. */
    readonly text: string;
    readonly remedies: readonly Remedy[];
  };
}

export type Plan = PlanMade | PlanInfeasible;

/** One row of the light table, `evenfall-light/1`. */
export interface LightRow {
  readonly at: string;
  readonly sunAltitudeDeg: number;
  readonly sunAzimuthDeg: number;
  readonly moonAltitudeDeg: number;
  readonly moonAzimuthDeg: number;
  readonly moonLitFraction: number;
  readonly illuminanceLx: number;
  readonly moonIlluminanceLx: number;
  readonly skyLuminanceCdM2: number;
  readonly sceneEv100: number;
  readonly lowEv100: number;
  readonly highEv100: number;
  readonly slopeEvPerMin: number;
}

export interface LightTable {
  readonly format: 'evenfall-light/1';
  readonly events: readonly PlanEvent[];
  readonly missing: readonly { readonly name: SkyEvent; readonly why: string }[];
  readonly rows: readonly LightRow[];
}
