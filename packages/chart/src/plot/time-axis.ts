// The horizontal axis of every chart: time, with the sun's altitude as its second scale.

import { scaleLinear } from 'd3-scale';
import { clockTextOfMs, instantMs, offsetMs } from '../text/local-time.js';
import type { Words } from '../text/words.js';

/** Anything that happens at a time with the sun at an altitude: a frame, a row of the light table. */
export interface Moment {
  readonly at: string;
  readonly sunAltitudeDeg: number;
}

export interface TimeAxis {
  readonly left: number;
  readonly right: number;
  /** Position of an instant, UTC epoch milliseconds. */
  readonly x: (ms: number) => number;
  readonly xAt: (at: string) => number;
}

/** How far apart ticks stand at least, and in whose words. */
export interface TickStyle {
  readonly spacing: number;
  readonly words: Words;
}

export interface Tick {
  readonly x: number;
  readonly label: string;
}

/** The axis from the first moment to the last; a single moment stands in the middle. */
export function timeAxis(moments: readonly Moment[], left: number, right: number): TimeAxis {
  const firstMs = instantMs(moments[0]!.at);
  const lastMs = instantMs(moments.at(-1)!.at);
  const slackMs = lastMs > firstMs ? 0 : 60_000;
  const scale = scaleLinear([firstMs - slackMs, lastMs + slackMs], [left, right]);
  return { left, right, x: (ms) => scale(ms), xAt: (at) => scale(instantMs(at)) };
}

const TICK_MINUTES = [1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 240, 360, 720, 1440];

/** Ticks on round local clock times, at least `spacing` apart. */
export function clockTicks(
  moments: readonly Moment[],
  axis: TimeAxis,
  { spacing, words }: TickStyle,
): Tick[] {
  const firstMs = instantMs(moments[0]!.at);
  const lastMs = instantMs(moments.at(-1)!.at);
  const minutes = TICK_MINUTES.find((m) => axis.x(firstMs + m * 60_000) - axis.x(firstMs) >= spacing) ?? 1440;
  const stepMs = minutes * 60_000;
  const firstOffsetMs = offsetMs(moments[0]!.at);
  const ticks: Tick[] = [];
  for (
    let ms = Math.ceil((firstMs + firstOffsetMs) / stepMs) * stepMs - firstOffsetMs;
    ms <= lastMs;
    ms += stepMs
  ) {
    ticks.push({ x: axis.x(ms), label: clockTextOfMs(ms, momentBefore(moments, ms).at, words) });
  }
  return ticks;
}

// Clocks may change during the night, so each label takes the offset of the moment before it.
function momentBefore(moments: readonly Moment[], ms: number): Moment {
  let low = 0;
  let high = moments.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (instantMs(moments[middle]!.at) <= ms) low = middle;
    else high = middle - 1;
  }
  return moments[low]!;
}

/** Where the sun passes an altitude, in order of time; linear between moments. */
function altitudeCrossings(moments: readonly Moment[], altitudeDeg: number): number[] {
  const crossingsMs: number[] = [];
  for (let i = 1; i < moments.length; i++) {
    const a = moments[i - 1]!;
    const b = moments[i]!;
    const from = a.sunAltitudeDeg - altitudeDeg;
    const to = b.sunAltitudeDeg - altitudeDeg;
    if (from === 0 && i === 1) crossingsMs.push(instantMs(a.at));
    if (from !== 0 && from * to <= 0) {
      const share = from / (from - to);
      crossingsMs.push(instantMs(a.at) + share * (instantMs(b.at) - instantMs(a.at)));
    }
  }
  return crossingsMs;
}

const TICK_DEGREES = [0.1, 0.2, 0.5, 1, 2, 3, 5, 10, 15, 30];

/** Ticks on round altitudes of the sun, at least `spacing` apart: whole degrees read "−6°". */
export function altitudeTicks(
  moments: readonly Moment[],
  axis: TimeAxis,
  { spacing, words }: TickStyle,
): Tick[] {
  const altitudes = moments.map((m) => m.sunAltitudeDeg);
  const low = altitudes.reduce((a, b) => Math.min(a, b));
  const high = altitudes.reduce((a, b) => Math.max(a, b));
  // All the way there and back, where the sun turns.
  const wayDeg = altitudes.reduce(
    (sum, deg, i) => (i === 0 ? 0 : sum + Math.abs(deg - altitudes[i - 1]!)),
    0,
  );
  const room = Math.max(1, (axis.right - axis.left) / spacing);
  const stepDeg = TICK_DEGREES.find((deg) => wayDeg / deg <= room) ?? 30;
  const ticks: Tick[] = [];
  for (let k = Math.ceil(low / stepDeg); k <= high / stepDeg; k++) {
    const label = `${words.upTo(k * stepDeg, 1)}°`;
    for (const ms of altitudeCrossings(moments, k * stepDeg)) ticks.push({ x: axis.x(ms), label });
  }
  ticks.sort((a, b) => a.x - b.x);
  return ticks.filter(spaced(spacing));
}

// Near its turning points the sun passes the same altitudes twice, close together.
function spaced(spacing: number): (tick: Tick) => boolean {
  let lastX = Number.NEGATIVE_INFINITY;
  return ({ x }) => {
    if (x - lastX < spacing) return false;
    lastX = x;
    return true;
  };
}
