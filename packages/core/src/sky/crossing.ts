// When a smooth curve of time passes a level, and where it turns. Coarse samples find the place, halving finds
// the moment; a peak between two samples is refined, so that a curve that only just touches a level is not missed.

/** A passage through a level: the first whole millisecond on the other side of it. */
export interface Crossing {
  /** UTC epoch milliseconds, whole. */
  readonly atMs: number;
  /** Whether the curve goes up through the level. */
  readonly rising: boolean;
}

/** A highest or lowest point of a curve. */
export interface Turn {
  /** UTC epoch. */
  readonly atMs: number;
  readonly value: number;
}

/** Any curve of time: UTC epoch milliseconds in, say degrees out. */
export type Curve = (atMs: number) => number;

/** A curve in samples: entry i is its value at startMs + i * stepMs. */
export interface Samples {
  readonly startMs: number;
  readonly stepMs: number;
  readonly values: Float64Array;
}

/** Between two samples of any curve. */
const STEP_MS = 600_000;
/** Between two of the sun or the moon: they turn twice a day, and for an hour round a turn they bend one way. */
export const SKY_STEP_MS = 1_800_000;

/**
 * Samples of `curve` over a stretch and at least one step beyond either end, so that turns at the ends are seen.
 *
 * @param stepMs between two samples; the curve may turn at most once in it, and bends one way for twice as long round a turn
 * @throws RangeError where the stretch ends before it starts
 */
export function sampleCurve(curve: Curve, fromMs: number, toMs: number, stepMs = STEP_MS): Samples {
  if (!(toMs >= fromMs)) throw new RangeError(`toMs must not come before fromMs, got ${fromMs} to ${toMs}`);
  const startMs = fromMs - stepMs;
  const values = new Float64Array(Math.ceil((toMs - fromMs) / stepMs) + 3);
  for (let i = 0; i < values.length; i++) values[i] = curve(startMs + i * stepMs);
  return { startMs, stepMs, values };
}

/** First whole millisecond in (fromMs, toMs] on the other side of the level; the ends must lie on different sides. */
export function bisect(curve: Curve, level: number, fromMs: number, toMs: number): number {
  const startsAbove = curve(fromMs) >= level;
  let before = Math.floor(fromMs);
  let after = Math.ceil(toMs);
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (curve(middle) >= level === startsAbove) before = middle;
    else after = middle;
  }
  return after;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The turn inside a stretch that has exactly one: the highest point (sign 1) or the lowest (sign -1). */
function turnWithin(curve: Curve, fromMs: number, toMs: number, sign: 1 | -1): Turn {
  let low = fromMs;
  let high = toMs;
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let atLeft = sign * curve(left);
  let atRight = sign * curve(right);
  while (high - low > 1) {
    if (atLeft > atRight) {
      high = right;
      [right, atRight] = [left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = sign * curve(left);
    } else {
      low = left;
      [left, atLeft] = [right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = sign * curve(right);
    }
  }
  const atMs = Math.round((low + high) / 2);
  return { atMs, value: curve(atMs) };
}

/** 1 where sample i is a highest of three, -1 where a lowest, 0 elsewhere. Of two equal samples the later counts. */
function turnSign(values: Float64Array, i: number): 1 | -1 | 0 {
  const [before, here, after] = [values[i - 1]!, values[i]!, values[i + 1]!];
  if (here >= before && here > after) return 1;
  if (here <= before && here < after) return -1;
  return 0;
}

/** Highest and lowest points of a sampled curve, in order of time, to about a second. */
export function turnsOf(curve: Curve, { startMs, stepMs, values }: Samples): Turn[] {
  const turns: Turn[] = [];
  for (let i = 1; i + 1 < values.length; i++) {
    const sign = turnSign(values, i);
    const atMs = startMs + i * stepMs;
    if (sign !== 0) turns.push(turnWithin(curve, atMs - stepMs, atMs + stepMs, sign));
  }
  return turns;
}

/**
 * Passages of a sampled curve through `level` within [fromMs, toMs), in order of time.
 * Between samples the curve may turn once, and must be concave round a highest point, convex round a lowest.
 */
export function crossingsIn(
  curve: Curve,
  { startMs, stepMs, values }: Samples,
  level: number,
  fromMs: number,
  toMs: number,
): Crossing[] {
  const found: Crossing[] = [];
  const add = (a: number, b: number, rising: boolean) => {
    const atMs = bisect(curve, level, a, b);
    if (atMs >= fromMs && atMs < toMs) found.push({ atMs, rising });
  };

  for (let i = 1; i < values.length; i++) {
    const atMs = startMs + i * stepMs;
    const here = values[i]!;
    const above = here >= level;
    if (above !== values[i - 1]! >= level) add(atMs - stepMs, atMs, above);
    if (i + 1 === values.length) break;

    // A turn beyond the level between samples on one side of it. By concavity the curve cannot rise past a
    // sample by more than it falls from there to the next, so most turns need no closer look.
    const sign = turnSign(values, i);
    const short = sign * (level - here);
    const drop = sign * here - Math.min(sign * values[i - 1]!, sign * values[i + 1]!);
    if (sign === 0 || short < 0 || short > drop) continue;
    const turn = turnWithin(curve, atMs - stepMs, atMs + stepMs, sign);
    if (turn.value >= level === above) continue;
    add(atMs - stepMs, turn.atMs, !above);
    add(turn.atMs, atMs + stepMs, above);
  }
  return found.sort((a, b) => a.atMs - b.atMs);
}

/**
 * When a smooth curve passes a level, in order of time. Samples every ten minutes and halves down to one
 * millisecond; the curve is also read up to twenty minutes outside the stretch.
 *
 * @param altitudeAt value at a UTC epoch millisecond; may turn at most once in ten minutes
 * @param altitudeDeg the level, in the unit of the curve
 * @param fromMs first instant that counts
 * @param toMs first instant that no longer counts
 * @returns one entry a passage, in order of time; none where the level is not passed
 * @throws RangeError where the stretch ends before it starts
 */
export function crossings(altitudeAt: Curve, altitudeDeg: number, fromMs: number, toMs: number): Crossing[] {
  return crossingsIn(altitudeAt, sampleCurve(altitudeAt, fromMs, toMs), altitudeDeg, fromMs, toMs);
}

/** Lowest and highest value of a curve over a stretch. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Lowest and highest value between two instants, under the conditions of {@link crossings}. */
export function rangeOf(curve: Curve, fromMs: number, toMs: number): Range {
  const turns = turnsOf(curve, sampleCurve(curve, fromMs, toMs)).filter(
    (t) => t.atMs >= fromMs && t.atMs < toMs,
  );
  const values = [curve(fromMs), curve(toMs), ...turns.map((turn) => turn.value)];
  return { low: Math.min(...values), high: Math.max(...values) };
}
