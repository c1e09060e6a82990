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
  readonly elevationM?: number;
  /** IANA name. */
  readonly timeZone?: string;
}

export type Direction = 'dusk' | 'dawn';

/** From where to where: by true altitude of the sun's centre, or by clock (RFC 3339 with offset). */
export type Span =
  | { readonly fromSunAltitudeDeg: number; readonly toSunAltitudeDeg: number }
  | { readonly startAt: string; readonly endAt: string };

/** The camera's limits as its dials are marked. */
export interface Camera {
  readonly stepsPerStop: StepsPerStop;
  readonly shutter: { readonly shortest: string; readonly longest: string };
  readonly bulb: boolean;
  readonly iso: { readonly lowest: number; readonly highest: number };
  readonly aperture: string | { readonly widest: string; readonly narrowest: string };
  /** Seconds of each interval for writing and what else is neither shutter nor move, >= 0. */
  readonly gapS: number;
  /** Long-exposure noise reduction doubles the shutter's time. */
  readonly darkFrame: boolean;
  /** Decimal megabytes. */
  readonly frameMB?: number;
  /** Decimal gigabytes. */
  readonly cardGB?: number;
  readonly batteryFrames?: number;
  /** Share of a charge the cold leaves, above 0 to 1; absent: all. */
  readonly coldFactor?: number;
  readonly lens?: Lens;
  readonly sensor?: Sensor;
}

export type Facing = 'toward-sun' | 'side' | 'away' | { readonly azimuthDeg: number };
export type CloudWord = 'clear' | 'thin' | 'broken' | 'overcast' | 'heavy';
export type NightWord = 'remote' | 'rural' | 'suburb' | 'town' | 'city';
export type LampsWord = 'none' | 'street' | 'floodlit' | 'skyline';
export type SurfaceWord = 'grass' | 'sand' | 'snow' | 'water' | 'rock' | 'city';

/** What the lens sees, as the shoot file says it. */
export interface SceneWords {
  readonly facing: Facing;
  /** 0 to 90. */
  readonly viewAltitudeDeg: number;
  /** 0 to 1. */
  readonly skyShare: number;
  readonly surface?: SurfaceWord;
  /** 0 to 1. */
  readonly reflectance?: number;
  /** Of what is not sky: walls and faces turned to the lens, 0 to 1; absent: none. */
  readonly uprightShare?: number;
  readonly cloud: CloudWord | { readonly eighths: number };
  readonly night: NightWord | { readonly zenithMagArcsec2: number } | { readonly groundLx: number };
  readonly lamps: LampsWord | { readonly ev100: number; readonly share: number };
}

/** How far the picture may darken as the light goes. */
export type Look =
  | { readonly nightEv: number }
  | readonly { readonly sunAltitudeDeg: number; readonly offsetEv: number }[];

/** One metered EV at ISO 100 at a known time (RFC 3339 with offset). */
export interface ReadingEntry {
  readonly at: string;
  readonly ev100: number;
}

export type Crew = 'hand' | 'rig';

export interface Limits {
  /** > 0. */
  readonly toleranceEv: number;
  /** > 0. */
  readonly largestStepEv: number;
  /** >= 0. */
  readonly secondsBetweenCues: number;
  /** No limit where absent. */
  readonly maxFilterChanges?: number;
  /** >= 0. */
  readonly framesLostPerFilterChange: number;
}

/** A shoot: the shoot file, checked, with every default filled in. */
export interface Shoot {
  readonly format: 'evenfall-shoot/1';
  readonly title: string;
  readonly place: Place;
  /** Local civil date, YYYY-MM-DD. */
  readonly date: string;
  readonly direction: Direction;
  readonly span: Span;
  /** > 0. */
  readonly intervalS: number;
  /** > 0. */
  readonly clipFps: number;
  readonly camera: Camera;
  readonly filters: readonly FilterSpec[];
  readonly stackFilters: boolean;
  readonly startFilter?: string;
  readonly scene: SceneWords;
  readonly look: Look;
  readonly readings: readonly ReadingEntry[];
  readonly crew: Crew;
  readonly limits: Limits;
  /** Prices that differ from the defaults of docs/ramp.md. */
  readonly weights?: Partial<RampWeights>;
  /** At most one an axis. */
  readonly moves: readonly Move[];
}

/**
 * Frames an interval gives in a time, both ends exposed: floor(T / I) + 1.
 * Two hours at 7 s are 1029. Source: docs/sources.md#interval.
 *
 * @throws RangeError unless durationS >= 0 and intervalS > 0
 */
export function frameCountOf(durationS: number, intervalS: number): number {
  positive('intervalS', intervalS);
  if (!(durationS >= 0 && Number.isFinite(durationS))) {
    throw new RangeError(`durationS must not be negative, got ${durationS}`);
  }
  // A span that is a whole number of intervals must not lose its last frame to rounding.
  return Math.floor(durationS / intervalS + 1e-9) + 1;
}

/** Length of the finished clip in seconds. 240 frames at 24000/1001 are 10.01 s. */
export function clipLengthS(frameCount: number, clipFps: number): number {
  return frameCount / positive('clipFps', clipFps);
}

/** Space the frames take, in decimal gigabytes, and whether the card and one charge last; absent where not asked. */
export interface Supplies {
  readonly cardNeededGB?: number;
  readonly cardFits?: boolean;
  readonly batteryFits?: boolean;
}

/** Card and battery for so many frames. 1000 frames of 30 MB take 30 GB. */
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

/** Longest exact shutter time that ends, with its dark frame and the gap, inside the interval; may be negative. */
export function longestTimeInside(
  intervalS: number,
  { gapS, darkFrame }: Pick<Camera, 'gapS' | 'darkFrame'>,
): number {
  return (intervalS - gapS) / (darkFrame ? 2 : 1);
}
