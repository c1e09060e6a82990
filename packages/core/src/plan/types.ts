// What the library answers: a plan, whole, so that a rig's software needs no arithmetic of its own, and a light
// table. These are the formats evenfall-plan/1 and evenfall-light/1 of docs/formats.md.

import type { EvBand } from '../light/band.js';
import type { MoveFinding, MoveFrame, MovePlan } from '../move/move.js';
import type { GapParts } from '../move/time-budget.js';
import type { Shoot } from '../shoot/shoot.js';
import type { WhyNoPass } from '../sky/missing.js';
import type { MissingEvent, SkyEvent } from '../sky/sun.js';
import type { ClocksBack } from '../words/clock.js';
import type { CueNote, NoteFacts } from './note.js';
import type { RemedyChange } from './remedies/change.js';

/**
 * One frame of a plan: when, what light, what the camera stands at. All exposures in exact values. Where the shoot
 * has moves, also where they are and what the interval holds.
 */
export interface PlanFrame extends EvBand, Partial<MoveFrame> {
  /** From 0, as its place in the list. */
  readonly frame: number;
  /** Its start, RFC 3339 with the place's offset. */
  readonly at: string;
  /** True altitude of the sun's centre, -90 to 90. */
  readonly sunAltitudeDeg: number;
  /** The light, EV at ISO 100, readings counted. */
  readonly sceneEv100: number;
  /** What it should be exposed for: sceneEv100 less the look's offset, EV at ISO 100. */
  readonly targetEv100: number;
  /** What the dial says, "1/60"; to three digits where a rig times it freely. */
  readonly shutter: string;
  /** Seconds, exact. */
  readonly shutterS: number;
  /** Shutter of the shortest exposure, where they are several; `shutter` is the middle one's. */
  readonly bracketShortest?: string | undefined;
  /** Shutter of the longest. */
  readonly bracketLongest?: string | undefined;
  /** What the dial says. */
  readonly iso: number;
  /** Arithmetic speed, exact. */
  readonly isoExact: number;
  /** What the dial says, "5.6". */
  readonly aperture: string;
  /** Focal ratio, exact. */
  readonly fNumber: number;
  /** Names of those on the lens; empty for the bare lens. */
  readonly filters: readonly string[];
  /** Their sum, stops, exact, >= 0. */
  readonly filterStops: number;
  /** What the setting renders at metered level, filters counted, EV at ISO 100. */
  readonly settingEv100: number;
  /** settingEv100 - targetEv100, stops; positive is darker than wanted. */
  readonly errorEv: number;
  /** Whether a hand on the lens may spoil it; its error is then not judged. */
  readonly affected: boolean;
}

/** What a hand turns or changes. */
export type Control = 'shutter' | 'iso' | 'aperture' | 'filter';

/** One control's part in a cue; labels as on the dial; filter is names joined by " + ", or "none". */
export interface PlanChange {
  /** Which one. */
  readonly control: Control;
  /** What it says before. */
  readonly from: string;
  /** What it says after. */
  readonly to: string;
}

/** One moment at which one or more controls change; the new setting holds from `frame` on. */
export interface PlanCue {
  /** First frame with the new setting, from 1. */
  readonly frame: number;
  /** Its start, RFC 3339 with the place's offset. */
  readonly at: string;
  /** True altitude of the sun's centre then. */
  readonly sunAltitudeDeg: number;
  /** One or more, in the order hands work: filter, shutter, ISO, aperture. */
  readonly changes: readonly PlanChange[];
  /** What to know where filters change; absent where there is nothing. */
  readonly notes?: readonly CueNote[] | undefined;
}

/** A plan in numbers. */
export interface PlanSummary {
  /** Whole, 1 or more. */
  readonly frameCount: number;
  /** By when everything should stand ready, RFC 3339. */
  readonly setUpAt: string;
  /** Start of the first frame, RFC 3339. */
  readonly startAt: string;
  /** Start of the last frame, RFC 3339. */
  readonly endAt: string;
  /** Seconds of clip. */
  readonly clipS: number;
  /** Space the frames take, decimal gigabytes; absent where `frameMB` is not known. */
  readonly cardNeededGB?: number | undefined;
  /** Whether the card has it; absent where not known. */
  readonly cardFits?: boolean | undefined;
  /** Whether one charge lasts; absent where not known. */
  readonly batteryFits?: boolean | undefined;
  /** Start of the first frame that finds no room on the card, RFC 3339; absent where it is enough. */
  readonly cardFullAt?: string | undefined;
  /** Start of the first frame that finds no charge, RFC 3339; absent where it lasts. */
  readonly batteryOutAt?: string | undefined;
  /** The light at the first frame, EV at ISO 100. */
  readonly sceneFromEv100: number;
  /** The light at the last frame, EV at ISO 100. */
  readonly sceneToEv100: number;
  /** The target's range over the span, stops, >= 0. */
  readonly rampStops: number;
  /**
   * The whole scene may be so many stops darker than forecast, >= 0, before a frame has no setting within
   * tolerance.
   */
  readonly reserveDarkEv: number;
  /** Or so many brighter, >= 0. */
  readonly reserveBrightEv: number;
  /** How often an evening's light stays within that reserve, 0 to 1. */
  readonly eveningsHeldShare: number;
  /** Largest |errorEv| of a frame not affected, stops. */
  readonly worstErrorEv: number;
  /** Root of the mean square of errorEv over frames not affected, stops. */
  readonly rmsErrorEv: number;
  /** Whole, 0 or more. */
  readonly cueCount: number;
  /** What the ramp costs by the shoot's prices, `weights`, >= 0. */
  readonly objective: number;
}

/** An event of sun or moon with its clock time. */
export interface PlanEvent {
  /** Which. */
  readonly name: SkyEvent;
  /** RFC 3339 with the place's offset, to the second. */
  readonly at: string;
  /** True altitude of the sun's centre then. */
  readonly sunAltitudeDeg: number;
}

/** What else a person should know: its `kind`, with the values that it speaks of. */
export type PlanNote = NoteFacts & {
  /** How much it matters; a warning may cost the clip. */
  readonly level: 'info' | 'caution' | 'warning';
  /** One or more sentences in English. */
  readonly text: string;
};

/** The moves of a plan; their frames' part stands in the frames. */
export interface PlanMove extends Pick<MovePlan, 'travels' | 'gap' | 'tightest' | 'fastest' | 'lines'> {
  /** None or more, warnings first. */
  readonly findings: readonly MoveFinding<Remedy>[];
}

/** A plan that can be shot: `evenfall-plan/1` with frames. */
export interface PlanMade {
  readonly format: 'evenfall-plan/1';
  /** That there is a plan. */
  readonly kind: 'ok';
  /** What was asked for, defaults filled in. */
  readonly shoot: Shoot;
  /** The whole in numbers. */
  readonly summary: PlanSummary;
  /** Sun and moon on the local day on which the span starts and the one after, in order of time. */
  readonly events: readonly PlanEvent[];
  /** One a frame, in order; entry i is frame i. */
  readonly frames: readonly PlanFrame[];
  /** In order of time, none or more. */
  readonly cues: readonly PlanCue[];
  /**
   * Only where a rig times the shutter freely, which is no cue: where it has it by the clock, every third of a stop, in
   * order of time, none at a cue's frame.
   */
  readonly shutterTimes?: readonly PlanCue[] | undefined;
  /** Where the shoot has moves. */
  readonly move?: PlanMove | undefined;
  /** None or more. */
  readonly notes: readonly PlanNote[];
  /** Only where the clocks are put back from the day on which the span starts to the day after: times that come twice. */
  readonly clocksBack?: ClocksBack | undefined;
}

/** Whole values of those keys of a shoot that a remedy changes. */
export type ShootChange = Partial<
  Pick<Shoot, 'span' | 'intervalS' | 'camera' | 'filters' | 'startFilter' | 'look' | 'limits' | 'moves'>
>;

/** What the plan that a remedy gives keeps to spare. */
export interface RemedyLeaves {
  /** Stops that the whole scene may then be off, darker or brighter, whichever is less; >= 0. */
  readonly reserveEv: number;
  /** Seconds that its tightest interval has left, >= 0, where that is less than a twentieth of it. */
  readonly spareS?: number | undefined;
  /** Where a longer interval leaves less than two thirds of the clip: how long it is then, and would have been. */
  readonly clip?: ClipCut | undefined;
}

/** A clip that a longer interval makes shorter. */
export interface ClipCut {
  /** Seconds. */
  readonly clipS: number;
  /** Seconds, of the shoot as it is. */
  readonly fromClipS: number;
}

/** One change that would make an impossible ramp possible, or fix a move, with its least amount: its `change`, with the values that it speaks of. */
export type Remedy = RemedyChange &
  Partial<RemedyLeaves> & {
    /** For a person, one sentence in English. */
    readonly text: string;
    /** Changed keys: `{ ...shoot, ...apply }` has a plan. */
    readonly apply: ShootChange;
    /** What it keeps, for a person, in English. Absent, with the numbers, beside findings of a move, where no plan is tried. */
    readonly reserveText?: string | undefined;
  };

/** How far the kit falls short of the light. */
export interface FrameShort {
  /** First that cannot be met, from 0. */
  readonly frame: number;
  /** Its start, RFC 3339 with the place's offset. */
  readonly at: string;
  /** By how many stops, > 0. */
  readonly shortfallEv: number;
  /** The most of any frame, stops. */
  readonly worstShortfallEv: number;
}

/** A tolerance of less than half a click of the dial. */
export interface BelowHalfClick {
  /** The shoot's, stops. */
  readonly toleranceEv: number;
  /** Stops. */
  readonly halfClickEv: number;
}

/** Why a shoot has no plan, by its `reason`. */
export type WhyInfeasible =
  | ({
      readonly reason: 'too-dark';
      /** What keeps the shutter short, where moves do. */
      readonly gap?: GapParts | undefined;
    } & FrameShort)
  | ({ readonly reason: 'too-bright' } & FrameShort)
  | ({
      readonly reason: 'too-fast';
      /** Where no dial can follow as close as that. */
      readonly belowHalfClick?: BelowHalfClick | undefined;
    } & FrameShort)
  | {
      readonly reason: 'no-time';
      /** What else is in every interval. */
      readonly gap: GapParts;
      /** Seconds. */
      readonly intervalS: number;
      /** Whether each shutter has a dark frame. */
      readonly darkFrame: boolean;
      /** In an interval, where they are several. */
      readonly exposures?: number | undefined;
      /** Of all pauses between them, seconds. */
      readonly pausesS?: number | undefined;
    }
  | {
      readonly reason: 'no-span';
      /** The shoot's. */
      readonly date: string;
      /** Why the sun does not pass through the span on it. */
      readonly because: WhyNoPass;
    };

/** Why a shoot has no plan, and what would give it one: `evenfall-plan/1` without frames. */
export interface PlanInfeasible {
  readonly format: 'evenfall-plan/1';
  /** That there is none. */
  readonly kind: 'infeasible';
  /** What was asked for, defaults filled in. */
  readonly shoot: Shoot;
  /**
   * The `reason` with its values, and the `remedies`, none or more, in the order in which a photographer would
   * try them.
   */
  readonly infeasible: WhyInfeasible & {
    /** For a person, one sentence or more in English. */
    readonly text: string;
    readonly remedies: readonly Remedy[];
  };
  /** As of {@link PlanMade}. */
  readonly clocksBack?: ClocksBack | undefined;
}

/** What a shoot comes to: a plan, or why there is none; `kind` tells which. */
export type Plan = PlanMade | PlanInfeasible;

/** One row of the light table, `evenfall-light/1`. */
export interface LightRow extends EvBand {
  /** RFC 3339 with the place's offset. */
  readonly at: string;
  /** True altitude of the sun's centre, -90 to 90. */
  readonly sunAltitudeDeg: number;
  /** Clockwise from north, 0 to 360. */
  readonly sunAzimuthDeg: number;
  /** True altitude of the moon's centre, -90 to 90. */
  readonly moonAltitudeDeg: number;
  /** Clockwise from north, 0 to 360. */
  readonly moonAzimuthDeg: number;
  /** Lit share of the disc, 0 to 1. */
  readonly moonLitFraction: number;
  /** On level ground, from everything, lux. */
  readonly illuminanceLx: number;
  /** The moon's part of it, lux. */
  readonly moonIlluminanceLx: number;
  /** Of the piece of sky in the frame, cd/m². */
  readonly skyLuminanceCdM2: number;
  /** What a meter reads off the frame, EV at ISO 100. */
  readonly sceneEv100: number;
  /** Its speed, EV a minute; negative where it darkens. */
  readonly slopeEvPerMin: number;
}

/** The light of a shoot's span without a camera, `evenfall-light/1`. */
export interface LightTable {
  readonly format: 'evenfall-light/1';
  /** That there is light to tell of: the sun passes through the span. */
  readonly kind: 'ok';
  /** Sun and moon on the local day on which the span starts and the one after. */
  readonly events: readonly PlanEvent[];
  /** Events that do not happen in that time, and why. */
  readonly missing: readonly MissingEvent[];
  /** One an interval, one or more. */
  readonly rows: readonly LightRow[];
  /** As of {@link PlanMade}. */
  readonly clocksBack?: ClocksBack | undefined;
}
