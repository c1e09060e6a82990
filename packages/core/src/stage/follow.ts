// `@evenfall/core/follow`: the live evening. Readings in, the next settings out.

export { type FollowState, followFrame, startFollow } from '../follow/follow.js';
export { type FollowLines, followLines, type LinesState, type LinesStep } from '../follow/lines.js';
export type {
  FollowAnswer,
  FollowCue,
  FollowInput,
  FollowOptions,
  FollowSetting,
  FollowWarning,
  FollowWarningKind,
  ReportedSetting,
} from '../follow/types.js';
export type { PlanMade } from '../plan-format.js';
