/**
 * Pans, tilts and slides; their time, their speed on screen, the stars.
 *
 * @module @evenfall/core/move
 */

export { angleOfSizeDeg, fieldOfViewDeg, turnBetweenBearings, turnBetweenPoints } from '../move/angle.js';
export { moveCautions } from '../move/cautions.js';
export { easeAt } from '../move/ease.js';
export { COMFORT_CROSSING_S } from '../move/screen.js';
export type { SkyView } from '../move/sky-view.js';
export { starAdvice } from '../move/stars.js';
export {
  type Ease,
  type FrameBudget,
  type GapParts,
  type Lens,
  type Move,
  type MoveAxis,
  type MoveCaution,
  type MoveFault,
  type MoveFinding,
  type MoveFrame,
  type MoveLines,
  type MoveMode,
  type MovePlan,
  type MoveRemedy,
  type MoveRequest,
  type Optics,
  type PicturePoint,
  planMoves,
  type ScreenSpeed,
  type Sensor,
  type SlideBy,
  type SlideGear,
  type SlideMove,
  type StarAdvice,
  type Travel,
  type TurnBy,
  type TurnGear,
  type TurnMove,
  type Way,
} from '../move.js';
