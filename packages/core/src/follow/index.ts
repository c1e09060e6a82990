/**
 * The live evening. Readings in, the next settings out.
 *
 * @module @evenfall/core/follow
 */

export { type FollowState, type FollowStep, followFrame, startFollow } from './follow.js';
export type { FrameLevel } from './frame-level.js';
export { type FrameCalibration, type FrameTaken, readingOfFrame } from './frame-reading.js';
export { type FollowLines, followLines, type LinesState, type LinesStep } from './lines.js';
export { type FollowResumed, resumeFollow, type SavedFollow, saveFollow } from './saved.js';
export type { SavedFaultFacts } from './saved-fault.js';
export type {
  BoundReading,
  FollowAnswer,
  FollowCue,
  FollowInput,
  FollowOptions,
  FollowSetting,
  KitReport,
  ReportedSetting,
  SureReading,
} from './types.js';
export type {
  FollowWarning,
  FollowWarningFacts,
  FollowWarningKind,
  ReportedMark,
  UnknownMark,
} from './warning.js';
