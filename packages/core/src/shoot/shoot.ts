// What the photographer decides: a shoot file with its defaults filled in. Keys and defaults: docs/formats.md.

import type { StepsPerStop } from '../exposure/dial.js';
import type { FilterSpec } from '../exposure/filter.js';
import type { Bracket } from '../footage/bracket.js';
import type { Look } from '../light/look.js';
import type { SceneWords } from '../light/scene-words.js';
import type { Lens, Sensor } from '../move/angle.js';
import type { Move } from '../move/moves.js';
import type { Crew, Limits } from '../ramp/problem.js';
import type { SomeWeights } from '../ramp/weights.js';
import type { Direction } from '../sky/direction.js';
import type { Place } from '../sky/place.js';

/**
 * From where to where: by true altitude of the sun's centre, `fromSunAltitudeDeg` to `toSunAltitudeDeg`, -90
 * to 90, or by clock, `startAt` to `endAt`, RFC 3339 with offset.
 */
export type Span =
  | { readonly fromSunAltitudeDeg: number; readonly toSunAltitudeDeg: number }
  | { readonly startAt: string; readonly endAt: string };

/** The camera's limits as its dials are marked. */
export interface Camera {
  /** What one click of a dial is: a third or a half of a stop. */
  readonly stepsPerStop: StepsPerStop;
  /** From `shortest` to `longest`, as marked: "1/4000", "30". */
  readonly shutter: { readonly shortest: string; readonly longest: string };
  /** Whether the rig times the shutter freely between those, without a dial. */
  readonly bulb: boolean;
  /** From `lowest` to `highest`, as marked. */
  readonly iso: { readonly lowest: number; readonly highest: number };
  /** As marked, "5.6"; or from `widest` to `narrowest` where it may be turned. */
  readonly aperture: string | { readonly widest: string; readonly narrowest: string };
  /** Seconds of each interval for writing and what else is neither shutter nor move, >= 0. */
  readonly gapS: number;
  /** Long-exposure noise reduction is on, which doubles the shutter's time. */
  readonly darkFrame: boolean;
  /** Several exposures in every interval, about the one that the plan states; absent: that one alone. */
  readonly bracket?: Bracket | undefined;
  /** Space of one frame, decimal megabytes, > 0. */
  readonly frameMB?: number | undefined;
  /** Room of the card, decimal gigabytes, > 0. */
  readonly cardGB?: number | undefined;
  /** Frames that one charge gives in the warm, > 0. */
  readonly batteryFrames?: number | undefined;
  /** Share of a charge the cold leaves, above 0 to 1; absent: all. */
  readonly coldFactor?: number | undefined;
  /** What is in front; needed for moves by points and for speed on screen. */
  readonly lens?: Lens | undefined;
  /** What is behind it; likewise. */
  readonly sensor?: Sensor | undefined;
}

/** One metered EV at ISO 100 at a known time (RFC 3339 with offset). */
export interface ReadingEntry {
  /** RFC 3339 with offset. */
  readonly at: string;
  /** EV at ISO 100, finite. */
  readonly ev100: number;
}

/** A shoot: the shoot file, checked, with every default filled in. */
export interface Shoot {
  readonly format: 'evenfall-shoot/1';
  /** For people; may be empty. */
  readonly title: string;
  /** Where the camera stands. */
  readonly place: Place;
  /** Local civil date, YYYY-MM-DD. */
  readonly date: string;
  /** Which way the light goes. */
  readonly direction: Direction;
  /** From where to where. */
  readonly span: Span;
  /** Seconds from one frame's start to the next, > 0. */
  readonly intervalS: number;
  /** Frames a second of the clip, > 0; 23.976 is taken as 24000/1001. */
  readonly clipFps: number;
  /** What the dials can do. */
  readonly camera: Camera;
  /** Those owned, none or more, with names that differ. */
  readonly filters: readonly FilterSpec[];
  /** Whether two may be on the lens at once. */
  readonly stackFilters: boolean;
  /** Name of the filter that must be on the lens at first; absent: free. */
  readonly startFilter?: string | undefined;
  /** What the lens sees. */
  readonly scene: SceneWords;
  /** How far the picture may darken. */
  readonly look: Look;
  /** Meter readings taken so far, in any order. */
  readonly readings: readonly ReadingEntry[];
  /** Who turns the dials. */
  readonly crew: Crew;
  /** What the schedule may ask. */
  readonly limits: Limits;
  /** Prices of the ramp that differ from those of the crew, {@link rampWeights}. */
  readonly weights?: SomeWeights | undefined;
  /** At most one an axis. */
  readonly moves: readonly Move[];
}
