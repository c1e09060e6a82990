// What stays the same while an evening is followed: the plan, its kit, its light by frame.

import { given, positive } from '../check.js';
import { dialStep } from '../exposure/dial.js';
import { forecastOver } from '../plan/forecast.js';
import { problemFrom } from '../plan/targets.js';
import type { PlanFrame, PlanMade } from '../plan/types.js';
import { weightsOf } from '../ramp/lattice.js';
import { type LiveKit, liveKit } from '../ramp/live/live.js';
import type { State } from '../ramp/moves.js';
import { kitOf, type NamedKit } from '../shoot/kit.js';
import type { Shoot } from '../shoot/shoot.js';
import { parseRfc3339, rfc3339, type Zone, zoneOf } from '../sky/clock.js';
import { digestOf } from './digest.js';
import { type KitNow, plannedKit, shootWithKit } from './kit-now.js';
import { nearestState } from './setting.js';
import type { FollowOptions, FollowOptionsFull } from './types.js';

/** A filter change of the plan. */
export interface PlannedChange {
  readonly targetEv100: number; // at which it comes
  readonly stack: number; // it leads to
}

export interface Evening {
  readonly plan: PlanMade;
  readonly planDigest: string; // tells it from others
  readonly options: FollowOptionsFull;
  /** The plan's, with the kit as it is now. */
  readonly shoot: Shoot;
  /** Where it is not the plan's any more. */
  readonly kitNow: KitNow | undefined;
  readonly kit: NamedKit;
  readonly live: LiveKit;
  readonly zone: Zone;
  readonly startMs: number;
  readonly intervalMs: number;
  readonly frameCount: number;
  readonly aheadFrames: number;
  /** Darkest and brightest target the kit renders without error. */
  readonly reach: { readonly darkEv100: number; readonly brightEv100: number };
  /** The plan's own setting of each frame; see ramp/moves.ts. */
  readonly planned: readonly State[];
  /** Its filter changes. */
  readonly changes: readonly PlannedChange[];
}

// What a squared stop of error costs on the next frame, found on simulated evenings (docs/follow.md): an evening is
// followed about as closely as its plan follows the forecast, in about as many cues. 10 where the plan keeps to 0.12 stop
// rms, as within a tolerance of a quarter; 1 where it keeps to 0.2, as where the tolerance is wide and hands weigh cues;
// a power law through both. Far ahead, where the light is not known so well, a twelfth. The plan's own price is the least.
const NARROW = { rmsEv: 0.12, error: 10 };
const WIDE = { rmsEv: 0.2, error: 1.06 };
// Whatever its plan allows, an evening is followed no more loosely than this. Found on simulated weather: at 0.18 hands come
// out a tenth worse than by a smoothed meter, here as well, in no more turns.
const LOOSEST_RMS_EV = 0.172;
const POWER = Math.log(NARROW.error / WIDE.error) / Math.log(WIDE.rmsEv / NARROW.rmsEv);
const AHEAD_SHARE = 1 / 12;
const FADE_S = 180;
const BEYOND_TOLERANCE = 2;
const HYSTERESIS_PER_S = 0.15 / 8;
// A forecast does not turn, and to step against it is dear; light that a meter sees does, under lamps that were not known.
// Found on simulated evenings: at 6, a hand comes out worse under such lamps than by stepping after the meter.
const AGAINST_LIGHT = 4;

const AHEAD_S = 1200;
// Our choice: the same meter, pointed alike, differs from one reading to the next by less than a tenth of a stop.
const METER_SPREAD_EV = 0.07;

/** @throws RangeError on options out of range, or a plan whose settings are not those of its kit */
export function eveningOf(plan: PlanMade, options: FollowOptions, kitNow?: KitNow): Evening {
  const { frames } = plan;
  const shoot = kitNow === undefined ? plan.shoot : shootWithKit(plan.shoot, kitNow);
  const kit = kitOf(shoot);
  const targets = frames.map(({ targetEv100 }) => targetEv100);
  const asked = problemFrom(shoot, kit, targets);
  const problem = { ...asked, weights: { againstLight: AGAINST_LIGHT, ...given(asked.weights) } };
  const weights = weightsOf(problem);
  // Dials of third and half stops leave errors of about as much: no plan asks for more.
  const rmsEv = Math.min(LOOSEST_RMS_EV, Math.max(NARROW.rmsEv, plan.summary.rmsErrorEv));
  const error = NARROW.error * (NARROW.rmsEv / rmsEv) ** POWER;
  const live = liveKit(problem, {
    errorNow: Math.max(weights.error, error),
    errorAhead: Math.max(weights.error, AHEAD_SHARE * error),
    fadeS: FADE_S,
    beyondTolerance: BEYOND_TOLERANCE,
    hysteresisPerS: HYSTERESIS_PER_S,
  });
  const startMs = parseRfc3339(frames[0]?.at ?? '');
  if (startMs === undefined) throw new RangeError('the plan must have a first frame with a time');
  const aheadS = positive('aheadS', options.aheadS ?? AHEAD_S);
  const meterEv = positive('meterEv', options.meterEv ?? METER_SPREAD_EV);
  // Where filter changes are few, one too early could leave the night without. A freely timed shutter is quick to look at all
  // that is left; for dials see filters-ahead.ts.
  const looksFar = shoot.limits.maxFilterChanges !== undefined && shoot.camera.bulb;
  const planned = frames.map((frame) => plannedState(frame, kit, live, kitNow !== undefined));
  return {
    plan,
    planDigest: planDigest(plan),
    options: { aheadS, meterEv },
    shoot,
    kitNow,
    kit,
    live,
    zone: zoneOf(shoot.place),
    startMs,
    intervalMs: shoot.intervalS * 1000,
    frameCount: frames.length,
    aheadFrames: looksFar ? frames.length : Math.max(1, Math.ceil(aheadS / shoot.intervalS)),
    reach: reachOf(live),
    planned,
    changes: plannedChanges({ planned, plan }),
  };
}

/** The same evening with another kit. */
export function withKit({ plan, options }: Evening, now: KitNow): Evening {
  const isPlanned = digestOf(now) === digestOf(plannedKit(plan.shoot));
  return eveningOf(plan, options, isPlanned ? undefined : now);
}

/** By what was asked for, and each frame's light and setting. */
export function planDigest({ shoot, frames }: PlanMade): string {
  const rows = frames.map(({ sceneEv100, targetEv100, shutter, iso, aperture, filters }) => {
    return [sceneEv100, targetEv100, shutter, iso, aperture, filters];
  });
  return digestOf({ shoot, at: frames[0]?.at, rows });
}

function reachOf({ lattice, bulb }: LiveKit): Evening['reach'] {
  const { stops, stepsPerStop, apertureMin, apertureCount, shutterMin, shutterMax, isoMin, isoCount } =
    lattice;
  const longest = bulb?.longestStep ?? shutterMin;
  const shortest = bulb?.shortestStep ?? shutterMax;
  return {
    darkEv100: (apertureMin + longest - (isoMin + isoCount - 1)) / stepsPerStop + Math.min(...stops),
    brightEv100: (apertureMin + apertureCount - 1 + shortest - isoMin) / stepsPerStop + Math.max(...stops),
  };
}

/** The plan's setting of a frame, or the nearest to it where the kit is another now. */
function plannedState(frame: PlanFrame, kit: NamedKit, live: LiveKit, isOther: boolean): State {
  const { stepsPerStop, bulb } = kit.ramp;
  const iso = dialStep('iso', String(frame.iso), stepsPerStop);
  const aperture = dialStep('aperture', frame.aperture, stepsPerStop);
  const shutter = bulb ? 0 : dialStep('shutter', frame.shutter, stepsPerStop);
  if (iso !== undefined && aperture !== undefined && shutter !== undefined) {
    const marks = { iso, aperture, shutter: bulb ? undefined : shutter, filters: frame.filters };
    const { state, outside } = nearestState({ kit, live }, marks);
    if (isOther || !outside) return state;
  }
  throw new RangeError(`frame ${frame.frame} of the plan stands at a setting its kit does not have`);
}

/** The plan's filter changes, in order. */
function plannedChanges({ planned, plan }: Pick<Evening, 'planned' | 'plan'>): PlannedChange[] {
  return planned.flatMap(({ stack }, i) =>
    i > 0 && stack !== planned[i - 1]!.stack ? [{ targetEv100: plan.frames[i]!.targetEv100, stack }] : [],
  );
}

/** When a frame starts, UTC epoch milliseconds. */
export function frameStartMs({ startMs, intervalMs }: Evening, frame: number): number {
  return startMs + frame * intervalMs;
}

/** RFC 3339 in the place's offset. */
export function frameText(evening: Evening, frame: number): string {
  return timeText(evening, frameStartMs(evening, frame));
}

/** The same of any time that a date may have. */
export function timeText({ zone }: Evening, atMs: number): string {
  return rfc3339(atMs, zone);
}

/** The light at a time as the plan has it: read between its frames, worked out again before and after them. */
export function plannedLightAt(
  evening: Evening,
  atMs: number,
): { readonly sceneEv100: number; readonly sunAltitudeDeg: number } {
  const { plan, startMs, intervalMs, frameCount } = evening;
  const at = (atMs - startMs) / intervalMs;
  if (at < 0 || at > frameCount - 1) {
    const { sceneEv100, sky } = forecastOver(plan.shoot, Float64Array.of(atMs));
    return { sceneEv100: sceneEv100[0]!, sunAltitudeDeg: sky[0]!.sunAltitudeDeg };
  }
  const a = plan.frames[Math.floor(at)]!;
  const b = plan.frames[Math.min(frameCount - 1, Math.floor(at) + 1)]!;
  const share = at - Math.floor(at);
  return {
    sceneEv100: a.sceneEv100 + share * (b.sceneEv100 - a.sceneEv100),
    sunAltitudeDeg: a.sunAltitudeDeg + share * (b.sunAltitudeDeg - a.sunAltitudeDeg),
  };
}
