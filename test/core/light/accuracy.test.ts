// The whole model against every open data set; the sets and their sources: test/data/README.md.

import { expect, test } from 'vitest';
import * as exposure from '../../../packages/core/src/exposure/exposure.js';
import * as moon from '../../../packages/core/src/light/moon.js';
import * as night from '../../../packages/core/src/light/night.js';
import * as scene from '../../../packages/core/src/light/scene.js';
import * as sky from '../../../packages/core/src/light/sky.js';
import * as sunlight from '../../../packages/core/src/light/sunlight.js';
import * as upright from '../../../packages/core/src/light/upright.js';
import * as words from '../../../packages/core/src/light/words.js';
import { accuracyTable, comparisons, writtenTable } from '../../../packages/tools/light-accuracy.mjs';

const light = { ...exposure, ...moon, ...night, ...scene, ...sky, ...sunlight, ...upright, ...words };
const rows = comparisons(light);
const sets = [...new Set(rows.map((row) => `${row.part}: ${row.against}`))];

test('every data set is there', () => {
  expect(sets.length).toBe(22);
  expect(rows.filter((row) => row.limitEv !== undefined).length).toBeGreaterThan(405);
});

for (const set of sets) {
  const members = rows.filter((row) => `${row.part}: ${row.against}` === set);
  const limitEv = members[0]?.limitEv;
  if (limitEv === undefined) continue;
  test(`${set} is met within ${limitEv} stop`, () => {
    expect(members.filter((row) => !(Math.abs(row.stops) <= limitEv))).toEqual([]);
  });
}

test('the table in docs/light.md is what the code gives', () => {
  expect(writtenTable()).toBe(accuracyTable(light));
});
