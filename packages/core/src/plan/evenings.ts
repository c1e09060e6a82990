// When to go: the same shoot on the evenings to come, one line each.

import { whole, within } from '../check.js';
import { hold, onlyKeys, text } from '../hold.js';
import { shootOnDate } from '../shoot/on-date.js';
import type { Shoot } from '../shoot/shoot.js';
import { checkShoot } from '../shoot/shoot-check.js';
import { civilDay, rfc3339, zoneOf } from '../sky/clock.js';
import { skyEvents, sunAndMoon } from '../sky/sun.js';
import type { Forecast } from './forecast.js';
import { rampOfPlan } from './made.js';
import { type Prepared, prepare } from './prepare.js';
import { solve } from './solve.js';
import { type Steepest, steepestIn } from './steepest.js';
import { type StopSignal, stopIf } from './stop.js';
import type { PlanSummary, WhyInfeasible } from './types.js';
import { inEnglish, whyNoRamp, whyNoSpan } from './why.js';

/** The light over the span of one evening, and the moon at its end. */
export interface EveningLight {
  /** Where it changes fastest; absent where the span is a single frame. */
  readonly steepest?: Steepest | undefined;
  /** The target's range over the span: stops to follow, >= 0. */
  readonly rampStops: number;
  /** Lit share of the moon's disc at the last frame, 0 to 1. */
  readonly moonLitFraction: number;
  /** Whether it grows from night to night then. */
  readonly moonWaxing: boolean;
  /** True altitude of its centre then, -90 to 90; below 0 it is down. */
  readonly moonAltitudeDeg: number;
  /** Clockwise from north, 0 to 360. */
  readonly moonAzimuthDeg: number;
}

/** An evening, or morning, on which the shoot has a plan. */
export interface EveningMade {
  /** That it has. */
  readonly kind: 'ok';
  /** Local, YYYY-MM-DD. */
  readonly date: string;
  /** Sunset at dusk, sunrise at dawn, the one nearest to the span, RFC 3339; absent where there is none on that day. */
  readonly horizonAt?: string | undefined;
  /** Over the span. */
  readonly light: EveningLight;
  /** What the plan comes to. */
  readonly plan: Pick<
    PlanSummary,
    | 'frameCount'
    | 'startAt'
    | 'endAt'
    | 'cueCount'
    | 'worstErrorEv'
    | 'reserveDarkEv'
    | 'reserveBrightEv'
    | 'eveningsHeldShare'
  >;
}

/** One on which it has none. */
export interface EveningInfeasible extends Pick<EveningMade, 'date' | 'horizonAt'> {
  /** That it has none. */
  readonly kind: 'infeasible';
  /** Absent where the sun does not pass through the span. */
  readonly light?: EveningLight | undefined;
  /** Why: the `reason` with its values, and in English. */
  readonly infeasible: WhyInfeasible & {
    /** One sentence or more in English. */
    readonly text: string;
  };
}

/** One evening, or morning, of those to choose from; `kind` tells whether the shoot has a plan on it. */
export type Evening = EveningMade | EveningInfeasible;

/** Evenings to choose from, `evenfall-evenings/1`. */
export interface Evenings {
  readonly format: 'evenfall-evenings/1';
  /** What was asked for, defaults filled in; its own date is one evening among others. */
  readonly shoot: Shoot;
  /** In order of time, one or more; days that the place's calendar skips are left out. */
  readonly evenings: readonly Evening[];
}

/** Most evenings in one answer: a leap year. */
const MOST_DAYS = 366;

/**
 * The evenings, or mornings, to come for a shoot, each planned as {@link planShoot} would: when to go. Readings count on the evening
 * on which they were taken alone. Takes about half as long an evening as `planShoot`, and seeks no remedies.
 *
 * @param shoot from {@link readShoot}; its date does not matter beyond what it says by the clock
 * @param options `fromDate`, YYYY-MM-DD, local, the shoot's own where absent; `days`, whole, 1 to 366, 30 where absent; `signal`, when to give up
 * @returns one evening a day
 * @throws RangeError on a shoot that `readShoot` would refuse, a date that the calendar or the zone does not have, or days out of
 *   range; the signal's reason where it stops the work
 * @example
 * ```ts
 * // With the shoot and plan of planShoot's example.
 * import { planEvenings } from '@evenfall/core';
 *
 * const { evenings } = planEvenings(shoot, { days: 5 });
 * evenings.map(({ date }) => date.slice(8)); // → ['22', '23', '24', '25', '26']
 * const [first] = evenings;
 * first?.kind === 'ok' && first.plan.cueCount === plan.summary.cueCount; // → true
 * // Full moon on the 26th by the U.S. Naval Observatory's table.
 * evenings[4]?.light?.moonLitFraction; // → 1.00
 * ```
 */
export function planEvenings(
  shoot: Shoot,
  options: {
    readonly fromDate?: string | undefined;
    readonly days?: number | undefined;
    readonly signal?: StopSignal | undefined;
  } = {},
): Evenings {
  checkShoot(shoot);
  hold('options', options, onlyKeys('fromDate', 'days', 'signal'));
  const { fromDate = shoot.date, days = 30, signal } = options;
  within('days', whole('days', days), 1, MOST_DAYS);
  hold('fromDate', fromDate, text);
  const zone = zoneOf(shoot.place);
  let date = fromDate;
  const evenings = Array.from({ length: days }, () => {
    stopIf(signal);
    const evening = eveningOn(shootOnDate(shoot, date));
    date = rfc3339(civilDay(date, zone).endMs, zone).slice(0, 10);
    return evening;
  });
  return { format: 'evenfall-evenings/1', shoot, evenings };
}

function eveningOn(shoot: Shoot): Evening {
  const { date } = shoot;
  const prepared = prepare(shoot);
  if (prepared.kind === 'no-span') {
    const infeasible = inEnglish(whyNoSpan(shoot, prepared.because));
    return { kind: 'infeasible', date, ...horizonOf(shoot), infeasible };
  }
  const { forecast } = prepared;
  const about = { date, ...horizonOf(shoot, forecast.times), light: lightOf(shoot, prepared) };
  const ramp = solve(prepared);
  if (ramp.kind !== 'ok') {
    return { kind: 'infeasible', ...about, infeasible: inEnglish(whyNoRamp(shoot, forecast, ramp)) };
  }
  const { summary } = rampOfPlan(shoot, prepared, ramp);
  const { frameCount, startAt, endAt, cueCount, worstErrorEv } = summary;
  const { reserveDarkEv, reserveBrightEv, eveningsHeldShare } = summary;
  return {
    kind: 'ok',
    ...about,
    plan: {
      frameCount,
      startAt,
      endAt,
      cueCount,
      worstErrorEv,
      reserveDarkEv,
      reserveBrightEv,
      eveningsHeldShare,
    },
  };
}

/** Sunset or sunrise of the day and the one after that is nearest to the middle of the span; without one, of the day. */
function horizonOf({ place, date, direction }: Shoot, times?: Float64Array): { readonly horizonAt?: string } {
  const zone = zoneOf(place);
  const { startMs, endMs } = civilDay(date, zone);
  const toMs = times === undefined ? endMs : civilDay(rfc3339(endMs, zone).slice(0, 10), zone).endMs;
  const middleMs = times === undefined ? startMs : (times[0] + times[times.length - 1]) / 2;
  const wanted = direction === 'dusk' ? 'sunset' : 'sunrise';
  const found = skyEvents(startMs, toMs, place).events.filter(({ name }) => name === wanted);
  found.sort((a, b) => Math.abs(a.atMs - middleMs) - Math.abs(b.atMs - middleMs));
  const [nearest] = found;
  return nearest === undefined ? {} : { horizonAt: rfc3339(Math.round(nearest.atMs / 1000) * 1000, zone) };
}

function lightOf({ place, intervalS }: Shoot, { forecast, problem }: Prepared): EveningLight {
  const { times, zone, sceneEv100, sky } = forecast;
  const steepest = steepestIn(sceneEv100, intervalS);
  const { targetEv100 } = problem;
  let [least, most] = [targetEv100[0], targetEv100[0]];
  for (let i = 1; i < targetEv100.length; i++) {
    least = Math.min(least, targetEv100[i]);
    most = Math.max(most, targetEv100[i]);
  }
  const { moonLitFraction, moonAltitudeDeg, moonAzimuthDeg } = sky[sky.length - 1];
  return {
    ...(steepest === undefined
      ? {}
      : {
          steepest: {
            at: rfc3339(times[steepest.index], zone),
            sunAltitudeDeg: sky[steepest.index].sunAltitudeDeg,
            evPerMin: steepest.evPerMin,
          },
        }),
    rampStops: most - least,
    moonLitFraction,
    moonWaxing: isWaxing(forecast, place),
    moonAltitudeDeg,
    moonAzimuthDeg,
  };
}

const HALF_DAY_MS = 43_200_000;

/** Half a day before and after, the eye stands about as far to the side of the Earth's centre: its parallax cancels. */
function isWaxing({ times }: Forecast, place: Shoot['place']): boolean {
  const endMs = times[times.length - 1];
  const phaseAngle = (atMs: number) => sunAndMoon(atMs, place).moonPhaseAngleDeg;
  return phaseAngle(endMs + HALF_DAY_MS) < phaseAngle(endMs - HALF_DAY_MS);
}
