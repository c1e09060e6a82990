// The evening as it is being lived: from what was metered, done and missed to what the camera stands at and what is
// left to do, planned again from there by the library (docs/follow.md). The frames are those of the page's own clock, so a
// jump ahead is meant. All that is left is planned at once, so that what has been told stays as it is until something
// happens.

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
import type { FieldEvent, KitEvent, ReadingEvent } from './events.js';

/** Where the evening stands after something happened. */
export interface Stand {
  readonly held: FollowSetting; // on the camera, as far as told
  /** Whether nobody has said that `held` is on the camera: it is what should be there now, whole. */
  readonly owed: boolean;
  readonly ready: boolean; // whether somebody has said that what to begin with is on the camera
  readonly cues: readonly FollowCue[]; // not done, in order
  readonly warnings: readonly FollowWarning[];
  readonly state: FollowState;
  /** Whether the state has the first cue on the camera already: the library takes one that is due as done. */
  readonly ahead: boolean;
}

const NOT_USED = ['reading-doubted', 'reading-impossible', 'reading-old', 'reading-failed'];

/** Why the last reading was not used. */
export const refusalOf = ({ warnings }: Stand) => warnings.find(({ kind }) => NOT_USED.includes(kind));

/**
 * Before anything has happened: the plan itself.
 *
 * @param from frame under way when the evening was taken up; who comes late is to stand where the plan has it
 * @param meterEv standard deviation of a reading, where it was stated
 */
export function standAtStart(plan: PlanMade, from = 0, meterEv?: number): Stand {
  const aheadS = plan.frames.length * plan.shoot.intervalS;
  // Whoever presses is a person, also beside a rig.
  const byHand: PlanMade = { ...plan, shoot: { ...plan.shoot, crew: 'hand' } };
  const frame = Math.min(from, plan.frames.length - 1);
  const options = { aheadS, ...(meterEv === undefined ? {} : { meterEv }) };
  return whole(followFrame(startFollow(byHand, options), { frame }), frame > 0);
}

/** All that the step brings is on the camera, or is to be put there at once. */
function whole({ cuesAhead, setting, warnings, state }: FollowStep, owed: boolean): Stand {
  return { held: setting, owed, ready: false, cues: cuesAhead, warnings, state, ahead: false };
}

/** A cue that is due is not done yet. */
function stand(step: FollowStep, { held }: Stand): Stand {
  const { cue, cuesAhead, warnings, state } = step;
  if (cue === undefined) return whole(step, false);
  return { held, owed: false, ready: false, cues: [cue, ...cuesAhead], warnings, state, ahead: true };
}

/** After one more event. */
export function standAfter(before: Stand, event: FieldEvent): Stand {
  const { kind, frame, seen } = event;
  const now = standBy(before, seen);
  if (kind === 'ready') return { ...now, ready: true };
  if (kind === 'reading') return afterReading(now, event);
  if (kind === 'kit') return afterKit(now, event);
  if (now.owed) return kind === 'missed' ? now : { ...caughtUp(before, seen, frame), owed: false };
  return told(now, frame, kind);
}

/** A reading that is refused changes nothing but what is said. */
function afterReading(now: Stand, { frame, atMs, ev100, sure }: ReadingEvent): Stand {
  const reading = { atMs, ev100, ...(sure === undefined ? {} : { sure }) };
  const after = told(now, frame, 'missed', { reading });
  const refusal = refusalOf(after);
  if (refusal !== undefined && refusal.kind !== 'reading-doubted')
    return { ...now, warnings: after.warnings };
  return { ...after, owed: now.owed, ready: now.ready && sameMarks(now.held, after.held) };
}

/** What is left is planned with the kit that is left: what the camera stands at may have to be set anew, whole. */
function afterKit(now: Stand, { frame, filters, highestIso }: KitEvent): Stand {
  const after = told(now, frame, 'missed', { kit: { filters, iso: { highest: highestIso } } });
  return { ...after, owed: now.owed, ready: now.ready && sameMarks(now.held, after.held) };
}

const sameMarks = (a: FollowSetting, b: FollowSetting) =>
  a.shutter === b.shutter &&
  a.iso === b.iso &&
  a.aperture === b.aperture &&
  String(a.filters) === String(b.filters);

/**
 * As time goes by: a cue stays as it was told until the one after it is due too. From then on there is one order, the
 * whole setting that should be on the camera now, which goes on with the cues until somebody says that it is there.
 */
export function standBy(before: Stand, frame: number): Stand {
  const [first, second] = before.cues;
  const overdue = before.owed ? first : second;
  return overdue !== undefined && overdue.frame <= frame ? caughtUp(before, frame) : before;
}

/**
 * All cues told up to a frame, as one.
 *
 * @param doneAt from which frame on they are on the camera; by default as they were told
 */
function caughtUp(before: Stand, frame: number, doneAt = 0): Stand {
  const last = before.cues.findLast((cue) => cue.frame <= frame);
  if (last === undefined) return before;
  const at = Math.max(last.frame, doneAt, before.state.frame ?? 0);
  return whole(followFrame(before.state, { frame: at, jump: true, done: last.cue }), true);
}

/** The next cue done or missed, said at a frame: at the latest at that of the cue after it. */
function told(before: Stand, frame: number, what: 'done' | 'missed', more: FollowInput = {}): Stand {
  const [next, second] = before.cues;
  const at = Math.max(Math.min(frame, second?.frame ?? frame), before.state.frame ?? 0);
  // The library takes a cue as done once its frame has passed; before that there is none to be missed.
  const counted = next !== undefined && (before.ahead || next.frame < at);
  const report = next !== undefined && (what === 'done' || counted) ? { [what]: next.cue } : {};
  return stand(followFrame(before.state, { ...more, ...report, frame: at, jump: true }), before);
}
