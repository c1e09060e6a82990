// What a remedy is tried by: one kind of change, in rising amounts.

import type { Remedy } from '../types.js';

/** A change to a shoot, by key and in words. */
export type Candidate = Omit<Remedy, 'change'>;

/** Amounts of one kind of change, least first. */
export interface Kind {
  readonly change: string;
  readonly amounts: number; // how many there are to try
  readonly at: (amount: number) => Candidate; // 1 … amounts
  readonly rising: boolean; // where one amount cures, every larger one does
}
