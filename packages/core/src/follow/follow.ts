// An evening followed live: readings as they come in, the setting for each frame and the cues ahead out. The scene's
// forecast is moved by what the readings say, and the ramp is planned again from the setting now on the camera.
// No clock and no memory but the state, which is never changed: each answer brings the next one.

import { finite } from '../check.js';
import { changesBetween } from '../cues.js';
import { METER_EV } from '../light/band.js';
import { driftEv } from '../light/drift.js';
import type { PlanMade } from '../plan-format.js';
import { type LiveCue, planAhead } from '../ramp/live.js';
import type { State } from '../ramp/moves.js';
import { BLANK, type CameraState, shifted, withCue } from './camera.js';
import { type Evening, eveningOf, frameStartMs, frameText, plannedLightAt } from './evening.js';
import { type Moment, momentOf, type Rewinds } from './moment.js';
import { offsetAt, startOffset } from './offset-state.js';
import { hear } from './reports.js';
import { sameState, settingAt } from './setting.js';
import { type Trust, takeReading } from './trust.js';
import type { FollowAnswer, FollowCue, FollowInput, FollowOptions, FollowWarning } from './types.js';

/** All that is known so far. Plain and never changed; hold on to any of them to go back. */
export interface FollowState {
  readonly evening: Evening;
  readonly frame: number | undefined; // answered last
  readonly camera: CameraState;
  readonly trust: Trust;
  readonly told: readonly LiveCue[]; // cues told ahead with the last answer, `frame` counted from the shoot's first
  readonly rewinds: Rewinds | undefined;
}

export interface FollowStep extends FollowAnswer {
  readonly state: FollowState;
}

const NO_READING_MS = 10 * 60_000;

/**
 * The state before the first frame.
 *
 * @throws RangeError on options out of range, or a plan that contradicts its own kit
 */
export function startFollow(plan: PlanMade, options: FollowOptions = {}): FollowState {
  const evening = eveningOf(plan, options);
  return {
    evening,
    frame: undefined,
    camera: BLANK,
    trust: { offset: startOffset(evening.startMs), lastUsedMs: undefined, doubt: undefined },
    told: [],
    rewinds: undefined,
  };
}

/**
 * The setting for a frame and the cues ahead, from what is known by then. Until a reading is used, and while the
 * camera stands where the plan has it, the plan itself is the answer. A cue that is due is taken as done unless
 * it is reported missed. Frames that nobody asked for: a person is taken to have done the cues told ahead, a rig not.
 *
 * @throws RangeError on numbers that are not finite, or a setting the camera does not have
 */
export function followFrame(state: FollowState, input: FollowInput): FollowStep {
  const { evening } = state;
  const moment = momentOf(evening, input, state.frame, state.rewinds);
  const { frame } = moment;
  const warnings: FollowWarning[] = moment.warning === undefined ? [] : [moment.warning];

  const passed = passFrames(state, moment, warnings);
  const before = passed.camera.present ?? plannedBefore(evening, frame);
  const heard = hear(evening, passed.camera, input, moment, passed.told, before);
  warnings.push(...heard.warnings);
  const trust = learnt(rewound(state.trust, evening, moment), evening, input, moment, warnings);

  const targets = targetsAhead(evening, trust, frame);
  // Before the first frame nothing stands yet, and what to begin with may still change.
  const begun = frame > 0 || heard.camera.fixed;
  const camera =
    begun && heard.camera.present === undefined ? { ...heard.camera, present: before } : heard.camera;
  const ahead = cuesAhead(evening, trust, begun ? camera : { ...camera, present: undefined }, frame, targets);
  const due = begun && ahead.cues[0]?.frame === frame ? ahead.cues[0] : undefined;
  const after: CameraState =
    due !== undefined
      ? withCue(evening, camera, due)
      : { ...camera, present: ahead.start, fixed: frame > 0 || camera.fixed };
  const told = due === undefined ? ahead.cues : ahead.cues.slice(1);
  const next: FollowState = { evening, frame, camera: after, trust, told, rewinds: moment.rewinds };
  return {
    ...answerOf(next, targets, due === undefined ? undefined : camera.present, warnings),
    state: next,
  };
}

/** The camera and the cues still to come after the frames between the last answer and this one. */
function passFrames(
  { evening, frame: last, camera, told }: FollowState,
  { frame, kind }: Moment,
  warnings: FollowWarning[],
): { camera: CameraState; told: readonly LiveCue[] } {
  if (last === undefined) {
    if (frame > 0) {
      const text = `Joined at frame ${frame + 1}: the camera is taken to stand where the plan has it.`;
      warnings.push({ kind: 'joined-late', text });
    }
    return { camera, told };
  }
  if (kind === 'rewound') return { camera: shifted(camera, last - frame), told: [] };
  const passed = told.filter((cue) => cue.frame < frame);
  if (frame - last > evening.aheadFrames) {
    const text = `${frame - last - 1} frames were passed over; cues were told for the first ${evening.aheadFrames} of them.`;
    warnings.push({ kind: 'clock-ahead', text });
  } else if (passed.length > 0 && evening.plan.shoot.crew === 'rig') {
    const text = `Frames were passed over in which ${passed.length} cues were due: taken as not done.`;
    warnings.push({ kind: 'clock-ahead', text });
  }
  if (evening.plan.shoot.crew === 'rig') return { camera, told: told.filter((cue) => cue.frame >= frame) };
  return {
    camera: passed.reduce((each, cue) => withCue(evening, each, cue), camera),
    told: told.slice(passed.length),
  };
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
    offset: { ...offset, atMs: Math.min(offset.atMs, nowMs) },
    lastUsedMs: lastUsedMs === undefined ? undefined : Math.min(lastUsedMs, nowMs),
    doubt: undefined,
  };
}

function learnt(
  trust: Trust,
  evening: Evening,
  { reading }: FollowInput,
  { frame, kind }: Moment,
  warnings: FollowWarning[],
): Trust {
  if (reading === undefined) return trust;
  const atMs = finite('reading.atMs', reading.atMs);
  finite('reading.ev100', reading.ev100);
  const tooOld = trust.lastUsedMs !== undefined && atMs < trust.lastUsedMs;
  const toCome = atMs > frameStartMs(evening, frame + 1);
  if (kind === 'back' || tooOld || toCome) {
    const why = toCome
      ? 'is of a time to come'
      : tooOld
        ? 'is older than one already used'
        : 'comes with a doubtful time';
    warnings.push({
      kind: 'reading-old',
      text: `The reading of EV ${reading.ev100.toFixed(1)} ${why}: not used.`,
    });
    return trust;
  }
  const taken = takeReading(trust, reading, plannedLightAt(evening, atMs), evening.meterEv);
  if (taken.warning !== undefined) warnings.push(taken.warning);
  return taken.trust;
}

/** Corrected targets from a frame on, as far as is looked ahead. */
function targetsAhead(evening: Evening, { offset }: Trust, frame: number): Float64Array {
  const { plan, aheadFrames, frameCount } = evening;
  const count = Math.min(aheadFrames, frameCount - frame);
  return Float64Array.from({ length: count }, (_, i) => {
    return plan.frames[frame + i]!.targetEv100 + offsetAt(offset, frameStartMs(evening, frame + i));
  });
}

/** What stands before the frame, or what to begin with, and the cues from the frame on. */
function cuesAhead(
  evening: Evening,
  trust: Trust,
  camera: CameraState,
  frame: number,
  target: Float64Array,
): { start: State; cues: readonly LiveCue[] } {
  const { live, frameCount, plan } = evening;
  const { present, freeFrom, filterChanges } = camera;
  const asPlanned = trust.lastUsedMs === undefined ? planItself(evening, camera, frame) : undefined;
  if (asPlanned !== undefined) return asPlanned;
  const limit = plan.shoot.limits.maxFilterChanges ?? Number.POSITIVE_INFINITY;
  const { start, cues } = planAhead(live, {
    target,
    framesLeft: frameCount - frame,
    present,
    waitFrames: Math.max(0, freeFrom - frame),
    filterChangesLeft: Math.max(0, limit - filterChanges),
  });
  return { start, cues: cues.map((cue) => ({ ...cue, frame: frame + cue.frame })) };
}

/** The plan's own setting and cues, where the camera stands as the plan has it and its next cue may come in time. */
function planItself({ planned, aheadFrames }: Evening, { present, freeFrom }: CameraState, frame: number) {
  const start = present ?? planned[0]!;
  const from = [frame, frame + 1].find((each) => sameState(start, planned[Math.max(0, each - 1)]!));
  if (from === undefined) return undefined;
  const cues: LiveCue[] = [];
  for (let at = Math.max(1, from); at < Math.min(planned.length, frame + aheadFrames); at++) {
    const [before, to] = [planned[at - 1]!, planned[at]!];
    if (!sameState(before, to)) cues.push({ frame: at, to, filter: before.stack !== to.stack });
  }
  return cues[0] !== undefined && cues[0].frame < freeFrom ? undefined : { start, cues };
}

function answerOf(
  { evening, frame: answered, camera, trust, told }: FollowState,
  targets: Float64Array,
  before: State | undefined, // what a cue that is due now starts from
  heard: readonly FollowWarning[],
): FollowAnswer {
  const frame = answered!;
  const present = camera.present!;
  const targetEv100 = targets[0]!;
  const setting = settingAt(evening, present, targetEv100);
  const planned = evening.plan.frames[frame]!;
  const nowMs = frameStartMs(evening, frame);
  const offsetEv = offsetAt(trust.offset, nowMs);
  const sceneEv100 = planned.sceneEv100 + offsetEv;
  const first = camera.cueCount + 1;
  const states = [present, ...told.map(({ to }) => to)];
  return {
    frame,
    at: frameText(evening, frame),
    setting,
    ...(before === undefined ? {} : { cue: cueText(evening, camera.cueCount, frame, before, present) }),
    cuesAhead: told.map((cue, i) => cueText(evening, first + i, cue.frame, states[i]!, cue.to)),
    offsetEv,
    sceneEv100,
    band: bandOf(evening, trust, frame, sceneEv100),
    targetEv100,
    errorEv: setting.settingEv100 - targetEv100,
    affected: frame < camera.affectedUntil,
    warnings: [...heard, ...silence(trust, nowMs), ...beyondReach(evening, frame, targets)],
  };
}

function cueText(evening: Evening, cue: number, frame: number, before: State, after: State): FollowCue {
  const { bulb } = evening.live;
  const targetEv = evening.plan.frames[frame]!.targetEv100;
  const changes = changesBetween(settingAt(evening, before, targetEv), settingAt(evening, after, targetEv));
  return {
    cue,
    frame,
    at: frameText(evening, frame),
    // A shutter that is timed freely moves all the time; that is no cue.
    changes: bulb === undefined ? changes : changes.filter(({ control }) => control !== 'shutter'),
  };
}

/** The plan's band before any reading; after one, what skies move in the time since, but never more than the plan's. */
function bandOf({ plan, startMs, intervalMs }: Evening, trust: Trust, frame: number, sceneEv100: number) {
  const planned = plan.frames[frame]!;
  if (trust.lastUsedMs === undefined) return { lowEv100: planned.lowEv100, highEv100: planned.highEv100 };
  const minutes = Math.max(0, startMs + frame * intervalMs - trust.lastUsedMs) / 60_000;
  const widest = planned.highEv100 - planned.lowEv100;
  const ev = Math.max(METER_EV, Math.min(widest, driftEv(minutes, planned.sunAltitudeDeg)));
  return { lowEv100: sceneEv100 - ev, highEv100: sceneEv100 + ev };
}

function silence({ lastUsedMs }: Trust, nowMs: number): FollowWarning[] {
  if (lastUsedMs === undefined || nowMs - lastUsedMs < NO_READING_MS) return [];
  const minutes = Math.round((nowMs - lastUsedMs) / 60_000);
  return [
    { kind: 'no-reading', text: `No reading for ${minutes} minutes: the forecast is carried on from it.` },
  ];
}

function beyondReach(evening: Evening, frame: number, targets: Float64Array): FollowWarning[] {
  const { reach, plan } = evening;
  const { toleranceEv } = plan.shoot.limits;
  const dark = (ev: number) => reach.darkEv100 - ev - toleranceEv;
  const bright = (ev: number) => ev - reach.brightEv100 - toleranceEv;
  const first = targets.findIndex((ev) => Math.max(dark(ev), bright(ev)) > 1e-9);
  if (first < 0) return [];
  const side = dark(targets[first]!) > 0 ? 'dark' : 'bright';
  const worst = targets.reduce((most, ev) => Math.max(most, side === 'dark' ? dark(ev) : bright(ev)), 0);
  const when =
    first === 0 ? 'Now' : `From frame ${frame + first + 1} on (${frameText(evening, frame + first)})`;
  const text = `${when} the light is too ${side} for this kit, by up to ${worst.toFixed(1)} stops beyond tolerance.`;
  return [{ kind: 'out-of-reach', text }];
}
