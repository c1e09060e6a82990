// What the photographer decides (a shoot file with its defaults filled in), and the plain bookkeeping
// that follows from it: frames, clip, card, battery. Keys and defaults: docs/formats.md.

import { positive } from './check.js';
import type { StepsPerStop } from './dial.js';
import type { FilterSpec } from './filter.js';
import { framesOnCharge } from './footage/supplies.js';
import type { Lens, Sensor } from './move/angle.js';
import type { Move } from './move/moves.js';
import type { RampWeights } from './ramp/weights.js';

/** A place on Earth. Without `timeZone` clock times are the longitude's mean solar time. */
export interface Place {
  /** -90 to 90, north positive. */
  readonly latitudeDeg: number;
  /** -180 to 180, east positive. */
  readonly longitudeDeg: number;
  /** Of the eye above its horizon, metres; moves sunrise and sunset. Absent: 0. */
  readonly elevationM?: number;
  /** IANA name, "Europe/Oslo". */
  readonly timeZone?: string;
}

/** The way the light goes: day to night, or night to day. */
export type Direction = 'dusk' | 'dawn';

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
  /** Space of one frame, decimal megabytes, > 0. */
  readonly frameMB?: number;
  /** Room of the card, decimal gigabytes, > 0. */
  readonly cardGB?: number;
  /** Frames that one charge gives in the warm, > 0. */
  readonly batteryFrames?: number;
  /** Share of a charge the cold leaves, above 0 to 1; absent: all. */
  readonly coldFactor?: number;
  /** What is in front; needed for moves by points and for speed on screen. */
  readonly lens?: Lens;
  /** What is behind it; likewise. */
  readonly sensor?: Sensor;
}

/**
 * Which way the lens looks: counted from the sun on the horizon, "side" 90° clockwise of it; or `azimuthDeg`,
 * clockwise from north.
 */
export type Facing = 'toward-sun' | 'side' | 'away' | { readonly azimuthDeg: number };
/** Cloud in a word; {@link CLOUDS} has the numbers. */
export type CloudWord = 'clear' | 'thin' | 'broken' | 'overcast' | 'heavy';
/** The place after dark in a word; {@link NIGHTS} has the numbers. */
export type NightWord = 'remote' | 'rural' | 'suburb' | 'town' | 'city';
/** Lamps in the frame in a word; {@link LAMPS} has the numbers. */
export type LampsWord = 'none' | 'street' | 'floodlit' | 'skyline';
/** The ground in a word; {@link SURFACES} has the numbers. */
export type SurfaceWord = 'grass' | 'sand' | 'snow' | 'water' | 'rock' | 'city';

/** What the lens sees, as the shoot file says it. */
export interface SceneWords {
  /** Which way the lens looks. */
  readonly facing: Facing;
  /** Of the piece of sky in the frame, 0 to 90. */
  readonly viewAltitudeDeg: number;
  /** Of the frame, 0 to 1. */
  readonly skyShare: number;
  /** What the ground is; absent where `reflectance` says it. */
  readonly surface?: SurfaceWord;
  /** Of the ground, 0 to 1. */
  readonly reflectance?: number;
  /** Of what is not sky: walls and faces turned to the lens, 0 to 1; absent: none. */
  readonly uprightShare?: number;
  /** In a word, or by the `eighths` of the sky it covers, 0 to 8. */
  readonly cloud: CloudWord | { readonly eighths: number };
  /**
   * In a word; by `zenithMagArcsec2`, magnitudes in a square arcsecond of the zenith, 14 to 23; or by
   * `groundLx`, metered lux on level ground, above 0 to 200.
   */
  readonly night: NightWord | { readonly zenithMagArcsec2: number } | { readonly groundLx: number };
  /**
   * In a word; or the `ev100` a spot meter reads off them, and the `share` of the frame they fill, 0 to 1.
   */
  readonly lamps: LampsWord | { readonly ev100: number; readonly share: number };
}

/**
 * How far the picture may darken as the light goes: `nightEv`, EV off metered level once it is night,
 * negative is darker; or a table of `offsetEv` by `sunAltitudeDeg`, degrees, its rows rising, one or more.
 */
export type Look =
  | { readonly nightEv: number }
  | readonly { readonly sunAltitudeDeg: number; readonly offsetEv: number }[];

/** One metered EV at ISO 100 at a known time (RFC 3339 with offset). */
export interface ReadingEntry {
  /** RFC 3339 with offset. */
  readonly at: string;
  /** EV at ISO 100, finite. */
  readonly ev100: number;
}

/** Who turns the dials: a person between frames, or a program. */
export type Crew = 'hand' | 'rig';

/** What a schedule may ask of the picture and of the crew. */
export interface Limits {
  /** Largest error of a frame, stops, > 0. */
  readonly toleranceEv: number;
  /** Largest change of one control at one cue, stops, > 0. */
  readonly largestStepEv: number;
  /** Least time from one cue to the next, seconds, >= 0. */
  readonly secondsBetweenCues: number;
  /** Most filter changes, whole, >= 0; no limit where absent. */
  readonly maxFilterChanges?: number;
  /** Frames that a hand on the lens may spoil, whole, >= 0. */
  readonly framesLostPerFilterChange: number;
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
  readonly startFilter?: string;
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
  /** Prices that differ from the defaults of docs/ramp.md. */
  readonly weights?: Partial<RampWeights>;
  /** At most one an axis. */
  readonly moves: readonly Move[];
}

/**
 * Frames an interval gives in a time, both ends exposed: floor(T / I) + 1. Source: docs/sources.md#interval.
 *
 * @param durationS from the first shutter to the last, seconds, >= 0
 * @param intervalS seconds, > 0
 * @returns whole, 1 or more
 * @throws RangeError unless durationS >= 0 and intervalS > 0, both finite
 * @example
 * ```ts
 * import { frameCountOf } from '@evenfall/core';
 *
 * frameCountOf(2 * 3600, 7); // → 1029
 * ```
 */
export function frameCountOf(durationS: number, intervalS: number): number {
  positive('intervalS', intervalS);
  if (!(durationS >= 0 && Number.isFinite(durationS))) {
    throw new RangeError(`durationS must not be negative, got ${durationS}`);
  }
  // A span that is a whole number of intervals must not lose its last frame to rounding.
  return Math.floor(durationS / intervalS + 1e-9) + 1;
}

/**
 * Length of the finished clip.
 *
 * @param frameCount whole, 0 or more
 * @param clipFps frames a second, exact, > 0: from {@link exactFps}
 * @returns seconds
 * @throws RangeError unless clipFps is positive and finite
 * @example
 * ```ts
 * import { clipLengthS } from '@evenfall/core';
 *
 * clipLengthS(240, 24_000 / 1001); // → 10.01
 * ```
 */
export function clipLengthS(frameCount: number, clipFps: number): number {
  return frameCount / positive('clipFps', clipFps);
}

/** What the frames take and whether it is there; absent where it is not known. */
export interface Supplies {
  /** Space the frames take, decimal gigabytes. */
  readonly cardNeededGB?: number;
  /** Whether the card has it. */
  readonly cardFits?: boolean;
  /** Whether one charge lasts. */
  readonly batteryFits?: boolean;
}

/**
 * Card and battery for so many frames.
 *
 * @param frameCount whole, 0 or more
 * @param camera `frameMB`, `cardGB` and `batteryFrames` as far as known, each > 0; `coldFactor` 0 to 1, 1
 *   where absent
 * @returns what can be said from them
 * @throws RangeError on a battery or a cold factor out of range
 * @example
 * ```ts
 * import { suppliesFor } from '@evenfall/core';
 *
 * suppliesFor(1000, { frameMB: 30, cardGB: 64 }); // → { cardNeededGB: 30, cardFits: true }
 * suppliesFor(1000, { batteryFrames: 1200, coldFactor: 0.75 }); // → { batteryFits: false }
 * ```
 */
export function suppliesFor(
  frameCount: number,
  {
    frameMB,
    cardGB,
    batteryFrames,
    coldFactor = 1,
  }: Pick<Camera, 'frameMB' | 'cardGB' | 'batteryFrames' | 'coldFactor'>,
): Supplies {
  const cardNeededGB = frameMB === undefined ? undefined : (frameCount * frameMB) / 1000;
  return {
    ...(cardNeededGB === undefined ? {} : { cardNeededGB }),
    ...(cardNeededGB === undefined || cardGB === undefined ? {} : { cardFits: cardNeededGB <= cardGB }),
    ...(batteryFrames === undefined
      ? {}
      : { batteryFits: frameCount <= framesOnCharge(batteryFrames, coldFactor) }),
  };
}

/**
 * Longest exact shutter time that ends, with its dark frame and the gap, inside the interval.
 *
 * @param intervalS seconds
 * @param camera `gapS`, seconds that the shutter may not use, and `darkFrame`, whether one follows every
 *   frame
 * @returns seconds; negative where the gap alone is longer than the interval
 * @example
 * ```ts
 * import { longestTimeInside } from '@evenfall/core';
 *
 * longestTimeInside(8, { gapS: 1, darkFrame: false }); // → 7
 * longestTimeInside(8, { gapS: 1, darkFrame: true }); // → 3.5
 * ```
 */
export function longestTimeInside(
  intervalS: number,
  { gapS, darkFrame }: Pick<Camera, 'gapS' | 'darkFrame'>,
): number {
  return (intervalS - gapS) / (darkFrame ? 2 : 1);
}
