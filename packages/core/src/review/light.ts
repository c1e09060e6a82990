// What the light really did: the frames' own levels, or readings, against the forecast; smoothed.

import { type FrameCalibration, readingOfFrame } from '../follow/frame-reading.js';
import { median } from './lens.js';
import type { PlanLight } from './plan-light.js';
import { type Sample, smoothedOver } from './smoothed.js';
import type { Shot } from './taken.js';
import type { ForecastCheck, ReviewOptions } from './types.js';

/** How bright a frame came out, in stops from metered level. */
export interface Level {
  readonly overMeteredEv: number;
  /** White or black hides something. */
  readonly isClipped: boolean;
}

/** @throws RangeError on a level that is none */
export function levelsOf(
  shots: readonly Shot[],
  timesMs: readonly number[],
  calibration: FrameCalibration | undefined,
): (Level | undefined)[] {
  return shots.map(({ taken: { level } }, i) => {
    if (level === undefined) return undefined;
    const { ev100, bound } = readingOfFrame(level, { atMs: timesMs[i]!, settingEv100: 0 }, calibration);
    return { overMeteredEv: ev100, isClipped: bound !== undefined };
  });
}

/** The light at each shot, and what it makes of the target. */
export interface LightThen {
  readonly from: 'forecast' | 'readings' | 'levels';
  /** One a shot. */
  readonly sceneEv100: readonly number[];
  /** One a shot. */
  readonly targetEv100: readonly number[];
  /** By how much a frame shows more than the smoothed light, one a shot; undefined where it has no level. */
  readonly awayEv: readonly (number | undefined)[];
  /** What of that is small enough to be shutter and aperture. */
  readonly flickerEv: readonly (number | undefined)[];
  readonly overForecastAt: (ms: number) => number;
  readonly check?: ForecastCheck;
}

interface LightSpec {
  readonly timesMs: readonly number[];
  readonly forecasts: readonly PlanLight[];
  readonly settings: readonly number[];
  /** Of the plan's frame in each shot's place. */
  readonly plannedErrors: readonly number[];
  /** NaN where a shot has no level. */
  readonly overForecastEv: readonly number[];
  readonly isClipped: readonly boolean[];
  /** Whether the filter on the lens is the plan's. */
  readonly isPlannedLens: readonly boolean[];
  readonly readings: NonNullable<ReviewOptions['readings']>;
  readonly lightAt: (ms: number) => PlanLight;
  readonly reachMs: number;
}

/** Fewer levels than these tell nothing of an evening. */
const LEAST_LEVELS = 5;

/**
 * Levels say how bright a frame is, not how bright it should be: a scene may be darker than grey. So they move the target only
 * as far as keeps the clip, as a whole, at the level that it was exposed for.
 */
export function lightOf(spec: LightSpec): LightThen {
  const { timesMs, forecasts, settings, plannedErrors, overForecastEv, isClipped } = spec;
  const levels = timesMs.flatMap((ms, i): Sample[] =>
    Number.isNaN(overForecastEv[i]!) || isClipped[i] ? [] : [{ ms, value: overForecastEv[i]! }],
  );
  const readings = [...spec.readings]
    .sort((a, b) => a.atMs - b.atMs)
    .map(({ atMs, ev100 }) => ({ ms: atMs, value: ev100 - spec.lightAt(atMs).sceneEv100 }));
  const from = levels.length >= LEAST_LEVELS ? 'levels' : readings.length > 0 ? 'readings' : 'forecast';
  const samples = { levels, readings, forecast: [] }[from];
  // Readings are few: each carries on to the next.
  const overForecastAt =
    from === 'levels'
      ? smoothedOver(samples, spec.reachMs)
      : from === 'readings'
        ? (ms: number) => between(samples, ms)
        : () => 0;
  const over = timesMs.map(overForecastAt);
  const targets = forecasts.map(({ targetEv100 }, i) => targetEv100 + over[i]!);
  const lacking = targets.map((target, i) => target - settings[i]! + plannedErrors[i]!);
  // A filter that was forgotten is nothing that the clip was exposed for.
  const meant = lacking.filter((_, i) => spec.isPlannedLens[i]);
  const keptEv = from === 'levels' ? median(meant.length > 0 ? meant : lacking) : 0;
  const awayEv = overForecastEv.map((ev, i) =>
    from !== 'levels' || Number.isNaN(ev) || isClipped[i] ? undefined : ev - over[i]!,
  );
  return {
    from,
    sceneEv100: forecasts.map(({ sceneEv100 }, i) => sceneEv100 + over[i]!),
    targetEv100: targets.map((target) => target - keptEv),
    awayEv,
    flickerEv: awayEv.map((ev) => (ev === undefined ? undefined : ev * trustIn(ev))),
    overForecastAt,
    ...(samples.length === 0 ? {} : { check: checkOf(samples, spec.lightAt) }),
  };
}

/** Whole up to a tenth of a stop, nothing from three tenths on: that is a light, or a cloud. Our choice. */
function trustIn(awayEv: number): number {
  return Math.min(1, Math.max(0, (0.3 - Math.abs(awayEv)) / 0.2));
}

function between(samples: readonly Sample[], ms: number): number {
  const after = samples.findIndex((each) => each.ms >= ms);
  if (after < 0) return samples[samples.length - 1]!.value;
  if (after === 0) return samples[0]!.value;
  const [a, b] = [samples[after - 1]!, samples[after]!];
  return b.ms === a.ms ? b.value : a.value + ((b.value - a.value) * (ms - a.ms)) / (b.ms - a.ms);
}

function checkOf(samples: readonly Sample[], lightAt: LightSpec['lightAt']): ForecastCheck {
  const values = samples.map(({ value }) => value);
  const mean = values.reduce((a, b) => a + b) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  const inRange = samples.filter(({ ms, value }) => {
    const { sceneEv100, lowEv100, highEv100 } = lightAt(ms);
    return sceneEv100 + value >= lowEv100 && sceneEv100 + value <= highEv100;
  });
  return {
    count: values.length,
    offsetEv: median(values),
    spreadEv: Math.sqrt(square),
    worstEv: values.reduce((worst, value) => (Math.abs(value) > Math.abs(worst) ? value : worst)),
    inRangeShare: inRange.length / values.length,
  };
}
