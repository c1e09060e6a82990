// What drawings and sentences are made of, looked at once where it comes in.

import type { Words } from './words-en.js';

/** @throws RangeError unless the value has that key, or is a group at all where none is named */
export function checkGiven(name: string, value: unknown, key: string | undefined, what: string): void {
  if (typeof value === 'object' && value !== null && (key === undefined || key in value)) return;
  throw new RangeError(`${name} must be ${what}`);
}

/** @throws RangeError unless it is a plan that can be shot */
export function checkPlan(plan: unknown): void {
  checkGiven('plan', plan, 'kind', 'what planShoot or readPlan gives');
  const { kind } = plan as { readonly kind: unknown };
  if (kind !== 'ok') throw new RangeError(`plan must be one whose kind is "ok", got ${JSON.stringify(kind)}`);
}

/** @throws RangeError unless they are words */
export function givenWords(words: Words): Words {
  checkGiven('words', words, 'library', 'what wordsFor gives');
  return words;
}
