// A small seeded generator, so that a failing case can be named by its number.

export interface Random {
  unit(): number; // [0, 1)
  between(min: number, max: number): number;
  whole(min: number, max: number): number; // both ends possible
  chance(probability: number): boolean;
  pick<T>(from: readonly T[]): T;
}

/** mulberry32: 32 bits of state, period 2^32. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const unit = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    unit,
    between: (min, max) => min + (max - min) * unit(),
    whole: (min, max) => min + Math.floor((max - min + 1) * unit()),
    chance: (probability) => unit() < probability,
    pick: (from) => from[Math.floor(from.length * unit())]!,
  };
}
