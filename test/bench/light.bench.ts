// What the light of a scene costs, next to one position of the sun in the same run: read the ratio.

import { getPosition } from 'suncalc';
import { bench, describe } from 'vitest';
import { forecastBand, NOTHING_KNOWN } from '../../packages/core/dist/light/band.js';
import { type Sky, sceneLight } from '../../packages/core/dist/light/scene.js';
import { weatherHeld } from '../../packages/core/dist/light/weather-held.js';
import { sceneOf } from '../../packages/core/dist/light/words.js';
import { forecastLight } from '../../packages/core/dist/plan/forecast.js';
import { shootSpan } from '../../packages/core/dist/shoot/span.js';
import { shootFrom } from '../core/shoots.js';

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

const shoot = shootFrom({
  date: '2026-09-18',
  span: { startAt: '2026-09-18T19:00:00+02:00', endAt: '2026-09-18T21:46:39+02:00' },
  intervalS: 0.5,
  camera: {
    shutter: { shortest: '1/4000', longest: '1/4' },
    iso: { lowest: 100, highest: 3200 },
    aperture: '4',
    gapS: 0.1,
  },
});
const span = shootSpan(shoot);
const times = span.kind === 'ok' ? span.times : new Float64Array();
if (times.length < FRAMES - 1) throw new Error(`the shoot has ${times.length} frames`);

const words = {
  facing: 'toward-sun',
  viewAltitudeDeg: 15,
  skyShare: 0.5,
  cloud: 'clear',
  night: 'rural',
  lamps: 'none',
} as const;
const one = sceneLight(sceneOf(words, 270));
const whole = sceneLight({ ...sceneOf(words, 270), field: { horizontalDeg: 73.7, verticalDeg: 53.1 } });
const band = forecastBand(NOTHING_KNOWN);
const lights = skies.map((sky) => one(sky));
for (const sky of skies) whole(sky); // rows of its table are set-up

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

// Bounds: the whole field at most twice one direction; the band of a plan at most as dear as its forecast.
describe('20,000 frames of the same scene', () => {
  bench('one direction', () => {
    for (const sky of skies) sink += one(sky).ev100;
  });
  bench('the whole field of a lens', () => {
    for (const sky of skies) sink += whole(sky).ev100;
  });
  bench('the band', () => {
    for (const { parts } of lights) sink += band(parts).lowEv;
  });
  bench('what weather every frame holds', () => {
    const frames = lights.map(({ parts }) => ({ parts, darkEv: 2, brightEv: 2 }));
    sink += weatherHeld(frames, NOTHING_KNOWN).darkEv;
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
  bench('forecast of a shoot: sun, moon, light, range', () => {
    sink += forecastLight(shoot, times).sceneEv100[0];
  });
});

if (Number.isNaN(sink)) throw new Error('the light of a scene was not a number');
