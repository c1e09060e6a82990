// What the light of a scene costs, next to one position of the sun in the same run: read the ratio.
// The test runner looks every imported name up anew, which the model has many of and suncalc none: built, the
// ratio is about half of what is printed here.

import { getPosition } from 'suncalc';
import { bench, describe } from 'vitest';
import { type Sky, sceneLight } from '../../packages/core/src/light/scene.js';
import { sceneOf } from '../../packages/core/src/light/words.js';

const light = sceneLight(
  sceneOf(
    {
      facing: 'toward-sun',
      viewAltitudeDeg: 15,
      skyShare: 0.5,
      cloud: 'thin',
      night: 'rural',
      lamps: 'skyline',
    },
    270,
  ),
);

const FRAMES = 20_000;
const moon = { moonAltitudeDeg: 25, moonAzimuthDeg: 120, moonPhaseAngleDeg: 30, moonDistanceKm: 384_400 };
const skies: Sky[] = Array.from({ length: FRAMES }, (_, i) => ({
  ...moon,
  sunAltitudeDeg: 12 - (30 * i) / FRAMES,
  sunAzimuthDeg: 265 + (20 * i) / FRAMES,
}));

let sink = 0;
let turn = 0;

describe('one frame', () => {
  bench('position of the sun (suncalc alone)', () => {
    sink += getPosition(new Date(1_750_000_000_000 + turn++ * 5000), 45, 10).azimuth;
  });
  bench('light of a scene', () => {
    sink += light(skies[turn++ % FRAMES]!).ev100;
  });
});

describe('20,000 frames', () => {
  bench('positions of the sun (suncalc alone)', () => {
    for (let i = 0; i < FRAMES; i++) {
      sink += getPosition(new Date(1_750_000_000_000 + i * 5000), 45, 10).azimuth;
    }
  });
  bench('light curve', () => {
    for (const sky of skies) sink += light(sky).ev100;
  });
});

if (Number.isNaN(sink)) throw new Error('the light of a scene was not a number');
