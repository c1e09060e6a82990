// How far the light lies off the plan's forecast, learnt reading by reading: a part that lasts and drifts, and
// passing cloud, which is forgotten. Both are followed at once by a Kalman filter of three numbers, so that a
// reading costs the same however many came before. Times in minutes inside. Source: docs/sources.md#kalman.

import { CLOUD_MEMORY_MIN, LASTING_EV, PASSING_CLOUD_EV } from '../light/offset.js';

/** What is known at one moment. The covariance is of (lasting, drift, cloud): oo, od, oc, dd, dc, cc. */
export interface OffsetState {
  readonly atMs: number; // UTC epoch milliseconds
  readonly lastingEv: number;
  readonly driftEvPerMin: number;
  readonly cloudEv: number;
  readonly lean: number; // mean of the last minutes' surprises, each in standard deviations of what was expected
  readonly last: number; // the last surprise, likewise
  /** How much passing cloud there is, of the variance that any weather has, 0 to 1; undefined: as any weather has. */
  readonly cloudy?: number | undefined;
  readonly covariance: readonly [number, number, number, number, number, number];
}

// Our choice: an evening runs off its forecast by a third of a stop an hour, and keeps to that for an hour.
const DRIFT_EV_PER_MIN = 0.33 / 60;
const DRIFT_MEMORY_MIN = 60;
// What lasts moves too: overcast dusks keep their loss within 0.3 stop over an hour or so (docs/sources.md#weather-spread).
const LASTING_EV_PER_ROOT_MIN = 0.3 / Math.sqrt(60);
// Our choices: a meter that trembles by less than a tenth of a stop can tell cloud from itself; one that trembles by a fifth
// cannot, so that light is taken to be calm, as it is most of the time, until two readings in a row say otherwise.
const STEADY_EV = 0.1;
const TREMBLING_EV = 0.2;
const CALM_SHARE = 0.2;
// Any weather is many evenings: on most of them hardly a cloud passes, and what moves then is a drift. How much passes
// tonight is told by the surprises themselves, those of the last quarter of an hour most; found on simulated evenings.
const CLOUDY_MEMORY_MIN = 15;
const LEAST_CLOUDY = 0.05;
// Where the scene's words are wrong, the light runs off by up to 0.3 stop a minute for the twenty minutes of steepest
// twilight: lamps hold it and the forecast falls. Surprises then lean to one side for minutes, as passing cloud seldom
// makes them. Lean and threshold (standard deviations of it) are our choice, as is the drift that is then thought possible.
const LEAN_MEMORY_MIN = 3;
const LEANS_FROM = 2.5;
const MOST_SURPRISE = 3;
// Readings minutes apart: no single one makes a lean.
const MOST_SHARE = 0.3;
// A surprise of more than two standard deviations is more likely a moving light than the meter.
const MOVED_FROM = 2;
const WRONG_WORDS_EV_PER_MIN = 0.1;

export function startOffset(atMs: number): OffsetState {
  return {
    atMs,
    lastingEv: 0,
    driftEvPerMin: 0,
    cloudEv: 0,
    lean: 0,
    last: 0,
    // What is there at the first reading is taken to last; what comes after it passes.
    covariance: [LASTING_EV ** 2, 0, 0, DRIFT_EV_PER_MIN ** 2, 0, 0],
  };
}

/** The offset expected at a time, before the state's own as at it. */
export function offsetAt({ atMs, lastingEv, driftEvPerMin, cloudEv }: OffsetState, whenMs: number): number {
  const minutes = Math.max(0, whenMs - atMs) / 60_000;
  return lastingEv + driftEvPerMin * drifted(minutes) + cloudEv * Math.exp(-minutes / CLOUD_MEMORY_MIN);
}

/** Minutes' worth of today's drift that so many minutes bring. */
function drifted(minutes: number): number {
  return DRIFT_MEMORY_MIN * (1 - Math.exp(-minutes / DRIFT_MEMORY_MIN));
}

/**
 * The state at a later time without a reading; the same state where the time is not later.
 *
 * @param trembling 0: the meter tells cloud from itself; 1: it does not
 */
export function advance(state: OffsetState, toMs: number, trembling = 0): OffsetState {
  if (toMs <= state.atMs) return state;
  const minutes = (toMs - state.atMs) / 60_000;
  const share = (state.cloudy ?? 1) * (1 - (1 - CALM_SHARE) * trembling);
  const carry = drifted(minutes);
  const kept = Math.exp(-minutes / DRIFT_MEMORY_MIN);
  const cloud = Math.exp(-minutes / CLOUD_MEMORY_MIN);
  const [oo, od, oc, dd, dc, cc] = state.covariance;
  return {
    ...state,
    atMs: toMs,
    lastingEv: state.lastingEv + state.driftEvPerMin * carry,
    driftEvPerMin: state.driftEvPerMin * kept,
    cloudEv: state.cloudEv * cloud,
    covariance: [
      oo + 2 * carry * od + carry * carry * dd + LASTING_EV_PER_ROOT_MIN ** 2 * minutes,
      kept * (od + carry * dd),
      cloud * (oc + carry * dc),
      kept * kept * dd + DRIFT_EV_PER_MIN ** 2 * (1 - kept * kept),
      kept * cloud * dc,
      cloud * cloud * cc + share * PASSING_CLOUD_EV ** 2 * (1 - cloud * cloud),
    ],
  };
}

/**
 * The state after a reading at its own time or later.
 *
 * @param offsetEv metered less forecast
 * @param noiseEv standard deviation of the reading, > 0
 */
export function learn(before: OffsetState, atMs: number, offsetEv: number, noiseEv: number): OffsetState {
  const trembling = Math.min(1, Math.max(0, (noiseEv - STEADY_EV) / (TREMBLING_EV - STEADY_EV)));
  const advanced = advance(before, atMs, trembling);
  const state = leaning(before, advanced, offsetEv, noiseEv, trembling);
  const [oo, od, oc, dd, dc, cc] = state.covariance;
  // A reading sees lasting part and cloud together.
  const [o, d, c] = [oo + oc, od + dc, oc + cc];
  const variance = o + c + noiseEv ** 2;
  const surprise = (offsetEv - state.lastingEv - state.cloudEv) / variance;
  return {
    ...state,
    lastingEv: state.lastingEv + o * surprise,
    driftEvPerMin: state.driftEvPerMin + d * surprise,
    cloudEv: state.cloudEv + c * surprise,
    covariance: [
      oo - (o * o) / variance,
      od - (o * d) / variance,
      oc - (o * c) / variance,
      dd - (d * d) / variance,
      dc - (d * c) / variance,
      cc - (c * c) / variance,
    ],
  };
}

/** The state as a reading finds it: open to another drift where the surprises have long been to one side. */
function leaning(
  before: OffsetState,
  state: OffsetState,
  offsetEv: number,
  noiseEv: number,
  trembling: number,
): OffsetState {
  const [oo, od, oc, dd, dc, cc] = state.covariance;
  const movedEv = offsetEv - state.lastingEv - state.cloudEv;
  const surprise = movedEv / Math.sqrt(oo + 2 * oc + cc + noiseEv ** 2);
  const kept = Math.min(MOST_SURPRISE, Math.max(-MOST_SURPRISE, surprise));
  const minutes = (state.atMs - before.atMs) / 60_000;
  const share = Math.min(MOST_SHARE, 1 - Math.exp(-minutes / LEAN_MEMORY_MIN));
  // Over longer gaps a bank that stays looks like a drift.
  const lean = minutes > LEAN_MEMORY_MIN ? 0 : (1 - share) * state.lean + share * kept;
  // What the lean of surprises without a side would be.
  const usual = Math.sqrt(share / (2 - share));
  const drift = Math.abs(lean) > LEANS_FROM * usual ? Math.max(dd, WRONG_WORDS_EV_PER_MIN ** 2) : dd;
  // The first reading of all is no cloud that came: what it finds is taken to last.
  const isFirst = state.cloudy === undefined;
  const moved = !isFirst && Math.abs(surprise + trembling * state.last) > MOVED_FROM * (1 + trembling);
  const byEv = moved ? movedEv : 0;
  const cloudy = cloudyAfter(state.cloudy ?? 1, minutes, movedEv, noiseEv);
  return { ...state, lean, last: surprise, cloudy, covariance: [oo, od, oc, drift, dc, cc + byEv * byEv] };
}

/** How much cloud passes, by how far a reading lies from what was expected so many minutes after the one before. */
function cloudyAfter(before: number, minutes: number, movedEv: number, noiseEv: number): number {
  if (minutes === 0) return before;
  const anyWeather = PASSING_CLOUD_EV ** 2 * (1 - Math.exp((-2 * minutes) / CLOUD_MEMORY_MIN));
  const share = Math.min(1, Math.max(LEAST_CLOUDY, (movedEv ** 2 - noiseEv ** 2) / anyWeather));
  // Where a meter trembles by more than cloud moves, a reading tells little of it.
  const told = anyWeather / (anyWeather + noiseEv ** 2);
  return before + told * (1 - Math.exp(-minutes / CLOUDY_MEMORY_MIN)) * (share - before);
}

/** The state once a sudden step in the light is believed: what it knew may be off by so many stops in either part. */
export function loosen(state: OffsetState, byEv: number): OffsetState {
  const [oo, od, oc, dd, dc, cc] = state.covariance;
  return { ...state, covariance: [oo + byEv ** 2, od, oc, dd, dc, cc + byEv ** 2] };
}
