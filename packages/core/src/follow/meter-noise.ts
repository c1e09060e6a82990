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

// Our choices: what the stated spread counts for; how many changes are remembered, to 1/e; what is soon; what is weather, or
// a slip. Few changes do not tell whether the light stands still; from one frame to the next it is taken to.
const STATED_COUNTS = 2;
const MEMORY = 100;
const SOON_MS = 90_000;
const AT_ONCE_MS = 20_000;
const MOST_CHANGE_EV = 1.5;
const FEW = 12;

const kept = Math.exp(-1 / MEMORY);

/** With one more reading that is used. */
export function withReading(noise: MeterNoise | undefined, atMs: number, offsetEv: number): MeterNoise {
  if (noise === undefined) {
    return { atMs, offsetEv, changeEv: undefined, afterMs: 0, count: 0, squares: 0, products: 0 };
  }
  const { changeEv: before, count, squares, products } = noise;
  const afterMs = atMs - noise.atMs;
  if (afterMs > SOON_MS) return { ...noise, atMs, offsetEv, changeEv: undefined, afterMs };
  const changeEv = Math.min(MOST_CHANGE_EV, Math.max(-MOST_CHANGE_EV, offsetEv - noise.offsetEv));
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
  if (noise === undefined || noise.changeEv === undefined) return statedEv;
  const { count, squares, products, afterMs } = noise;
  const stated = STATED_COUNTS * statedEv ** 2;
  const still = (stated + squares / 2) / (STATED_COUNTS + count);
  const moving = (stated - 2 * products) / (STATED_COUNTS + count);
  const early = count < FEW && afterMs <= AT_ONCE_MS;
  return Math.sqrt(Math.max(statedEv ** 2, early ? still : Math.min(still, moving)));
}
