// How many seeded cases a property is tried on, and from which seed. Who looks for faults that nobody has met yet sets
// TEST_TIMES, so many times as many cases, and TEST_SEED, added to each seed.

const TIMES = Number(process.env.TEST_TIMES ?? 1);
const SHIFT = Number(process.env.TEST_SEED ?? 0);

export const casesOf = (count: number): number => Math.max(1, Math.round(TIMES * count));
export const seedOf = (seed: number): number => seed + SHIFT;
