// Camera moves as the shoot file says them, defaults filled in. Keys, units and defaults: docs/moves.md.

import type { PicturePoint, Way } from './angle.js';
import type { Ease } from './ease.js';

export type MoveAxis = 'pan' | 'tilt' | 'slide';

/** `stopped`: at rest while the shutter is open, moves between frames. `continuous`: never stops. */
export type MoveMode = 'stopped' | 'continuous';

/** How far a head turns. Positive is right for a pan, up for a tilt. */
export type TurnBy =
  | { readonly deg: number }
  | { readonly fromBearingDeg: number; readonly toBearingDeg: number; readonly way?: Way } // a pan only
  | {
      readonly fromPoint: PicturePoint;
      readonly toPoint: PicturePoint;
      /** Of the picture the points were read off, where it was another lens. */
      readonly focalMm?: number;
      /** Of the camera that took that picture; 0 is level. */
      readonly cameraTiltDeg?: number;
    }
  | { readonly sizeM: number; readonly distanceM: number };

/** How far a carriage travels: straight, or what a track leaves of its length. Positive is right, or forward. */
export type SlideBy =
  | { readonly m: number }
  | { readonly trackM: number; readonly carriageM?: number; readonly marginM?: number }; // margin at each end

/** What the motor of a head can do. Without `topSpeedDegPerS`, a stopped move takes `moveS` for every step. */
export interface TurnGear {
  /** Rest after a step until the picture stands, >= 0. */
  readonly settleS: number;
  /** > 0. */
  readonly moveS?: number;
  /** > 0. */
  readonly topSpeedDegPerS?: number;
  /** > 0; at once where absent. */
  readonly accelerationDegPerS2?: number;
  /** > 0. */
  readonly smallestStepDeg?: number;
}

/** What the motor of a carriage can do. */
export interface SlideGear {
  readonly settleS: number;
  readonly moveS?: number;
  readonly topSpeedMPerS?: number;
  readonly accelerationMPerS2?: number;
  readonly smallestStepM?: number;
}

interface Common {
  readonly mode: MoveMode;
  readonly ease: Ease;
}

export interface TurnMove extends Common {
  readonly axis: 'pan' | 'tilt';
  readonly by: TurnBy;
  readonly gear: TurnGear;
}

export interface SlideMove extends Common {
  readonly axis: 'slide';
  readonly by: SlideBy;
  readonly gear: SlideGear;
  readonly toward: 'side' | 'forward';
  /** Distance of the nearest thing in the picture, > 0: it moves fastest. */
  readonly nearestM?: number;
}

/** One axis that moves from the first frame to the last. A shoot has at most one of each. */
export type Move = TurnMove | SlideMove;
