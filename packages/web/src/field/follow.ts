// The evening as it is being lived: from what was metered, done and missed to what the camera stands at and what is
// left to do, planned anew from there by the library (docs/follow.md). All that is left is planned at once, so that
// what has been told stays as it is until something happens.

import {
  type FollowCue,
  type FollowInput,
  type FollowSetting,
  type FollowState,
  type FollowStep,
  type FollowWarning,
  followFrame,
  type PlanMade,
  startFollow,
} from '@evenfall/core';
import type { FieldEvent } from './events.js';

/** Where the evening stands after something happened. */
export interface Stand {
  readonly held: FollowSetting; // on the camera, as far as told
  readonly cues: readonly FollowCue[]; // not done, in order
  readonly warnings: readonly FollowWarning[];
  readonly state: FollowState;
  /** Whether the state has the first cue on the camera already: the library takes one that is due as done. */
  readonly ahead: boolean;
}

/** Before anything has happened: the plan itself. */
export function standAtStart(plan: PlanMade): Stand {
  const aheadS = plan.frames.length * plan.shoot.intervalS;
  // Whoever presses is a person, also beside a rig.
  const byHand: PlanMade = { ...plan, shoot: { ...plan.shoot, crew: 'hand' } };
  const step = followFrame(startFollow(byHand, { aheadS }), { frame: 0 });
  return stand(step, step.setting);
}

function stand({ cue, cuesAhead, setting, warnings, state }: FollowStep, before: FollowSetting): Stand {
  return cue === undefined
    ? { held: setting, cues: cuesAhead, warnings, state, ahead: false }
    : { held: before, cues: [cue, ...cuesAhead], warnings, state, ahead: true };
}

/** After one more event. */
export function standAfter(before: Stand, event: FieldEvent): Stand {
  const { kind, frame, seen } = event;
  if (kind === 'caught-up') return caughtUp(before, seen);
  const now = standBy(before, seen);
  if (kind !== 'reading') return told(now, frame, kind);
  const { atMs, ev100, sure } = event;
  const reading = { atMs, ev100, ...(sure === undefined ? {} : { sure }) };
  return told(now, frame, 'missed', { reading });
}

/**
 * As time goes by: a cue stays as it was told until the one after it is due too; then both are replaced by what
 * should be set from what still stands on the camera.
 */
export function standBy(before: Stand, frame: number): Stand {
  let now = before;
  for (let second = now.cues[1]; second !== undefined && second.frame <= frame; second = now.cues[1]) {
    now = told(now, second.frame, 'missed');
  }
  return now;
}

/** As if all cues told up to a frame had been done when they were due, as they were told. */
export function caughtUp(before: Stand, frame: number): Stand {
  const last = before.cues.findLast((cue) => cue.frame <= frame);
  if (last === undefined) return before;
  const at = Math.max(last.frame, before.state.frame ?? 0);
  return stand(followFrame(before.state, { frame: at, done: last.cue }), before.held);
}

/** The next cue done or missed, said at a frame: at the latest at that of the cue after it. */
function told(before: Stand, frame: number, what: 'done' | 'missed', more: FollowInput = {}): Stand {
  const [next, second] = before.cues;
  const at = Math.max(Math.min(frame, second?.frame ?? frame), before.state.frame ?? 0);
  // The library takes a cue as done once its frame has passed; before that there is none to be missed.
  const counted = next !== undefined && (before.ahead || next.frame < at);
  const report = next !== undefined && (what === 'done' || counted) ? { [what]: next.cue } : {};
  return stand(followFrame(before.state, { ...more, ...report, frame: at }), before.held);
}
