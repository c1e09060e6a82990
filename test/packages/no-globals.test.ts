// Core needs nothing of its host but the language.

import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { bundle } from '../../packages/tools/bundle.mjs';
import { ALLOWED, runBare } from './bare-realm.js';
import { functionNames, surface, surfaceText } from './surface.js';

const here = fileURLToPath(new URL('.', import.meta.url));
let code = '';
beforeAll(async () => {
  ({ code } = await bundle(`${here}surface.ts`, here, 'iife'));
});

test('every exported function is called', () => {
  expect(Object.keys(surface()).sort()).toEqual(functionNames().sort());
});

test('the whole of core answers in a realm without clock, chance, host or page, as it answers here', () => {
  expect(JSON.parse(runBare(code, 'evenfall.surfaceText()'))).toEqual(JSON.parse(surfaceText()));
});

test('the realm has what is allowed and nothing else', () => {
  const names = runBare('', 'JSON.stringify(Object.getOwnPropertyNames(globalThis))');
  expect((JSON.parse(names) as string[]).sort()).toEqual([...ALLOWED].sort());
});

test.each([
  ['Date.now()', 'Date.now'],
  ['new Date()', 'a date of 0 arguments'],
  ['new Date("2026-10-14")', 'a date of 1 arguments, string'],
  ['Date.parse("2026-10-14T18:00:00")', 'in the zone of the machine'],
  ['new Date(2026, 9, 14)', 'a date of 3 arguments'],
  ['new Date(0).getHours()', 'getHours'],
  ['String(new Date(0))', 'toString'],
  ['Math.random()', 'Math.random'],
  ['new Intl.DateTimeFormat()', 'language or zone'],
  ['new Intl.DateTimeFormat("en", { timeZone: "UTC" }).format()', 'no given time'],
  ['(1).toLocaleString()', 'toLocaleString'],
  ['"a".localeCompare("b")', 'localeCompare'],
  ['process.env', 'process is not defined'],
  ['console.log(1)', 'console is not defined'],
  ['fetch("")', 'fetch is not defined'],
  ['setTimeout(() => {})', 'setTimeout is not defined'],
  ['performance.now()', 'performance is not defined'],
  ['document.title', 'document is not defined'],
  ['eval("1")', 'eval is not defined'],
])('the realm refuses %s', (expression, message) => {
  expect(() => runBare('', `String(${expression})`)).toThrow(message);
});
