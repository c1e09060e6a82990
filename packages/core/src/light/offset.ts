// A smooth offset through a few readings: near them it follows them, far from them it fades to nothing.
// Two things move the light away from its forecast: what lasts the evening (haze, the frame, the meter) and
// drifts slowly, and passing cloud. Each reading is weighed by how much of either it still tells.
// Method: docs/sources.md#kriging; the two spreads: docs/sources.md#weather-spread.

/** One reading against the forecast. */
export interface OffsetSample {
  readonly atMs: number;
  readonly offsetEv: number; // metered less forecast
}

/** How much passing cloud is to be expected. */
export interface Wander {
  readonly cloudEv: number; // standard deviation, > 0
  readonly meterEv: number; // standard deviation of a reading itself, > 0
}

/**
 * Standard deviation, in stops, of what lasts an evening. Any-weather minutes spread by 1.1 stops. Their differences
 * over 1 to 30 minutes fit passing cloud of 0.67 stop with a memory of 33 minutes, which leaves 0.87 that lasts.
 * Describing the scene by words adds about one.
 */
export const LASTING_EV = Math.hypot(0.87, 1);
/** Minutes in which passing cloud forgets itself to 1/e. */
export const CLOUD_MEMORY_MIN = 33;
// Our choice: an hour-old reading keeps nine tenths of the lasting part, one of four hours a third.
const LASTING_MEMORY_MIN = 180;

/** Standard deviation, in stops, of passing cloud in any weather. */
export const PASSING_CLOUD_EV = 0.67;

function likeness(apartMs: number, { cloudEv }: Wander): number {
  const minutes = Math.abs(apartMs) / 60_000;
  const r = (Math.sqrt(3) * minutes) / LASTING_MEMORY_MIN;
  return LASTING_EV ** 2 * (1 + r) * Math.exp(-r) + cloudEv ** 2 * Math.exp(-minutes / CLOUD_MEMORY_MIN);
}

/**
 * The offset in EV at any time, before, between and after the samples; 0 without samples. One sample gives
 * itself (to 2 %), fading; several give an offset that drifts through them and a little beyond.
 *
 * @param samples any order; the cost of setting up grows with the cube of their number
 */
export function offsetThrough(samples: readonly OffsetSample[], wander: Wander): (atMs: number) => number {
  const weights = solveSymmetric(
    samples.map((a, i) =>
      samples.map((b, j) => likeness(a.atMs - b.atMs, wander) + (i === j ? wander.meterEv ** 2 : 0)),
    ),
    samples.map((sample) => sample.offsetEv),
  );
  return (atMs) =>
    samples.reduce((sum, sample, i) => sum + weights[i]! * likeness(atMs - sample.atMs, wander), 0);
}

/** Solves a x = b for a symmetric positive definite matrix, by its Cholesky factor. */
function solveSymmetric(a: readonly (readonly number[])[], b: readonly number[]): number[] {
  const factor: number[][] = [];
  const dot = (x: readonly number[], y: readonly number[], count: number) => {
    let sum = 0;
    for (let k = 0; k < count; k++) sum += x[k]! * y[k]!;
    return sum;
  };
  a.forEach((row, i) => {
    const out: number[] = [];
    factor.push(out);
    for (let j = 0; j < i; j++) out.push((row[j]! - dot(out, factor[j]!, j)) / factor[j]![j]!);
    out.push(Math.sqrt(row[i]! - dot(out, out, i)));
  });
  const x = [...b];
  for (let i = 0; i < x.length; i++) x[i] = (x[i]! - dot(factor[i]!, x, i)) / factor[i]![i]!;
  for (let i = x.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < x.length; k++) x[i] = x[i]! - factor[k]![i]! * x[k]!;
    x[i] = x[i]! / factor[i]![i]!;
  }
  return x;
}
