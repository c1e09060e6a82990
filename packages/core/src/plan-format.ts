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
  readonly frame: number; // from 0
  readonly at: string; // RFC 3339 with the place's offset
  readonly sunAltitudeDeg: number;
  readonly sceneEv100: number;
  readonly lowEv100: number; // 5 % of evenings are darker
  readonly highEv100: number; // 5 % are brighter
  readonly targetEv100: number; // sceneEv100 less the look's offset
  readonly shutter: string; // what the dial says
  readonly shutterS: number; // exact
  readonly iso: number; // what the dial says
  readonly isoExact: number;
  readonly aperture: string; // what the dial says, "5.6"
  readonly fNumber: number; // exact
  readonly filters: readonly string[];
  readonly filterStops: number; // exact
  readonly settingEv100: number;
  readonly errorEv: number; // settingEv100 - targetEv100, positive is darker than wanted
  readonly affected: boolean; // a hand on the lens may spoil it
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
  readonly setUpAt: string; // by when everything should stand ready
  readonly startAt: string;
  readonly endAt: string; // start of the last frame
  readonly clipS: number;
  readonly cardNeededGB?: number;
  readonly cardFits?: boolean;
  readonly batteryFits?: boolean;
  readonly sceneFromEv100: number;
  readonly sceneToEv100: number;
  readonly rampStops: number; // target's range over the span
  readonly reserveDarkEv: number; // the whole scene may be so many stops darker than forecast, >= 0 …
  readonly reserveBrightEv: number; // … or brighter, before a frame has no setting within tolerance
  readonly eveningsHeldShare: number; // 0 to 1: how often an evening's light stays within that reserve
  readonly worstErrorEv: number; // largest |errorEv| of a frame not affected
  readonly rmsErrorEv: number; // over frames not affected
  readonly cueCount: number;
  readonly objective: number; // the cost of docs/ramp.md
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
  readonly move?: PlanMove; // where the shoot has moves
  readonly notes: readonly PlanNote[];
}

/** Whole values of those keys of a shoot that a remedy changes. */
export type ShootChange = Partial<
  Pick<Shoot, 'span' | 'intervalS' | 'camera' | 'filters' | 'look' | 'limits' | 'moves'>
>;

/** One change that would make an impossible ramp possible, with its least amount. */
export interface Remedy {
  readonly change: string; // the kind of change
  readonly text: string; // for a person
  readonly apply: ShootChange; // `{ ...shoot, ...apply }` has a plan
}

export interface PlanInfeasible {
  readonly format: 'evenfall-plan/1';
  readonly shoot: Shoot;
  readonly infeasible: {
    readonly reason: 'too-dark' | 'too-bright' | 'too-fast' | 'no-time' | 'no-span';
    readonly frame?: number;
    readonly at?: string;
    readonly shortfallEv?: number;
    readonly text: string; // for a person
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
