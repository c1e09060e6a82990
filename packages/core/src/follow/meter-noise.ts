// How much a meter trembles, from the readings themselves. Light moves on from one reading to the next; what a meter adds by
// itself is taken back by the next. So half the mean square of the changes is the variance of a reading if the light
// stands still, and the mean product of two changes in a row, its sign turned, is that variance whether it does or not: the
// first is the surer figure, the second tells whether it may be used. Source: docs/sources.md#meter-noise.

/** What the readings so far say. */
export interface MeterNoise {
  readonly atMs: number; // of the last reading used
  readonly offsetEv: number; // its reading less the forecast
  readonly changeEv: number | undefined; // of it against the one before, where that was soon before
  readonly afterMs: number; // that one
  // Sums over changes that were followed by another, older ones forgotten.
  readonly count: number;
  readonly squares: number;
  readonly products: number;
}

// Our choices: what the stated spread counts for, in changes, and what is taken for it at first by who reads every frame,
// and so can wait a few; how many changes are remembered, to 1/e; what is soon; what is weather, or a slip.
const STATED_COUNTS = 1;
const AT_FIRST_EV = 0.3;
const MEMORY = 300;
const SOON_MS = 90_000;
const AT_ONCE_MS = 20_000;
const MOST_CHANGE_EV = 1.5;
// Standard error of the second figure, in parts of the first over the root of their number: the product of two changes of
// white noise has a variance of five squares of the mean. Source: docs/sources.md#meter-noise.
const PRODUCT_ERROR = Math.sqrt(5);

const kept = Math.exp(-1 / MEMORY);

/** With one more reading that is used. */
export function withReading(noise: MeterNoise | undefined, atMs: number, offsetEv: number): MeterNoise {
  if (noise === undefined) {
    return { atMs, offsetEv, changeEv: undefined, afterMs: 0, count: 0, squares: 0, products: 0 };
  }
  const { changeEv: before, count, squares, products } = noise;
  const afterMs = atMs - noise.atMs;
  const changeEv = offsetEv - noise.offsetEv;
  if (afterMs > SOON_MS || Math.abs(changeEv) > MOST_CHANGE_EV) {
    return { ...noise, atMs, offsetEv, changeEv: undefined, afterMs };
  }
  if (before === undefined) return { ...noise, atMs, offsetEv, changeEv, afterMs };
  return {
    atMs,
    offsetEv,
    changeEv,
    afterMs,
    count: kept * count + 1,
    squares: kept * squares + (before ** 2 + changeEv ** 2) / 2,
    products: kept * products + before * changeEv,
  };
}

/** Standard deviation of a reading, stops: as stated, or more where the readings say so. */
export function meterSpreadEv(noise: MeterNoise | undefined, statedEv: number): number {
  if (noise === undefined || (noise.changeEv === undefined && noise.count === 0)) return statedEv;
  const { count, squares, products, afterMs } = noise;
  const isAtOnce = afterMs <= AT_ONCE_MS;
  const first = STATED_COUNTS * (isAtOnce ? Math.max(statedEv, AT_FIRST_EV) : statedEv) ** 2;
  const still = (first + squares / 2) / (STATED_COUNTS + count);
  const moving = (first - 2 * products) / (STATED_COUNTS + count);
  // From one frame to the next the light is taken to stand still, until the changes say surely that it does not.
  const error = isAtOnce && count > 0 ? (PRODUCT_ERROR * still) / Math.sqrt(count) : 0;
  return Math.sqrt(Math.max(statedEv ** 2, Math.min(still, moving + error)));
}
