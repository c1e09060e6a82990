// How far the whole scene may turn out darker or brighter than forecast before a frame has no setting left.

import { longestTimeInside } from '../footage/frames.js';
import type { EvBand } from '../light/band.js';
import { readEveningsShare, wholeEveningsShare } from '../light/weather.js';
import { weatherHeld } from '../light/weather-held.js';
import { type RampProblem, shutterEnds } from '../ramp/problem.js';
import type { Forecast } from './forecast.js';

/** Stops the kit keeps beyond the ramp, both >= 0. */
export interface Reserve {
  /** The whole scene may be this many stops darker, >= 0. */
  readonly darkEv: number;
  /** Or this many brighter, >= 0. */
  readonly brightEv: number;
}

/** Below this share of evenings a person should know before leaving that the kit may fall short. */
export const HELD_ENOUGH = 0.8;

const SLACK = 1e-9;

/**
 * The reserve of a kit over a ramp's targets: the largest shift of all targets alike, down and up, under
 * which each still has a setting within tolerance, in exact times, ISOs and filters, whatever setting that
 * is. Whether a person's cues keep up is the ramp's business: a shift of all targets changes no speed.
 *
 * @param problem its targets, kit, interval and tolerance; a target out of reach now (a frame that a filter
 *   change may spoil) is not counted
 * @returns stops, both >= 0
 */
export function reserveOf(problem: RampProblem): Reserve {
  const { darkEv, brightEv } = frameReserves(problem);
  const least = (stops: Float64Array) => {
    const ev = stops.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
    return Number.isFinite(ev) ? ev : 0;
  };
  return { darkEv: least(darkEv), brightEv: least(brightEv) };
}

/** The reserve of each frame, stops; infinite where a target is out of reach now. */
export interface FrameReserves {
  /** It may be this many stops darker, >= 0. */
  readonly darkEv: Float64Array;
  /** Or this many brighter, >= 0. */
  readonly brightEv: Float64Array;
}

/** {@link reserveOf} frame by frame. */
export function frameReserves(problem: RampProblem): FrameReserves {
  const { targetEv100, kit } = problem;
  const anyStack = reachOf(problem, kit.stackStops);
  const first = kit.startStack === undefined ? anyStack : reachOf(problem, [kit.stackStops[kit.startStack]]);
  const darkEv = new Float64Array(targetEv100.length).fill(Number.POSITIVE_INFINITY);
  const brightEv = darkEv.slice();
  for (let i = 0; i < targetEv100.length; i++) {
    const ev = targetEv100[i];
    const within = (i === 0 ? first : anyStack).find(
      ({ lowEv100, highEv100 }) => ev >= lowEv100 - SLACK && ev <= highEv100 + SLACK,
    );
    if (within === undefined) continue;
    darkEv[i] = Math.max(0, ev - within.lowEv100);
    brightEv[i] = Math.max(0, within.highEv100 - ev);
  }
  return { darkEv, brightEv };
}

/**
 * Share of whole evenings, no minute left out, whose light stays within a reserve: on those the ramp, corrected by
 * readings on the way, never runs out of settings. The weather that each frame holds is sought through the scene, and
 * counted as if the tightest frame lasted the evening; after readings the range of each frame is held against its
 * reserve. Source: one-minute irradiance of the solar station of DTU, Lyngby, 2015 to 2017.
 *
 * @param reserve stops, both >= 0: from {@link reserveOf}, the same for every frame; or one each
 * @param forecast from {@link forecastLight}
 * @returns 0 to 1
 * @throws RangeError on a forecast whose `known` is out of range
 */
export function eveningsHeldShare(
  reserve: { readonly darkEv: number | Float64Array; readonly brightEv: number | Float64Array },
  forecast: Forecast,
): number {
  const at = (side: number | Float64Array, i: number) => (typeof side === 'number' ? side : side[i]);
  const { correction, light, sceneEv100, lowEv100, highEv100 } = forecast;
  if (correction.used.length > 0) {
    let [dark, bright] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let i = 0; i < light.length; i++) {
      dark = Math.min(dark, at(reserve.darkEv, i) / (sceneEv100[i] - lowEv100[i]));
      bright = Math.min(bright, at(reserve.brightEv, i) / (highEv100[i] - sceneEv100[i]));
    }
    const share = readEveningsShare(dark, bright);
    return wordsAreWrong(forecast) ? Math.min(share, SUREST_OF_WRONG_WORDS) : share;
  }
  const { known } = correction.forecast;
  const frames = light.map(({ parts }, i) => {
    return { parts, darkEv: at(reserve.darkEv, i), brightEv: at(reserve.brightEv, i) };
  });
  const { darkEv, brightEv } = weatherHeld(frames, known);
  return wholeEveningsShare(darkEv, brightEv, known.cloud);
}

/** Our choice: a scene that a reading has shown to be another than its words is no ground for a claim beyond this. */
const SUREST_OF_WRONG_WORDS = 0.98;

/** Whether some reading lies where no weather puts the scene's own words. */
function wordsAreWrong({ correction: { used, forecast } }: Forecast): boolean {
  return used.some(({ atMs, ev100 }) => {
    const band = forecast.bandAt?.(atMs);
    return band !== undefined && (ev100 < band.lowEv100 || ev100 > band.highEv100);
  });
}

/** EVs that some setting renders within tolerance: what the stacks reach, joined where they meet; several pieces where a filter leaves a hole. */
function reachOf(problem: RampProblem, stackStops: readonly number[]): EvBand[] {
  const { kit, limits } = problem;
  const { stepsPerStop, iso, aperture, bulb } = kit;
  const longestS = longestTimeInside(problem.intervalS, problem);
  const fits = longestS > 0 ? -stepsPerStop * Math.log2(longestS) : Number.POSITIVE_INFINITY;
  const ends = shutterEnds(problem);
  const longestStep = Math.max(ends.longestStep, bulb ? fits : Math.ceil(fits - SLACK));
  const darkest = aperture.widestStep + longestStep - iso.highestStep;
  const brightest = aperture.narrowestStep + ends.shortestStep - iso.lowestStep;
  if (brightest < darkest - SLACK) return [];
  // Settings of one stack lie a dial step apart; a shutter timed freely leaves nothing between.
  const levels = bulb
    ? [{ from: darkest, to: brightest }]
    : Array.from({ length: brightest - darkest + 1 }, (_, i) => ({ from: darkest + i, to: darkest + i }));
  const pieces = stackStops.flatMap((stops) =>
    levels.map(({ from, to }) => ({
      lowEv100: from / stepsPerStop + stops - limits.toleranceEv,
      highEv100: to / stepsPerStop + stops + limits.toleranceEv,
    })),
  );
  return joined(pieces.sort((a, b) => a.lowEv100 - b.lowEv100));
}

function joined(sorted: readonly EvBand[]): EvBand[] {
  const reaches: EvBand[] = [];
  for (const next of sorted) {
    const last = reaches[reaches.length - 1];
    if (last === undefined || next.lowEv100 > last.highEv100 + SLACK) reaches.push(next);
    else
      reaches[reaches.length - 1] = {
        lowEv100: last.lowEv100,
        highEv100: Math.max(last.highEv100, next.highEv100),
      };
  }
  return reaches;
}
