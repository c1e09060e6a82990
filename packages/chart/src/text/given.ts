// What drawings and sentences are made of, looked at once where it comes in.

import type { Words } from './words-en.js';

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** @throws RangeError unless the value has that key, or is a group at all where none is named */
export function checkGiven(name: string, value: unknown, key: string | undefined, what: string): void {
  if (typeof value === 'object' && value !== null && (key === undefined || key in value)) return;
  throw new RangeError(`${name} must be ${what}`);
}

const OF_A_PLAN = ['shoot', 'summary', 'events', 'frames', 'cues', 'notes'];

/** @throws RangeError unless it is a plan that can be shot */
export function checkPlan(plan: unknown): void {
  if (isGroup(plan) && plan.kind !== undefined && plan.kind !== 'ok') {
    throw new RangeError(`plan must be one whose kind is "ok", got ${JSON.stringify(plan.kind)}`);
  }
  const whole = isGroup(plan) && OF_A_PLAN.every((key) => typeof plan[key] === 'object');
  if (whole && Array.isArray(plan.frames) && plan.frames.length > 0) return;
  throw new RangeError('plan must be what planShoot or readPlan gives');
}

/** @throws RangeError on options that are no group, or hold a key that is not among those */
export function checkOptions(options: unknown, keys: readonly string[]): void {
  if (!isGroup(options)) throw new RangeError(`options must be a group with ${keys.join(', ')}`);
  const strange = Object.keys(options).find((key) => !keys.includes(key));
  if (strange !== undefined) {
    throw new RangeError(`options must have no key "${strange}"; there are ${keys.join(', ')}`);
  }
}

/** @throws RangeError unless they are words */
export function givenWords(words: Words): Words {
  checkGiven('words', words, 'library', 'what wordsFor gives');
  return words;
}
