// How far the whole scene may turn out darker or brighter than forecast before a frame has no setting left.

import { longestTimeInside } from '../footage/frames.js';
import { type EvBand, forecastBand } from '../light/band.js';
import { shareOfEvenings } from '../light/evenings.js';
import type { RampProblem } from '../ramp/problem.js';
import type { Forecast } from './forecast.js';

/** Stops the kit keeps beyond the ramp, both >= 0. */
export interface Reserve {
  /** The whole scene may be this many stops darker, >= 0. */
  readonly darkEv: number;
  /** Or this many brighter, >= 0. */
  readonly brightEv: number;
}

/** EVs at ISO 100 that some setting renders within tolerance, from low to high. */
interface Reach {
  readonly lowEv: number;
  readonly highEv: number;
}

const SLACK = 1e-9;

/**
 * The reserve of a kit over a ramp's targets: the largest shift of all targets alike, down and up, under
 * which each still has a setting within tolerance, in exact times, ISOs and filters, whatever setting that
 * is. Whether a person's cues keep up is the ramp's business: a shift of all targets changes no speed.
 *
 * @param problem its targets, kit, interval and tolerance; a target out of reach now (a frame that a filter
 *   change may spoil) is not counted
 * @returns stops, both >= 0
 * @example
 * ```ts
 * import { type RampProblem, reserveOf } from '@evenfall/core';
 *
 * // Bare lens, f/4, 1/4000 s to 4 s, ISO 100: EV 2 to 16, and three quarters of a stop beyond.
 * const problem: RampProblem = {
 *   targetEv100: [14, 8, 2],
 *   intervalS: 8,
 *   direction: 'dusk',
 *   gapS: 1,
 *   darkFrame: false,
 *   crew: 'rig',
 *   kit: {
 *     stepsPerStop: 3,
 *     shutter: { longestStep: -6, shortestStep: 36 },
 *     iso: { lowestStep: 0, highestStep: 0 },
 *     aperture: { widestStep: 12, narrowestStep: 12 },
 *     stackStops: [0],
 *     bulb: false,
 *   },
 *   limits: { toleranceEv: 0.75, largestStepEv: 1, secondsBetweenCues: 0, framesLostPerFilterChange: 0 },
 * };
 * reserveOf(problem); // → { darkEv: 0.75, brightEv: 2.75 }
 * ```
 */
export function reserveOf(problem: RampProblem): Reserve {
  const { targetEv100, kit } = problem;
  const anyStack = reachOf(problem, kit.stackStops);
  const first = kit.startStack === undefined ? anyStack : reachOf(problem, [kit.stackStops[kit.startStack]]);
  let darkEv = Number.POSITIVE_INFINITY;
  let brightEv = Number.POSITIVE_INFINITY;
  for (let i = 0; i < targetEv100.length; i++) {
    const ev = targetEv100[i];
    const within = (i === 0 ? first : anyStack).find(
      ({ lowEv, highEv }) => ev >= lowEv - SLACK && ev <= highEv + SLACK,
    );
    if (within === undefined) continue;
    darkEv = Math.min(darkEv, ev - within.lowEv);
    brightEv = Math.min(brightEv, within.highEv - ev);
  }
  const stops = (ev: number) => (Number.isFinite(ev) ? Math.max(0, ev) : 0);
  return { darkEv: stops(darkEv), brightEv: stops(brightEv) };
}

// Below this altitude of the sun the band is the night's, which moves a town's end of the ramp, not the whole.
const EVENING_FROM_SUN_DEG = -8;

/**
 * Share of evenings whose light stays within a reserve: on those the ramp, corrected by readings on the way,
 * never runs out of settings. An evening is taken to lie off its forecast by the same stops throughout. Under
 * a sky that nobody saw, by the measured spread of any weather; else by a normal one as wide as the band: at
 * the horizon or, after readings, at its widest. Source: docs/sources.md#weather-spread.
 *
 * @param reserve stops, both >= 0: from {@link reserveOf}
 * @param forecast from {@link forecastLight}
 * @returns 0 to 1
 * @throws RangeError on a forecast whose `known` is out of range
 * @example
 * ```ts
 * // With the shoot and plan of planShoot's example.
 * import { eveningsHeldShare, forecastLight, shootSpan } from '@evenfall/core';
 *
 * const span = shootSpan(shoot);
 * if (span.kind === 'no-span') throw new Error(span.why);
 * const { summary } = plan;
 * const reserve = { darkEv: summary.reserveDarkEv, brightEv: summary.reserveBrightEv };
 * eveningsHeldShare(reserve, forecastLight(shoot, span.times)) === summary.eveningsHeldShare; // → true
 * ```
 */
export function eveningsHeldShare(reserve: Reserve, forecast: Forecast): number {
  const { known } = forecast.correction.forecast;
  if (forecast.correction.used.length > 0) return shareOfEvenings(reserve, widestBand(forecast), 'bell');
  return shareOfEvenings(reserve, forecastBand(0, known), known.cloud === 'unknown' ? 'any-weather' : 'bell');
}

function widestBand({ sky, sceneEv100, lowEv100, highEv100 }: Forecast): EvBand {
  const dark = !sky.some(({ sunAltitudeDeg }) => sunAltitudeDeg > EVENING_FROM_SUN_DEG);
  let lowEv = 0;
  let highEv = 0;
  sky.forEach(({ sunAltitudeDeg }, i) => {
    if (!dark && sunAltitudeDeg <= EVENING_FROM_SUN_DEG) return;
    lowEv = Math.min(lowEv, lowEv100[i] - sceneEv100[i]);
    highEv = Math.max(highEv, highEv100[i] - sceneEv100[i]);
  });
  return { lowEv, highEv };
}

/** What the stacks reach, joined where they meet; several pieces where a filter leaves a hole. */
function reachOf(problem: RampProblem, stackStops: readonly number[]): Reach[] {
  const { kit, limits } = problem;
  const { stepsPerStop, iso, aperture, bulb } = kit;
  const longestS = longestTimeInside(problem.intervalS, problem);
  const fits = longestS > 0 ? -stepsPerStop * Math.log2(longestS) : Number.POSITIVE_INFINITY;
  const longestStep = Math.max(kit.shutter.longestStep, bulb ? fits : Math.ceil(fits - SLACK));
  const darkest = aperture.widestStep + longestStep - iso.highestStep;
  const brightest = aperture.narrowestStep + kit.shutter.shortestStep - iso.lowestStep;
  if (brightest < darkest - SLACK) return [];
  // Settings of one stack lie a dial step apart; a shutter timed freely leaves nothing between.
  const levels = bulb
    ? [{ from: darkest, to: brightest }]
    : Array.from({ length: brightest - darkest + 1 }, (_, i) => ({ from: darkest + i, to: darkest + i }));
  const pieces = stackStops.flatMap((stops) =>
    levels.map(({ from, to }) => ({
      lowEv: from / stepsPerStop + stops - limits.toleranceEv,
      highEv: to / stepsPerStop + stops + limits.toleranceEv,
    })),
  );
  return joined(pieces.sort((a, b) => a.lowEv - b.lowEv));
}

function joined(sorted: readonly Reach[]): Reach[] {
  const reaches: Reach[] = [];
  for (const next of sorted) {
    const last = reaches[reaches.length - 1];
    if (last === undefined || next.lowEv > last.highEv + SLACK) reaches.push(next);
    else reaches[reaches.length - 1] = { lowEv: last.lowEv, highEv: Math.max(last.highEv, next.highEv) };
  }
  return reaches;
}
