// When sun and moon pass the altitudes that have names, and why they sometimes do not. Works on any curves of
// altitude; sun.ts has those of the sky.
// Source: docs/sources.md#sun-events.

import { finite, within } from '../check.js';
import { sentenceOf } from '../words/sentences.js';
import { type Curve, crossingsIn, type Range, rangeOf, SKY_STEP_MS, sampleCurve } from './crossing.js';
import { englishMissing, type WhyMissing } from './missing.js';

/** Events of sun and moon that a plan may name. */
export type SkyEvent =
  | 'sunrise'
  | 'sunset'
  | 'civil-dawn'
  | 'civil-dusk'
  | 'nautical-dawn'
  | 'nautical-dusk'
  | 'astronomical-dawn'
  | 'astronomical-dusk'
  | 'moonrise'
  | 'moonset'
  | 'sun-behind-skyline'
  | 'sun-over-skyline'
  | 'moon-behind-skyline'
  | 'moon-over-skyline';

/** One event, with the sun's true altitude at that moment. */
export interface EventTime {
  /** Which. */
  readonly name: SkyEvent;
  /** UTC epoch milliseconds. */
  readonly atMs: number;
  /** True altitude of its centre, -90 to 90. */
  readonly sunAltitudeDeg: number;
}

/** An event that does not happen, and why. */
export type MissingEvent = WhyMissing & {
  /** Which. */
  readonly name: SkyEvent;
  /** A sentence in English. */
  readonly why: string;
};

/** What a stretch of time holds, in order of time, and what it does not. */
export interface SkyEvents {
  /** In order of time; a name may come twice, or not at all. */
  readonly events: readonly EventTime[];
  /** Names that do not come. */
  readonly missing: readonly MissingEvent[];
}

/** Altitude of the sun's centre at sunrise and sunset: 34' of refraction, 16' of semidiameter. */
const RISE_ALTITUDE_DEG = -50 / 60;

/**
 * Shift of sunrise and sunset for an eye above a level horizon, degrees per root metre: the angle to the horizon
 * seen from the Earth's centre, because altitudes here are true. Source: dip of the horizon, J. Meeus, Astronomical Algorithms.
 */
const DIP_DEG_PER_ROOT_M = 0.0347;

const TWILIGHTS = [
  { dawn: 'civil-dawn', dusk: 'civil-dusk', altitudeDeg: -6 },
  { dawn: 'nautical-dawn', dusk: 'nautical-dusk', altitudeDeg: -12 },
  { dawn: 'astronomical-dawn', dusk: 'astronomical-dusk', altitudeDeg: -18 },
] as const;

function whyNoSun(rises: boolean, levelDeg: number, horizon: boolean, { low, high }: Range): WhyMissing {
  if (low >= levelDeg) return { kind: 'sun-stays-above', horizon, reachedDeg: low, levelDeg };
  if (high < levelDeg) return { kind: 'sun-stays-below', horizon, reachedDeg: high, levelDeg };
  return { kind: 'sun-does-not-pass', rises, levelDeg };
}

function whyNoMoon(rises: boolean, { low, high }: Range): WhyMissing {
  if (low >= 0) return { kind: 'moon-stays-up' };
  if (high < 0) return { kind: 'moon-stays-down' };
  return { kind: 'moon-does-not-pass', rises };
}

/** The curves that events are read from. */
export interface SkyCurves {
  /** True altitude of the centre, degrees. */
  readonly sun: Curve;
  /** The moon's upper limb over the horizon, refraction included: rises and sets at 0. */
  readonly moonLimb: Curve;
  /** Of the eye above the horizon in view, >= 0. */
  readonly aboveHorizonM: number;
}

/** Every event in [fromMs, toMs), in order of time, and those that do not happen in it at all. */
export function namedEvents(
  fromMs: number,
  toMs: number,
  { sun, moonLimb, aboveHorizonM }: SkyCurves,
): SkyEvents {
  finite('fromMs', fromMs);
  finite('toMs', toMs);
  const events: EventTime[] = [];
  const missing: MissingEvent[] = [];
  const note = (name: SkyEvent, times: readonly number[], whyNot: () => WhyMissing) => {
    for (const atMs of times) events.push({ name, atMs, sunAltitudeDeg: sun(atMs) });
    if (times.length > 0) return;
    const why = whyNot();
    missing.push({ name, ...why, why: sentenceOf(englishMissing, 'kind', why) });
  };

  const dipDeg = DIP_DEG_PER_ROOT_M * Math.sqrt(within('aboveHorizonM', aboveHorizonM, 0, Number.MAX_VALUE));
  const sunSamples = sampleCurve(sun, fromMs, toMs, SKY_STEP_MS);
  const levels = [
    { dawn: 'sunrise', dusk: 'sunset', altitudeDeg: RISE_ALTITUDE_DEG - dipDeg } as const,
    ...TWILIGHTS,
  ];
  for (const { dawn, dusk, altitudeDeg } of levels) {
    const found = crossingsIn(sun, sunSamples, altitudeDeg, fromMs, toMs);
    for (const rising of [true, false]) {
      note(
        rising ? dawn : dusk,
        found.filter((crossing) => crossing.rising === rising).map((crossing) => crossing.atMs),
        () => whyNoSun(rising, altitudeDeg, dawn === 'sunrise', rangeOf(sun, fromMs, toMs)),
      );
    }
  }

  const moonSamples = sampleCurve(moonLimb, fromMs, toMs, SKY_STEP_MS);
  const moonPasses = crossingsIn(moonLimb, moonSamples, 0, fromMs, toMs);
  for (const rising of [true, false]) {
    note(
      rising ? 'moonrise' : 'moonset',
      moonPasses.filter((crossing) => crossing.rising === rising).map((crossing) => crossing.atMs),
      () => whyNoMoon(rising, rangeOf(moonLimb, fromMs, toMs)),
    );
  }
  return { events: events.sort((a, b) => a.atMs - b.atMs), missing };
}
