import { readFileSync } from 'node:fs';
import { lightTable, planShoot, writeLight, writePlan, writeShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { lightSchema } from '../../../packages/core/src/files/light-schema.js';
import { planSchema } from '../../../packages/core/src/files/plan-schema.js';
import { shootFileSchema } from '../../../packages/core/src/files/shoot-schema.js';
import { schemaFaults } from '../../reference/json-schema.js';
import { INFEASIBLE, LEAST, PLAN, shootOf } from './sample.js';

const published = (name: string) =>
  readFileSync(
    new URL(`../../../packages/core/schema/evenfall-${name}-1.schema.json`, import.meta.url),
    'utf8',
  );

test('the published schemas are those the reader uses: else run `npm run build && node .tasks/schemas.mjs`', async () => {
  // Not a literal, so that the compiler does not look for types beside a plain script.
  const script = new URL('../../../.tasks/schemas.mjs', import.meta.url).href;
  const { publishedSchemas } = (await import(script)) as {
    publishedSchemas(schemas: object): Record<string, string>;
  };
  const texts = publishedSchemas({ shoot: shootFileSchema, plan: planSchema, light: lightSchema });
  expect(Object.keys(texts)).toHaveLength(3);
  for (const [name, text] of Object.entries(texts)) {
    expect(text).toBe(published(name.replace(/^evenfall-|-1\.schema\.json$/g, '')));
  }
});

// The reader of schemas in test/reference knows the published files alone.
describe('what the library writes satisfies the published schema', () => {
  const shoot = shootOf({ ...LEAST, intervalS: 60, crew: 'rig' });
  const rows: readonly (readonly [string, string, string])[] = [
    ['the least shoot file', 'shoot', JSON.stringify(LEAST)],
    ['a shoot with its defaults', 'shoot', writeShoot(shoot)],
    ['a plan by hand', 'plan', writePlan(PLAN)],
    ['a plan of the planner', 'plan', writePlan(planShoot(shoot))],
    ['an impossible plan by hand', 'plan', writePlan(INFEASIBLE)],
    [
      'an impossible plan of the planner',
      'plan',
      writePlan(planShoot({ ...shoot, camera: { ...shoot.camera, iso: { lowest: 100, highest: 100 } } })),
    ],
    ['a light table', 'light', writeLight(light())],
  ];
  test.each(rows)('%s', (_name, format, text) => {
    expect(schemaFaults(JSON.parse(published(format)), JSON.parse(text))).toEqual([]);
  });

  function light() {
    const table = lightTable(shoot);
    if ('infeasible' in table) throw new Error(table.infeasible.text);
    return table;
  }
});

describe('the published schema refuses', () => {
  test.each([
    ['a key nobody knows', { ...LEAST, intervlaS: 5 }, ': knows no intervlaS'],
    ['a missing key', { ...LEAST, date: undefined }, ': requires date'],
    [
      'a latitude of 95',
      { ...LEAST, place: { latitudeDeg: 95, longitudeDeg: 0 } },
      '/place/latitudeDeg: maximum 90',
    ],
    ['an interval of nothing', { ...LEAST, intervalS: 0 }, '/intervalS: exclusiveMinimum 0'],
    ['a move', { ...LEAST, moves: [{}] }, '/moves/0: not {}'],
  ])('%s', (_name, value, fault) => {
    const faults = schemaFaults(JSON.parse(published('shoot')), JSON.parse(JSON.stringify(value)));
    expect(faults).toEqual([fault]);
  });
});
