// Scattered values as a smooth line over time: locally weighted regression, which lags behind nothing, with weights that
// pass over what stands out: the lights of a passing car. Source: docs/sources.md#loess.

import { median } from './lens.js';

/** One value at a time, milliseconds. */
export interface Sample {
  readonly ms: number;
  readonly value: number;
}

/** Values that stand out by six times the usual difference count nothing. */
const OUTLYING = 6;
const ROUNDS = 4;
/** Differences below this, stops, are no outliers however calm the rest is. */
const CALM_EV = 0.005;
/** A line needs so many samples; with fewer near by, those farther off count too. */
const LEAST_SAMPLES = 8;

/**
 * The line through samples.
 *
 * @param samples in order of time, one or more
 * @param reachMs how far samples count to either side, > 0
 * @returns its value at a time
 */
export function smoothedOver(samples: readonly Sample[], reachMs: number): (ms: number) => number {
  if (samples.length === 1) return () => samples[0]!.value;
  // The usual scatter is that about the median of a few neighbours, which no passing light moves.
  let trust = firstTrust(samples);
  for (let round = 0; round < ROUNDS; round++) {
    const line = lineThrough(samples, trust, reachMs);
    const off = samples.map(({ ms, value }) => Math.abs(value - line(ms)));
    const most = OUTLYING * Math.max(CALM_EV, median(off));
    trust = off.map((each) => (each >= most ? 0 : (1 - (each / most) ** 2) ** 2));
  }
  return lineThrough(samples, trust, reachMs);
}

function firstTrust(samples: readonly Sample[]): number[] {
  const off = samples.map(({ value }, i) => {
    const near = samples.slice(Math.max(0, i - 7), i + 8).map((sample) => sample.value);
    return Math.abs(value - median(near));
  });
  const most = OUTLYING * Math.max(CALM_EV, median(off));
  return off.map((each) => (each >= most ? 0 : 1));
}

function lineThrough(
  samples: readonly Sample[],
  trust: readonly number[],
  reachMs: number,
): (ms: number) => number {
  return (ms) => {
    let low = firstFrom(samples, ms - reachMs + 1e-6);
    let high = firstFrom(samples, ms + reachMs);
    let usable = 0;
    for (let i = low; i < high; i++) if (trust[i]! > 0) usable++;
    while (usable < LEAST_SAMPLES && (low > 0 || high < samples.length)) {
      // The nearer side goes on; both where they are as near, so that time may run either way.
      const before = low > 0 ? ms - samples[low - 1]!.ms : Number.POSITIVE_INFINITY;
      const after = high < samples.length ? samples[high]!.ms - ms : Number.POSITIVE_INFINITY;
      if (before <= after && trust[--low]! > 0) usable++;
      if (after <= before && trust[high++]! > 0) usable++;
    }
    const reach = Math.max(
      reachMs,
      1.001 * Math.max(Math.abs(ms - samples[low]!.ms), Math.abs(samples[high - 1]!.ms - ms)),
    );
    // Weighted straight line, about the time asked for: its value there is the constant.
    let [w0, w1, w2, v0, v1] = [0, 0, 0, 0, 0];
    for (let i = low; i < high; i++) {
      const x = (samples[i]!.ms - ms) / reach;
      const weight = trust[i]! * (1 - Math.abs(x) ** 3) ** 3;
      w0 += weight;
      w1 += weight * x;
      w2 += weight * x * x;
      v0 += weight * samples[i]!.value;
      v1 += weight * x * samples[i]!.value;
    }
    const determinant = w0 * w2 - w1 * w1;
    if (w0 === 0) return nearest(samples, ms).value;
    // All at one side, or at one time: their mean.
    return determinant > 1e-6 * w0 * w0 ? (w2 * v0 - w1 * v1) / determinant : v0 / w0;
  };
}

function firstFrom(samples: readonly Sample[], ms: number): number {
  let [low, high] = [0, samples.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (samples[middle]!.ms < ms) low = middle + 1;
    else high = middle;
  }
  return low;
}

function nearest(samples: readonly Sample[], ms: number): Sample {
  return samples.reduce((best, each) => (Math.abs(each.ms - ms) < Math.abs(best.ms - ms) ? each : best));
}
