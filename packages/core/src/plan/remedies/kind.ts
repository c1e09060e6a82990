// What remedies are tried by: one kind of change, in rising amounts.

import type { RemedyChange } from './change.js';

/** Amounts of one kind of change, least first. */
export interface Kind {
  readonly amounts: number; // how many there are to try
  readonly at: (amount: number) => RemedyChange; // 1 … amounts
  readonly rising: boolean; // where one amount cures, every larger one does
}
