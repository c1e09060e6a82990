// Numbers and times as German sentences write them.

import { minus } from './words-parts.js';

export const comma = (value: number | string) => minus(String(value)).replace('.', ',');
export const fixed = (value: number, digits = 1) =>
  comma((Number(value.toFixed(digits)) + 0).toFixed(digits));
