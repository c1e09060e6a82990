// Whatever a shoot file may say of a scene, the model takes: the ranges of the two must not part.

import { expect, test } from 'vitest';
import { lightTable } from '../../../packages/core/src/plan/plan.js';
import { shootFrom } from '../shoots.js';

const SCENES: readonly Record<string, unknown>[] = [
  { viewAltitudeDeg: 0 },
  { viewAltitudeDeg: 90 },
  { skyShare: 0, reflectance: 0.001 },
  { skyShare: 1, reflectance: 1 },
  { skyShare: 0, uprightShare: 1, facing: 'toward-sun' },
  { uprightShare: 0.5, facing: 'away', cloud: 'broken' },
  { facing: { azimuthDeg: 0 } },
  { facing: { azimuthDeg: 360 } },
  { cloud: { eighths: 0 } },
  { cloud: { eighths: 8 } },
  { night: { zenithMagArcsec2: 14 } },
  { night: { zenithMagArcsec2: 23 } },
  { night: { groundLx: 1e-9 } },
  { night: { groundLx: 200 } },
  { lamps: { ev100: -15, share: 0 } },
  { lamps: { ev100: 25, share: 1 } },
  ...['grass', 'sand', 'snow', 'water', 'rock', 'city'].map((surface) => ({ surface })),
  ...['clear', 'thin', 'broken', 'overcast', 'heavy'].map((cloud) => ({ cloud })),
  ...['remote', 'rural', 'suburb', 'town', 'city'].map((night) => ({ night })),
  ...['none', 'street', 'floodlit', 'skyline'].map((lamps) => ({ lamps })),
];

test.each(SCENES)('%o', (scene) => {
  const table = lightTable(shootFrom({ intervalS: 300, scene }));
  if (!('rows' in table)) throw new Error(table.infeasible.text);
  expect(table.rows.length).toBeGreaterThan(10);
  for (const { sceneEv100, lowEv100, highEv100 } of table.rows) {
    expect(lowEv100).toBeLessThan(sceneEv100);
    expect(highEv100).toBeGreaterThan(sceneEv100);
  }
});
