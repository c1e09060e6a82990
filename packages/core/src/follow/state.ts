// What is known while an evening is followed.

import type { LiveCue } from '../ramp/live.js';
import type { CameraState } from './camera.js';
import type { Evening } from './evening.js';
import type { Rewinds } from './moment.js';
import type { Trust } from './trust.js';

/** All that is known so far. Plain and never changed; hold on to any of them to go back. */
export interface FollowState {
  readonly evening: Evening;
  readonly frame: number | undefined; // answered last
  readonly camera: CameraState;
  readonly trust: Trust;
  readonly told: readonly LiveCue[]; // cues told ahead with the last answer, `frame` counted from the shoot's first
  readonly rewinds: Rewinds | undefined;
}
