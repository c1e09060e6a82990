import { readFileSync } from 'node:fs';
import { lightTable, planShoot, writeLight, writePlan, writeShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { englishGive } from '../../../packages/core/src/files/english-faults.js';
import { eveningsSchema } from '../../../packages/core/src/files/evenings-schema.js';
import { lightSchema } from '../../../packages/core/src/files/light-schema.js';
import { planSchema } from '../../../packages/core/src/files/plan-schema.js';
import { reviewSchema } from '../../../packages/core/src/files/review-schema.js';
import { shootFileSchema } from '../../../packages/core/src/files/shoot-schema.js';
import { published, schemaReader } from '../../reference/json-schema.js';
import { INFEASIBLE, LEAST, PLAN, shootOf } from './sample.js';

const schemaText = (name: string) =>
  readFileSync(new URL(`../../../packages/core/schema/${name}`, import.meta.url), 'utf8');

test('the published schemas are those the reader uses: else run `npm run build && node packages/tools/schemas.mjs`', async () => {
  // Not a literal, so that the compiler does not look for types beside a plain script.
  const script = new URL('../../../packages/tools/schemas.mjs', import.meta.url).href;
  const { publishedSchemas } = (await import(script)) as {
    publishedSchemas(schemas: object, describe: typeof englishGive): Record<string, string>;
  };
  const texts = publishedSchemas(
    {
      shoot: shootFileSchema,
      plan: planSchema,
      light: lightSchema,
      evenings: eveningsSchema,
      review: reviewSchema,
    },
    englishGive,
  );
  expect(Object.keys(texts)).toHaveLength(5);
  for (const [name, text] of Object.entries(texts)) {
    expect(text).toBe(schemaText(name));
  }
});

const PAN = { axis: 'pan', by: { deg: 20 }, gear: { topSpeedDegPerS: 5, smallestStepDeg: 0.01 } };
const SLIDE = {
  axis: 'slide',
  by: { trackM: 2, marginM: 0.1 },
  ease: { trapezoid: 0.2 },
  gear: { moveS: 2 },
  nearestM: 3,
};
const TILT = { axis: 'tilt', by: { sizeM: -3, distanceM: 30 }, mode: 'continuous', ease: 'linear' };

describe('what the library writes satisfies the published schema', () => {
  const shoot = shootOf({ ...LEAST, intervalS: 60, crew: 'rig' });
  const moving = shootOf({
    ...LEAST,
    intervalS: 60,
    camera: {
      ...LEAST.camera,
      coldFactor: 0.7,
      lens: { focalMm: 35 },
      sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 },
    },
    moves: [PAN, TILT, SLIDE],
  });
  const rows: readonly (readonly [string, 'shoot' | 'plan' | 'light', string])[] = [
    ['the least shoot file', 'shoot', JSON.stringify(LEAST)],
    ['a shoot with its defaults', 'shoot', writeShoot(shoot)],
    ['a plan by hand', 'plan', writePlan(PLAN)],
    ['a plan of the planner', 'plan', writePlan(planShoot(shoot))],
    ['a shoot with moves', 'shoot', writeShoot(moving)],
    ['a plan with moves', 'plan', writePlan(planShoot(moving))],
    ['an impossible plan by hand', 'plan', writePlan(INFEASIBLE)],
    [
      'an impossible plan of the planner',
      'plan',
      writePlan(planShoot({ ...shoot, camera: { ...shoot.camera, iso: { lowest: 100, highest: 100 } } })),
    ],
    ['a light table', 'light', writeLight(light())],
  ];
  test.each(rows)('%s', (_name, format, text) => {
    expect(schemaReader(published(format))(JSON.parse(text))).toEqual([]);
  });

  function light() {
    const table = lightTable(shoot);
    if (table.kind === 'infeasible') throw new Error(table.infeasible.text);
    return table;
  }
});

describe('the published schema refuses', () => {
  test.each([
    ['a key nobody knows', { ...LEAST, intervlaS: 5 }, ' must NOT have additional properties'],
    ['a missing key', { ...LEAST, date: undefined }, " must have required property 'date'"],
    [
      'a latitude of 95',
      { ...LEAST, place: { latitudeDeg: 95, longitudeDeg: 0 } },
      '/place/latitudeDeg must be <= 90',
    ],
    ['an interval of nothing', { ...LEAST, intervalS: 0 }, '/intervalS must be > 0'],
    ['a fourth move', { ...LEAST, moves: [PAN, PAN, PAN, PAN] }, '/moves must NOT have more than 3 items'],
  ])('%s', (_name, value, fault) => {
    const faults = schemaReader(published('shoot'))(JSON.parse(JSON.stringify(value)));
    expect(faults).toEqual([fault]);
  });
});
