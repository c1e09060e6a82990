// The surface of the packages is what its reports say, and all of it is documented.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { apiDocs } from '../../packages/tools/api-docs.mjs';
import { apiReports } from '../../packages/tools/api-report.mjs';
import { answersWithoutKind, unreachableTypes } from '../reference/named-types.js';

const folder = fileURLToPath(new URL('../../docs/api/', import.meta.url));
const reports = apiReports();

test('there is a report for each package', () => {
  expect(readdirSync(folder).sort()).toEqual(Object.keys(reports).sort());
});

test.each(Object.entries(reports))('docs/api/%s says what is offered', (name, text) => {
  const known = readFileSync(folder + name, 'utf8');
  expect(text, 'The surface has changed. If that is meant: npm run api').toBe(known);
});

test('every export is documented, every link in a comment leads somewhere', async () => {
  expect(await apiDocs()).toEqual([]);
});

test.each(['core', 'chart'] as const)('every type that a public type of %s names can be imported', (name) => {
  expect(unreachableTypes(name)).toEqual([]);
});

// Answers in the form that a person gives them in: a level of a frame, a shoot with its filters, are told apart by a key.
const AS_GIVEN = ['meanLevel', 'shootOnDate'];

test.each(['core', 'chart'] as const)('an answer of %s that may be one of several has a kind', (name) => {
  expect(answersWithoutKind(name).filter((each) => !AS_GIVEN.includes(each))).toEqual([]);
});

// Whoever has the package has no docs/: what a comment says must be in it. Sources are named in words, pages of ours not at all.
test.each(['core', 'chart'])(
  'no published type of %s sends its reader to a page that is not there',
  (name) => {
    const dist = fileURLToPath(new URL(`../../packages/${name}/dist/`, import.meta.url));
    const types = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter(
      (path) => path.endsWith('.d.ts') && !path.endsWith('-schema.d.ts'),
    );
    expect(types.length).toBeGreaterThan(20);
    expect(types.filter((path) => /\bdocs\//.test(readFileSync(dist + path, 'utf8')))).toEqual([]);
  },
);
