// Numbers and times as German sentences write them.

import { minus } from './words-parts.js';

export const comma = (value: number | string) => minus(String(value)).replace('.', ',');
export const fixed = (value: number, digits = 1) =>
  comma((Number(value.toFixed(digits)) + 0).toFixed(digits));
/** "19:04" of a time as plans write it. */
export const minute = (at: string) => at.slice(11, 16);
