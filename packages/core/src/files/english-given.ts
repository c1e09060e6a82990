import type { Given } from './fault.js';
import { quotedText } from './quoted.js';

const SORTS = { nothing: 'nothing', list: 'a list', keys: 'a group of keys', function: 'a function' };

/** A value of a file as an English fault shows it: 95, "north", a list. */
export function englishGiven(given: Given): string {
  if (typeof given === 'object') return SORTS[given.sort];
  return typeof given === 'string' ? quotedText(given) : String(given);
}
