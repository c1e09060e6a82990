// Every exported name says what it is: shapes, units, ranges, errors, and for what computes an example that runs.

import { beforeAll, expect, test } from 'vitest';
import { withBadArguments } from './reference/bad-arguments.js';
import { exportedNames } from './reference/exports.js';
import type { Snippet } from './reference/snippet-blocks.js';
import { runSnippets, type SnippetResult } from './reference/snippet-run.js';

const names = exportedNames(['core', 'chart']);
/** Before an example that says so. */
const planned = names.find(({ name }) => name === 'planShoot')?.examples ?? [];
const goesOn = (code: string) =>
  /^\/\/ With the (shoot|plan|shoot and plan) of planShoot's example\.$/m.test(code);
const moduleOf = (example: Snippet) => (goesOn(example.code) ? [...planned, example] : [example]);
const results = new Map<string, readonly SnippetResult[]>();

beforeAll(() => {
  const examples = names.flatMap(({ name, examples }) => examples.map((example) => ({ name, example })));
  const ran = runSnippets(examples.map(({ example }) => moduleOf(example)));
  for (const [i, { name }] of examples.entries()) results.set(name, [...(results.get(name) ?? []), ran[i]!]);
});

test('there are names of every kind', () => {
  const count = (kind: string) => names.filter((each) => each.kind === kind).length;
  expect(count('function')).toBeGreaterThan(60);
  expect(count('constant')).toBeGreaterThan(5);
  expect(count('type')).toBeGreaterThan(80);
});

test.each(names)('$package $name is documented', ({ at, gaps }) => {
  expect(gaps, at).toEqual([]);
});

test.each(names.filter(({ kind }) => kind !== 'type'))(
  'the example of $package $name is true',
  ({ name }) => {
    const ran = results.get(name) ?? [];
    expect(ran.flatMap(({ failures }) => failures)).toEqual([]);
    expect(ran.reduce((sum, { checkCount }) => sum + checkCount, 0)).toBeGreaterThan(0);
  },
);

test('a number that is checked is named by the error', () => {
  const examples = names.flatMap(withBadArguments);
  expect(examples.length).toBeGreaterThan(20);
  const ran = runSnippets(examples.map((example) => moduleOf(example)));
  expect(ran.flatMap(({ failures }) => failures)).toEqual([]);
});
