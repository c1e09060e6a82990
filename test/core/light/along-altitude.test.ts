// Altitudes a hair above the horizon, where a degree and the hair are one number.

import { expect, test } from 'vitest';
import { alongAltitude } from '../../../packages/core/src/light/along-altitude.js';

test.each([
  [5e-42, 2e-43],
  [5e-42, 0],
  [5e-42, 3.4],
  [0, 5e-42],
  [89.999_999, 90],
])(
  'a sky of the same light everywhere, set up at %f° and read at %f°, has that light',
  (fromDeg, altitudeDeg) => {
    const sky = alongAltitude(() => () => 3, fromDeg);
    expect(sky(altitudeDeg)(10, 90)).toBeCloseTo(3, 12);
  },
);
