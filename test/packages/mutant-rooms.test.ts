// No file of core is left out where faults are put into it, and every test that is to find them is there.

import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { filesOf, ROOMS } from '../../packages/tools/mutant-rooms.mjs';

const CORE = fileURLToPath(new URL('../../packages/core/src', import.meta.url));
const TEST = fileURLToPath(new URL('..', import.meta.url));

const under = (folder: string) =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map(({ parentPath, name }) => `${parentPath}/${name}`.slice(folder.length).replace(/^\/+/, ''));

test('every file of core belongs to one room', () => {
  const all = under(CORE).filter((path) => !path.endsWith('index.ts'));
  const rooms = Object.keys(ROOMS).flatMap((room) => filesOf(CORE, room));
  expect(all.length).toBeGreaterThan(100);
  expect([...rooms].sort()).toEqual([...all].sort());
});

test('every test that a room names is there', () => {
  const tests = under(TEST).filter((path) => path.endsWith('.test.ts'));
  const named = Object.values(ROOMS).flatMap(({ quick, slow }) => [...quick, ...slow]);
  expect(named.filter((name) => !tests.some((path) => path.includes(name)))).toEqual([]);
});
