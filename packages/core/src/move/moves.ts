// Camera moves as the shoot file says them, defaults filled in. Keys, units and defaults: docs/moves.md.

import type { PicturePoint, Way } from './angle.js';
import type { Ease } from './ease.js';

/** What moves: the head sideways, the head up and down, the carriage. */
export type MoveAxis = 'pan' | 'tilt' | 'slide';

/** `stopped`: at rest while the shutter is open, moves between frames. `continuous`: never stops. */
export type MoveMode = 'stopped' | 'continuous';

/**
 * How far a head turns: `deg` by the number; for a pan alone `fromBearingDeg` to `toBearingDeg` by the
 * compass, clockwise from north, round by the `way`; `fromPoint` to `toPoint` of a picture; or what takes in
 * a thing of `sizeM` metres at `distanceM`, > 0. Positive is right for a pan, up for a tilt.
 */
export type TurnBy =
  | { readonly deg: number }
  | { readonly fromBearingDeg: number; readonly toBearingDeg: number; readonly way?: Way | undefined } // a pan only
  | TurnByPoints
  | { readonly sizeM: number; readonly distanceM: number };

/** A turn that brings one point of a picture to where another is. */
export interface TurnByPoints {
  /** In the middle at first. */
  readonly fromPoint: PicturePoint;
  /** In the middle at the end. */
  readonly toPoint: PicturePoint;
  /** Of the picture the points were read off, millimetres, where it was another lens. */
  readonly focalMm?: number | undefined;
  /** How far the camera that took it looked up, -90 to 90; 0 is level. */
  readonly cameraTiltDeg?: number | undefined;
}

/**
 * How far a carriage travels, metres: `m` by the number, positive is right, or forward; or what a track of
 * `trackM` leaves beside the carriage's own length `carriageM` and `marginM` at each end, both >= 0.
 */
export type SlideBy =
  | { readonly m: number }
  | {
      readonly trackM: number;
      readonly carriageM?: number | undefined;
      readonly marginM?: number | undefined;
    }; // margin at each end

/** What the motor of a head can do. Without `topSpeedDegPerS`, a stopped move takes `moveS` for every step. */
export interface TurnGear {
  /** Rest after a step until the picture stands, seconds, >= 0. */
  readonly settleS: number;
  /** Time of every step, seconds, > 0. */
  readonly moveS?: number | undefined;
  /** Degrees a second, > 0. */
  readonly topSpeedDegPerS?: number | undefined;
  /** Degrees a second squared, > 0; at once where absent. */
  readonly accelerationDegPerS2?: number | undefined;
  /** One motor step, degrees, > 0. */
  readonly smallestStepDeg?: number | undefined;
}

/**
 * What the motor of a carriage can do. Without `topSpeedMPerS`, a stopped move takes `moveS` for every step.
 */
export interface SlideGear {
  /** Rest after a step until the picture stands, seconds, >= 0. */
  readonly settleS: number;
  /** Time of every step, seconds, > 0. */
  readonly moveS?: number | undefined;
  /** Metres a second, > 0. */
  readonly topSpeedMPerS?: number | undefined;
  /** Metres a second squared, > 0; at once where absent. */
  readonly accelerationMPerS2?: number | undefined;
  /** One motor step, metres, > 0. */
  readonly smallestStepM?: number | undefined;
}

/** How a move goes, on any axis. */
export interface MoveManner {
  /** At every step, or all the time. */
  readonly mode: MoveMode;
  /** Its way from rest to rest. */
  readonly ease: Ease;
}

/** A pan or a tilt. */
export interface TurnMove extends MoveManner {
  /** Which. */
  readonly axis: 'pan' | 'tilt';
  /** How far. */
  readonly by: TurnBy;
  /** What its motor can do. */
  readonly gear: TurnGear;
}

/** A carriage on a track. */
export interface SlideMove extends MoveManner {
  readonly axis: 'slide';
  /** How far. */
  readonly by: SlideBy;
  /** What its motor can do. */
  readonly gear: SlideGear;
  /** Across the view, or along it. */
  readonly toward: 'side' | 'forward';
  /** Distance of the nearest thing in the picture, metres, > 0: it moves fastest. */
  readonly nearestM?: number | undefined;
}

/** One axis that moves from the first frame to the last. A shoot has at most one of each. */
export type Move = TurnMove | SlideMove;
