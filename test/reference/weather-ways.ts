// Weather met by following, by two simple ways, and by hindsight, under the same limits.

import type { PlanMade } from '@evenfall/core';
import { followFrame, startFollow } from '../../packages/core/src/follow/follow.js';
import { planOf } from './evening-shoot.js';
import { hindsightRms } from './hindsight.js';
import { meterStepper } from './meter-stepper.js';
import { smoothingStepper } from './smoothing-stepper.js';
import { type Kind, weatherOf } from './weather.js';

const SHOOT = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: 47, longitudeDeg: 8, timeZone: 'Europe/Zurich' },
  date: '2026-05-11',
  span: { startAt: '2026-05-11T20:07:39+02:00', endAt: '2026-05-11T22:12:35+02:00' },
  intervalS: 8,
  camera: {
    shutter: { shortest: '1/4000', longest: '6' },
    iso: { lowest: 100, highest: 25600 },
    aperture: '4',
  },
};
// By exact values: 1/4000 s and ISO 100, and 6.35 s and ISO 25,600, at f/4.
const ENDS = { stepsPerStop: 3, darkEv100: 4 - 8 / 3 - 8, brightEv100: 4 + 12 };

/** One row of the table. */
export interface Scene {
  readonly crew: 'hand' | 'rig';
  readonly kind: Kind;
  readonly everyS: number; // between readings; 0: at every frame
  readonly meterEv: number; // spread of the meter
  readonly stated?: boolean; // whether following was told that spread
}

export const SCENES: readonly Scene[] = [
  ...(['calm', 'drift', 'one bank', 'three banks', 'lamps'] as const).map(
    (kind): Scene => ({ crew: 'rig', kind, everyS: 0, meterEv: 0.05 }),
  ),
  { crew: 'rig', kind: 'calm', everyS: 0, meterEv: 0.3 },
  { crew: 'rig', kind: 'calm', everyS: 0, meterEv: 0.3, stated: true },
  { crew: 'rig', kind: 'one bank', everyS: 0, meterEv: 0.3 },
  ...(['calm', 'drift', 'one bank', 'three banks', 'lamps'] as const).map(
    (kind): Scene => ({ crew: 'hand', kind, everyS: 60, meterEv: 0.05 }),
  ),
  ...(['drift', 'one bank', 'three banks'] as const).map(
    (kind): Scene => ({ crew: 'hand', kind, everyS: 600, meterEv: 0.05 }),
  ),
];

const plans = new Map<string, PlanMade>();

export function weatherPlan(crew: Scene['crew']): PlanMade {
  const made = plans.get(crew) ?? planOf({ ...SHOOT, crew });
  plans.set(crew, made);
  return made;
}

export interface Met {
  readonly rms: number;
  readonly worst: number;
  readonly turns: number;
  readonly reversals: number;
}

export interface MetEvening {
  readonly stepping: Met;
  readonly smoothing: Met;
  readonly follow: Met;
  readonly hindsight: number;
}

export function metWeather({ crew, kind, everyS, meterEv, stated }: Scene, seed: number): MetEvening {
  const plan = weatherPlan(crew);
  const { intervalS, limits } = plan.shoot;
  const forecast = plan.frames.map(({ targetEv100 }) => targetEv100);
  const scene = plan.frames.map(({ sceneEv100 }) => sceneEv100);
  const { offsetEv, meter } = weatherOf(kind, seed, scene, intervalS);
  const wanted = forecast.map((ev, i) => ev + offsetEv[i]!);
  const every = Math.max(1, Math.round(everyS / intervalS));
  // A frame is decided on what was read at the one before it.
  const metered = wanted.map((_, frame) => {
    const read = Math.max(0, frame - 1);
    return frame === 0 || read % every === 0 ? wanted[read]! + meterEv * meter[read]! : undefined;
  });
  const spacing = Math.max(1, Math.ceil(limits.secondsBetweenCues / intervalS));
  const dial = { ...ENDS, spacing };
  return {
    stepping: metOf(meterStepper(metered, { ...dial, thresholdEv: 1 / 3 }), wanted),
    smoothing: metOf(smoothingStepper(forecast, metered, dial, { intervalS, memoryS: SMOOTH_S }), wanted),
    follow: metOf(followed(plan, metered, stated === true ? meterEv : undefined), wanted),
    hindsight: hindsightRms(wanted, dial),
  };
}

/** Our choice: a minute, as somebody weighs the last few frames. */
const SMOOTH_S = 60;

function followed(
  plan: PlanMade,
  metered: readonly (number | undefined)[],
  meterEv: number | undefined,
): number[] {
  let state = startFollow(plan, meterEv === undefined ? {} : { meterEv });
  return metered.map((ev, frame) => {
    const { at, sceneEv100, targetEv100 } = plan.frames[Math.max(0, frame - 1)]!;
    const reading =
      ev === undefined ? undefined : { atMs: Date.parse(at), ev100: ev - targetEv100 + sceneEv100 };
    const step = followFrame(state, { frame, ...(reading === undefined ? {} : { reading }) });
    state = step.state;
    return step.setting.settingEv100;
  });
}

function metOf(settings: readonly number[], wanted: readonly number[]): Met {
  let squares = 0;
  let worst = 0;
  let turns = 0;
  let reversals = 0;
  let heading = 0;
  settings.forEach((ev, i) => {
    const offEv = ev - wanted[i]!;
    squares += offEv ** 2;
    worst = Math.max(worst, Math.abs(offEv));
    const moved = i === 0 ? 0 : Math.sign(Math.round((ev - settings[i - 1]!) * 1e6));
    if (moved === 0) return;
    turns++;
    if (heading !== 0 && moved !== heading) reversals++;
    heading = moved;
  });
  return { rms: Math.sqrt(squares / settings.length), worst, turns, reversals };
}
