// From one filter stack to another: what it costs, and how far the level may jump.

import type { Band } from './band.js';
import { filterPrice, type Lattice, SLACK } from './lattice.js';

/** A change to another stack: its price, and where its level may lie, counted from the level before. */
export interface Swap extends Band {
  readonly to: number;
  readonly price: number; // without what is reset beside it
}

/** Swaps by the stack they leave, weaker stacks first. */
export function swapsOf(lattice: Lattice): Swap[][] {
  const { stops, stepsPerStop, largestStep } = lattice;
  const stacks = stops.map((_, stack) => stack);
  return stacks.map((from) =>
    stacks
      .filter((to) => to !== from)
      .map((to) => {
        // The level of stack `to` that renders the same need not be whole: filters lie off the lattice.
        const same = (stops[from] - stops[to]) * stepsPerStop;
        return {
          to,
          price: filterPrice(lattice, from, to),
          low: Math.ceil(same - largestStep - SLACK),
          high: Math.floor(same + largestStep + SLACK),
        };
      }),
  );
}
