// What is said of a state: setting, cues, offset, band, and what to look out for.

import { bandAround, type EvBand, METER_EV } from '../light/band.js';
import { driftEv } from '../light/drift.js';
import { changesBetween } from '../plan/cues.js';
import type { PlanChange } from '../plan/types.js';
import type { State } from '../ramp/moves.js';
import type { RampCue } from '../ramp/way.js';
import { warningOf } from './english.js';
import { type Evening, frameStartMs, frameText } from './evening.js';
import { settingAt } from './setting.js';
import type { FollowState } from './state.js';
import { expectedOffsetEv, type Trust } from './trust.js';
import type { FollowAnswer, FollowCue, FollowSetting } from './types.js';
import type { FollowWarning } from './warning.js';

const NO_READING_MS = 10 * 60_000;

/** Everything but the cues passed over. */
export function answerOf(
  { evening, frame: answered, camera, trust, told }: FollowState,
  targets: Float64Array,
  due: { readonly before: FollowSetting; readonly whole: boolean } | undefined, // a cue that is due now
  answeredBefore: number | undefined, // the frame of the answer before this one
  ofReports: readonly FollowWarning[],
): Omit<FollowAnswer, 'cuesTaken'> {
  const frame = answered!;
  const present = camera.present!;
  const targetEv100 = targets[0]!;
  const setting = settingAt(evening, present, targetEv100);
  const planned = evening.plan.frames[frame]!;
  const nowMs = frameStartMs(evening, frame);
  const offsetEv = expectedOffsetEv(trust, nowMs, planned.sceneEv100);
  const sceneEv100 = planned.sceneEv100 + offsetEv;
  const first = camera.cueCount + 1;
  const states = [present, ...told.map(({ to }) => to)];
  return {
    frame,
    at: frameText(evening, frame),
    setting,
    ...(due === undefined ? {} : { cue: cueDue(due) }),
    cuesAhead: told.map((cue, i) => cueText(evening, first + i, cue.frame, states[i]!, cue.to)),
    offsetEv,
    sceneEv100,
    ...bandOf(evening, trust, frame, sceneEv100),
    targetEv100,
    errorEv: setting.settingEv100 - targetEv100,
    affected: frame < camera.affectedUntil,
    readAgain: trust.doubt !== undefined,
    warnings: [...ofReports, ...silence(evening, trust, nowMs, answeredBefore)],
  };

  function cueDue({ before, whole }: NonNullable<typeof due>): FollowCue {
    const cue = cueOf(evening, camera.cueCount, frame, changesBetween(before, setting));
    return whole ? { ...cue, setNow: setting } : cue;
  }
}

function cueText(evening: Evening, cue: number, frame: number, before: State, after: State): FollowCue {
  const targetEv = evening.plan.frames[frame]!.targetEv100;
  const changes = changesBetween(settingAt(evening, before, targetEv), settingAt(evening, after, targetEv));
  return cueOf(evening, cue, frame, changes);
}

function cueOf(evening: Evening, cue: number, frame: number, changes: readonly PlanChange[]): FollowCue {
  const { bulb } = evening.live;
  return {
    cue,
    frame,
    at: frameText(evening, frame),
    // A shutter that is timed freely moves all the time; that is no cue.
    changes: bulb === undefined ? changes : changes.filter(({ control }) => control !== 'shutter'),
  };
}

/** The plan's band before any reading; after one, what skies move in the time since, but never more than the plan's. */
function bandOf(
  { plan, startMs, intervalMs }: Evening,
  trust: Trust,
  frame: number,
  sceneEv100: number,
): EvBand {
  const planned = plan.frames[frame]!;
  if (trust.lastUsedMs === undefined) return { lowEv100: planned.lowEv100, highEv100: planned.highEv100 };
  const minutes = Math.max(0, startMs + frame * intervalMs - trust.lastUsedMs) / 60_000;
  const widest = (planned.highEv100 - planned.lowEv100) / 2;
  const ev = Math.max(METER_EV, Math.min(widest, driftEv(minutes, planned.sunAltitudeDeg)));
  return bandAround(sceneEv100, { lowEv: -ev, highEv: ev });
}

/** Told when ten minutes have gone by, and every ten after: on every frame it would hide the other warnings. */
function silence(
  evening: Evening,
  { lastUsedMs }: Trust,
  nowMs: number,
  answeredBefore: number | undefined,
): FollowWarning[] {
  if (lastUsedMs === undefined) return [];
  const spells = (atMs: number) => Math.floor((atMs - lastUsedMs) / NO_READING_MS);
  const toldOf = answeredBefore === undefined ? 0 : spells(frameStartMs(evening, answeredBefore));
  if (spells(nowMs) <= Math.max(0, toldOf)) return [];
  const minutes = Math.round((nowMs - lastUsedMs) / 60_000);
  return [warningOf({ kind: 'no-reading', minutes })];
}

/** Cues told ahead that are taken as done, numbered on from what the camera had before them. */
export function takenCues({ evening, camera }: FollowState, taken: readonly RampCue[]): FollowCue[] {
  const states = [camera.present, ...taken.map(({ to }) => to)];
  return taken.map((cue, i) =>
    cueText(evening, camera.cueCount + 1 + i, cue.frame, states[i] ?? cue.to, cue.to),
  );
}
