// What is long by nature: `npm test` runs a seeded slice of it, `npm run test:long` the whole. Every test file that
// imports this one belongs to the long run.

import { casesOf } from './cases.js';

export const isLongRun = process.env.TEST_LONG === '1';

/** How many of `all` seeded cases this run takes: all of them in the long run, else the first `slice`. */
export function sliceOf(all: number, slice: number): number {
  return casesOf(isLongRun ? all : slice);
}
