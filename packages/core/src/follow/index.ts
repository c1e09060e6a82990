/**
 * The live evening. Readings in, the next settings out.
 *
 * @module @evenfall/core/follow
 */

export { englishWarnings } from './english.js';
export { type FollowState, type FollowStep, followFrame, startFollow } from './follow.js';
export { type FollowLines, followLines, type LinesState, type LinesStep } from './lines.js';
export { type FollowResumed, resumeFollow, type SavedFollow, saveFollow } from './saved.js';
export type {
  FollowAnswer,
  FollowCue,
  FollowInput,
  FollowOptions,
  FollowSetting,
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
