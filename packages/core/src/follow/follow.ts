// An evening followed live: readings as they come in, the setting for each frame and the cues ahead out. The scene's
// forecast is moved by what the readings say, and the ramp is planned again from the setting now on the camera.
// No clock and no memory but the state, which is never changed: each answer brings the next one.

import { aboveZero, anything, group, hold, ifGroup, onlyKeys } from '../hold.js';
import { checkPlan } from '../plan/plan-check.js';
import type { Plan, PlanFrame } from '../plan/types.js';
import type { State } from '../ramp/moves.js';
import type { RampCue } from '../ramp/way.js';
import { cuesAhead, targetsAhead } from './ahead.js';
import { answerOf, takenCues } from './answer.js';
import { BLANK, type CameraState, movedAtOnce, shifted, withCue } from './camera.js';
import { planOrClosest } from './closest.js';
import { warningOf } from './english.js';
import { type Evening, eveningOf, frameStartMs, plannedLightAt, withKit } from './evening.js';
import { kitAfter, plannedKit } from './kit-now.js';
import { type Moment, momentOf } from './moment.js';
import { LEAST_BEYOND_EV, reachAhead } from './reach.js';
import { cameraRecast } from './recast.js';
import { applyReports } from './reports.js';
import { OF_A_FRAME, settingAt } from './setting.js';
import { checkState, type FollowState } from './state.js';
import { startTrust, type Trust, takeReading } from './trust.js';
import type { FollowAnswer, FollowInput, FollowOptions, FollowSetting } from './types.js';
import type { FollowWarning, FollowWarningFacts } from './warning.js';

export type { FollowState } from './state.js';

/** As in a shoot file: readings up to twelve hours before the first frame belong to it. */
const LONGEST_BEFORE_MS = 12 * 3_600_000;

const OPTIONS = group({}, { aheadS: aboveZero, meterEv: aboveZero });

/** An answer, and the state to ask the next frame with. */
export interface FollowStep extends FollowAnswer {
  /** What is known now; the one given is not changed. */
  readonly state: FollowState;
}

/**
 * The state before the first frame. Where the plan is that there is none, since the light is too dark, too bright or too fast
 * for the kit, it is followed as close as the kit can; the first answers say where it leaves the kit, and by how much.
 *
 * @param plan from {@link planShoot} or {@link readPlan}, possible or not
 * @param options how far ahead to plan, how steady the meter is
 * @returns what {@link followFrame} goes on from
 * @throws RangeError on options out of range, a plan that contradicts its own kit, or one without a span or a time that any
 *   shutter has
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { startFollow } from '@evenfall/core';
 *
 * startFollow(plan).frame; // → undefined
 * ```
 */
export function startFollow(plan: Plan, options: FollowOptions = {}): FollowState {
  checkPlan(plan);
  hold('options', options, OPTIONS);
  const evening = eveningOf(planOrClosest(plan), options);
  return {
    kind: 'follow-state',
    evening,
    frame: undefined,
    camera: BLANK,
    trust: startTrust(evening.startMs),
    told: [],
    every: 1,
    doubted: undefined,
    reach: {},
    isTooFast: plan.kind === 'infeasible' && plan.infeasible.reason === 'too-fast',
  };
}

/** Keys alone: a misspelt one would leave the evening uncorrected in silence. What they hold is answered by warnings. */
const INPUT = group(
  {},
  {
    ...anything('frame', 'atMs', 'jump', 'lost', 'done', 'missed'),
    reading: ifGroup(onlyKeys('atMs', 'ev100', 'sure', 'bound')),
    // An answer's own setting, or a frame of the plan, may be given back as it is.
    setting: onlyKeys('shutter', 'iso', 'aperture', 'filters', ...OF_A_FRAME),
    kit: group(
      {},
      {
        ...anything('filters', 'maxFilterChanges'),
        shutter: onlyKeys('shortest', 'longest'),
        iso: onlyKeys('lowest', 'highest'),
      },
    ),
  },
);

/**
 * The setting for a frame and the cues ahead, from what is known by then. Until a reading is used, and while
 * the camera stands where the plan has it, the plan itself is the answer. A cue that is due is taken as done
 * unless it is reported missed. Frames that nobody asked for: a person is taken to have done the cues told
 * ahead, a rig not; where that were more than the next cue, the time must be borne out by the next input, or by `jump`.
 * What of the input cannot be used is told by a warning, never thrown.
 *
 * @param state from {@link startFollow}, or of the answer before; it is not changed
 * @param input the frame asked for, and what is known by then
 * @returns the answer, with the next state
 * @throws RangeError on a key of the input that is none, and on a state that is none: an answer, a frame, or a copy through JSON
 * @example
 * ```ts
 * // With the plan of planShoot's example.
 * import { followFrame, startFollow } from '@evenfall/core';
 *
 * const first = followFrame(startFollow(plan), { frame: 0 });
 * first.setting.shutter === plan.frames[0]?.shutter; // → true
 * // A meter says that it is a stop darker than forecast.
 * const { at, sceneEv100 } = plan.frames[1]!;
 * const reading = { atMs: Date.parse(at), ev100: sceneEv100 - 1 };
 * followFrame(first.state, { frame: 1, reading }).offsetEv; // → -1.0
 * ```
 */
export function followFrame(state: FollowState, input: FollowInput): FollowStep {
  hold('input', input, INPUT);
  const { told: toldBefore, doubted, frame: last, every } = checkState(state);
  const moment = momentOf(state.evening, input, { last, told: toldBefore, doubted });
  const { frame } = moment;
  const warnings: FollowWarning[] = moment.warning === undefined ? [] : [moment.warning];

  const passed = passFrames(state, moment, warnings);
  const kitted = withReportedKit(state.evening, passed.camera, passed.told, input, frame);
  const { evening } = kitted;
  warnings.push(...kitted.warnings);
  const before = kitted.camera.present ?? plannedBefore(evening, frame);
  const reported = applyReports(evening, kitted.camera, input, moment, kitted.told, before);
  warnings.push(...reported.warnings);
  const trust = learnt(rewound(state.trust, evening, moment), evening, input, moment, warnings);

  const targets = targetsAhead(evening, trust, frame);
  // Before the first frame nothing stands yet, and what to begin with may still change.
  const begun = frame > 0 || reported.camera.fixed;
  const camera =
    begun && reported.camera.present === undefined
      ? { ...reported.camera, present: before }
      : reported.camera;
  // What a rig might have done on the frames it did not ask for, it does at this one.
  const passedBy = moment.kind === 'on' ? movedOn(evening, trust, camera, last, frame) : camera;
  const ahead = cuesAhead(
    evening,
    trust,
    begun ? passedBy : { ...camera, present: undefined },
    frame,
    targets,
  );
  const due = begun && ahead.cues[0]?.frame === frame ? ahead.cues[0] : undefined;
  const then: CameraState =
    due !== undefined
      ? withCue(evening, passedBy, due)
      : { ...passedBy, present: ahead.start, fixed: frame > 0 || camera.fixed };
  const turned = kitted.outside !== undefined && begun && input.setting === undefined;
  const after =
    passedBy === camera && !(turned && due === undefined) ? then : movedAtOnce(evening, camera, then, frame);
  const told = due === undefined ? ahead.cues : ahead.cues.slice(1);
  const reach = reachAhead(evening, trust, frame, targets, state.reach);
  const everyNow = last === undefined || frame <= last ? every : frame - last;
  const next: FollowState = {
    kind: 'follow-state',
    evening,
    frame,
    every: everyNow,
    camera: after,
    trust,
    told,
    doubted: moment.doubted,
    reach: reach.told,
    isTooFast: false,
  };
  const dueFrom = camera.present && settingAt(evening, camera.present, targets[0]!);
  const tooFast = state.isTooFast ? tooFastIn(evening) : undefined;
  if (tooFast !== undefined) warnings.push(tooFast);
  const isDue = after.cueCount > camera.cueCount;
  const whole = due?.whole === true || passedBy !== camera || turned;
  const from = turned ? kitted.outside : dueFrom;
  const answer = answerOf(
    next,
    targets,
    isDue && from !== undefined ? { before: from, whole } : undefined,
    last,
    [...warnings, ...reach.warnings],
  );
  // Where the first time of all is doubted nobody has joined yet.
  const answered = moment.kind === 'ahead' ? last : frame;
  return { ...answer, cuesTaken: takenCues(state, passed.taken), state: { ...next, frame: answered } };
}

/**
 * What is said of the kit, applied. `outside`: what stands on the camera, where the kit does not hold it any more; a filter
 * that is lost is not on it.
 */
function withReportedKit(
  evening: Evening,
  camera: CameraState,
  told: readonly RampCue[],
  { lost, kit }: FollowInput,
  frame: number,
): {
  readonly evening: Evening;
  readonly camera: CameraState;
  readonly told: readonly RampCue[];
  readonly outside?: FollowSetting;
  readonly warnings: readonly FollowWarning[];
} {
  const same = { evening, camera, told, warnings: [] };
  if (lost === undefined && kit === undefined) return same;
  const { plan, frameCount } = evening;
  const before = evening.kitNow ?? plannedKit(plan.shoot);
  const read = kitAfter(plan.shoot, frameCount, before, { lost, kit }, camera.filterChanges);
  if (read.kind === 'wrong') return { ...same, warnings: [warningOf(read.warning)] };
  const next = withKit(evening, read.now);
  const cast = cameraRecast(evening, next, camera, frame);
  const { present } = camera;
  const changed = { evening: next, camera: cast.camera, told: [], warnings: [] };
  if (!cast.outside || present === undefined) return changed;
  const stood = settingAt(evening, present, plan.frames[frame]!.targetEv100);
  const filters = stood.filters.filter((name) => name !== lost);
  return { ...changed, outside: { ...stood, filters } };
}

/** The camera and the cues still to come after the frames between the last answer and this one. */
function passFrames(
  { evening, frame: last, every, camera, told }: FollowState,
  { frame, kind }: Moment,
  warnings: FollowWarning[],
): { camera: CameraState; told: readonly RampCue[]; taken: readonly RampCue[] } {
  if (last === undefined) {
    if (frame > 0) warnings.push(warningOf({ kind: 'joined-late', frame }));
    return { camera, told, taken: [] };
  }
  if (kind === 'rewound') return { camera: shifted(camera, last - frame), told: [], taken: [] };
  const passed = told.filter((cue) => cue.frame < frame);
  // Whoever asks but now and then has been told so once.
  const asBefore = frame - last <= 1.5 * every;
  if (frame - last > evening.aheadFrames) {
    const told = { frames: frame - last - 1, toldFrames: evening.aheadFrames };
    warnings.push(warningOf({ kind: 'clock-ahead', reason: 'past-cues-told', ...told }));
  } else if (passed.length > 0 && isRig(evening) && !asBefore) {
    warnings.push(warningOf({ kind: 'clock-ahead', reason: 'cues-not-done', cues: passed.length }));
  }
  if (isRig(evening)) return { camera, told: told.slice(passed.length), taken: [] };
  return {
    camera: passed.reduce((each, cue) => withCue(evening, each, cue), camera),
    told: told.slice(passed.length),
    taken: passed,
  };
}

/**
 * A rig's camera as it would stand before a frame, had it asked for each one since the frame answered last: as far as the
 * limits let it move in that time, and no farther. The same one where nothing has to move, or somebody else has set it.
 */
function movedOn(
  evening: Evening,
  trust: Trust,
  camera: CameraState,
  last: number | undefined,
  frame: number,
): CameraState {
  if (!isRig(evening) || last === undefined || frame - last < 2 || camera.behind !== undefined) return camera;
  const from = last + 1;
  const { cues } = cuesAhead(evening, trust, camera, from, targetsAhead(evening, trust, from));
  return cues.filter((cue) => cue.frame < frame).reduce((each, cue) => withCue(evening, each, cue), camera);
}

/** Where a plan that is none does not follow light the kit could render: it changes faster than cues may come. */
function tooFastIn({ plan, reach, shoot }: Evening): FollowWarning | undefined {
  const { toleranceEv } = shoot.limits;
  const byEv = ({ affected, errorEv, targetEv100 }: PlanFrame) => {
    const isInReach =
      targetEv100 >= reach.darkEv100 - toleranceEv && targetEv100 <= reach.brightEv100 + toleranceEv;
    return affected || !isInReach ? 0 : Math.abs(errorEv) - toleranceEv;
  };
  const first = plan.frames.find((frame) => byEv(frame) >= LEAST_BEYOND_EV);
  if (first === undefined) return undefined;
  const worstEv = plan.frames.reduce((most, frame) => Math.max(most, byEv(frame)), 0);
  return warningOf({ kind: 'too-fast', frame: first.frame, at: first.at, worstEv }, plan.clocksBack);
}

function isRig({ plan }: Evening): boolean {
  return plan.shoot.crew === 'rig';
}

/** What the plan has on the camera before a frame. */
function plannedBefore({ planned }: Evening, frame: number): State {
  return planned[Math.max(0, frame - 1)]!;
}

/** A clock set back must not leave readings of a time to come. */
function rewound(trust: Trust, evening: Evening, { kind, frame }: Moment): Trust {
  if (kind !== 'rewound') return trust;
  const nowMs = frameStartMs(evening, frame);
  const { offset, lastUsedMs } = trust;
  return {
    ...trust,
    offset: { ...offset, atMs: Math.min(offset.atMs, nowMs) },
    lastUsedMs: lastUsedMs === undefined ? undefined : Math.min(lastUsedMs, nowMs),
    doubt: undefined,
  };
}

type OldReason = Extract<FollowWarningFacts, { kind: 'reading-old' }>['reason'];

function learnt(
  trust: Trust,
  evening: Evening,
  { reading }: FollowInput,
  { frame, kind }: Moment,
  warnings: FollowWarning[],
): Trust {
  if (reading === undefined || reading === null) return trust;
  const { atMs, ev100 } = reading;
  const unused = (said: FollowWarningFacts) => {
    warnings.push(warningOf(said));
    return trust;
  };
  const failed = (what: 'ev' | 'time', given: number) =>
    unused({ kind: 'reading-failed', what, given: String(given) });
  const old = (reason: OldReason) => unused({ kind: 'reading-old', ev100, reason });
  // The logarithm of a black frame, or what a meter says where it says nothing.
  if (!Number.isFinite(ev100)) return failed('ev', ev100);
  if (!Number.isFinite(atMs)) return failed('time', atMs);
  const toCome = atMs > frameStartMs(evening, frame + 1);
  if (kind === 'ahead') return old('doubtful-time');
  if (toCome) return old('to-come');
  if (trust.lastUsedMs !== undefined && atMs < trust.lastUsedMs) return old('older-than-used');
  if (atMs < evening.startMs - LONGEST_BEFORE_MS) return old('another-day');
  if (kind === 'back') return old('doubtful-time');
  const taken = takeReading(trust, reading, (ms) => plannedLightAt(evening, ms), evening.options.meterEv);
  if (taken.warning !== undefined) warnings.push(taken.warning);
  return taken.trust;
}
