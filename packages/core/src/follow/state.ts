// What is known while an evening is followed.

import type { LiveCue } from '../ramp/live.js';
import type { CameraState } from './camera.js';
import type { Evening } from './evening.js';
import type { Rewinds } from './moment.js';
import type { Trust } from './trust.js';

/** All that is known so far. Plain and never changed; hold on to any of them to go back. */
export interface FollowState {
  readonly evening: Evening;
  /** Answered last. */
  readonly frame: number | undefined;
  readonly camera: CameraState;
  readonly trust: Trust;
  /** Cues told ahead with the last answer, `frame` counted from the shoot's first. */
  readonly told: readonly LiveCue[];
  readonly rewinds: Rewinds | undefined;
}
