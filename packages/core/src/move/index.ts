/**
 * Pans, tilts and slides; their time, their speed on screen, the stars.
 *
 * @module @evenfall/core/move
 */

export { fieldOfViewDeg } from './angle.js';
export { moveCautions } from './cautions.js';
export type { Motor } from './gear.js';
export {
  type Ease,
  type FrameBudget,
  type GapParts,
  type LengthChange,
  type Lens,
  type Move,
  type MoveAxis,
  type MoveCaution,
  type MoveChange,
  type MoveFaultFacts,
  type MoveFinding,
  type MoveFound,
  type MoveFrame,
  type MoveLines,
  type MoveMode,
  type MovePlan,
  type MoveRemedy,
  type MoveRequest,
  type Optics,
  type Pace,
  type PicturePoint,
  planMoves,
  type ScreenSpeed,
  type Sensor,
  type SlideBy,
  type SlideGear,
  type SlideMove,
  type Travel,
  type TurnBy,
  type TurnGear,
  type TurnMove,
  type Way,
} from './move.js';
export type { MoveManner, TurnByPoints } from './moves.js';
export { COMFORT_CROSSING_S } from './screen.js';
