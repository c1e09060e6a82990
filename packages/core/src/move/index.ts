/**
 * Pans, tilts and slides; their time, their speed on screen, the stars.
 *
 * @module @evenfall/core/move
 */

export { angleOfSizeDeg, fieldOfViewDeg, turnBetweenBearings, turnBetweenPoints } from './angle.js';
export { englishCautions, moveCautions } from './cautions.js';
export { easeAt } from './ease.js';
export { englishFindings, englishMoveChanges } from './english.js';
export { moveOfLength } from './lengths.js';
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
  type MoveFault,
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
  type StarAdvice,
  type Travel,
  type TurnBy,
  type TurnGear,
  type TurnMove,
  type Way,
} from './move.js';
export { COMFORT_CROSSING_S } from './screen.js';
export type { SkyView } from './sky-view.js';
export { starAdvice } from './stars.js';
export { lengthText, secondsText } from './words.js';
