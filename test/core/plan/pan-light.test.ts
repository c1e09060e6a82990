// A frame's light is that of where the lens points at that frame: pans and tilts change it.

import { type PlanMade, planShoot, type Shoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { luminanceToEv100 } from '../../../packages/core/src/exposure/exposure.js';
import { sceneLight } from '../../../packages/core/src/light/scene.js';
import { CLOUDS, NIGHTS } from '../../../packages/core/src/light/words.js';
import { pointing } from '../../../packages/core/src/move/pointing.js';
import { travelsOf } from '../../../packages/core/src/move/resolve.js';
import { forecastLight } from '../../../packages/core/src/plan/forecast.js';
import { shootSpan } from '../../../packages/core/src/shoot/span.js';
import { readRows } from '../../../packages/tools/light-accuracy.mjs';
import { turn } from '../move/moves.js';
import { shootFrom } from '../shoots.js';

const moon = { moonAltitudeDeg: -40, moonAzimuthDeg: 0, moonPhaseAngleDeg: 180, moonDistanceKm: 384_400 };

test('a lens turned to any measured piece of twilight sky meters what was measured there (Koomen et al. 1952)', () => {
  const light = sceneLight({
    viewAzimuthDeg: 270,
    viewAltitudeDeg: 20,
    skyShare: 1,
    reflectance: 0.18,
    uprightShare: 0,
    cloud: CLOUDS.clear,
    night: NIGHTS.remote,
    lamps: { luminanceCdM2: 0, share: 0 },
  });
  const cells = readRows('koomen_1952_twilight_sky_luminance').filter(({ flag }) => flag === '');
  let met = 0;
  for (const cell of cells) {
    const sunAltitudeDeg = Number(cell.sun_altitude_deg);
    if (sunAltitudeDeg < -6) continue; // the night's own light counts there
    const { ev100 } = light(
      { ...moon, sunAltitudeDeg, sunAzimuthDeg: 270 },
      {
        viewAzimuthDeg: 270 + Number(cell.azimuth_from_sun_deg),
        viewAltitudeDeg: Number(cell.view_altitude_deg),
      },
    );
    expect(Math.abs(ev100 - luminanceToEv100(Number(cell.luminance_cdm2_sea_level)))).toBeLessThan(0.002);
    met++;
  }
  expect(met).toBeGreaterThan(150);
});

describe('where the lens points', () => {
  const at = (pan: number, tilt: number, start = { azimuthDeg: 200, altitudeDeg: 30 }) =>
    pointing(
      start,
      travelsOf([
        ...(pan === 0 ? [] : [turn('pan', pan, { ease: 'linear' })]),
        turn('tilt', tilt, { ease: 'linear' }),
      ]),
      3,
    );

  test('is where it starts and both turns added, half of them in the middle of a linear move', () => {
    const view = at(80, 20);
    expect([0, 1, 2].map(view)).toEqual([
      { azimuthDeg: 200, altitudeDeg: 30 },
      { azimuthDeg: 240, altitudeDeg: 40 },
      { azimuthDeg: 280, altitudeDeg: 50 },
    ]);
    // Before and after the shoot it stands.
    expect(view(-7)).toEqual(view(0));
    expect(view(9)).toEqual(view(2));
  });

  test('past the zenith and past straight down is the other side', () => {
    expect(at(0, 80)(2)).toEqual({ azimuthDeg: 380, altitudeDeg: 70 });
    expect(at(0, -140)(2)).toEqual({ azimuthDeg: 380, altitudeDeg: -70 });
    // All the way round.
    expect(at(0, 360)(2).altitudeDeg).toBeCloseTo(30, 9);
    expect(at(0, 360)(2).azimuthDeg % 360).toBeCloseTo(200, 9);
  });
});

const CAMERA = {
  shutter: { shortest: '1/4000', longest: '10' },
  iso: { lowest: 100, highest: 6400 },
  aperture: '2.8',
};
const gear = { topSpeedDegPerS: 10, settleS: 0.5 };
const evening = (keys: object) =>
  shootFrom({
    intervalS: 15,
    camera: CAMERA,
    span: { fromSunAltitudeDeg: 4, toSunAltitudeDeg: -11 },
    ...keys,
  });
const facing = (azimuthDeg: number, keys: object = {}) =>
  evening({ ...keys, scene: { facing: { azimuthDeg }, viewAltitudeDeg: 20 } });

function made(shoot: Shoot): PlanMade {
  const plan = planShoot(shoot);
  if (plan.kind === 'infeasible') throw new Error(plan.infeasible.text);
  return plan;
}

function lightOf(shoot: Shoot) {
  const span = shootSpan(shoot);
  if (span.kind !== 'ok') throw new Error('no span');
  return forecastLight(shoot, span.times);
}

describe('a pan of 105° from the afterglow', () => {
  const pan = { axis: 'pan', by: { deg: 105 }, gear };
  const panned = made(facing(270, { moves: [pan] }));
  const places = [0, 0.3, 0.5, 0.8, 1].map((share) => Math.floor(share * (panned.frames.length - 1)));

  test('every frame has the light of a camera that stands and faces that way', () => {
    for (const i of places) {
      const { panDeg, sceneEv100, lowEv100, highEv100 } = panned.frames[i]!;
      const still = lightOf(facing((270 + panDeg!) % 360));
      expect(sceneEv100).toBeCloseTo(still.sceneEv100[i]!, 9);
      expect(lowEv100).toBeCloseTo(still.lowEv100[i]!, 9);
      expect(highEv100).toBeCloseTo(still.highEv100[i]!, 9);
    }
  });

  test('at its end the scene is over a stop darker than for a camera that stayed, and so the setting', () => {
    const stayed = made(facing(270));
    const [end, other] = [panned.frames.at(-1)!, stayed.frames.at(-1)!];
    // Koomen's own cells, sun at -9° and -12°, 20° up: 2.1 to 2.5 stops from below the sun to 90° and beyond.
    expect(other.sceneEv100 - end.sceneEv100).toBeGreaterThan(1);
    expect(other.settingEv100 - end.settingEv100).toBeGreaterThan(0.5);
    expect(panned.frames[0]!.sceneEv100).toBe(stayed.frames[0]!.sceneEv100);
  });

  test('a pan by the compass says itself where it starts', () => {
    const by = { fromBearingDeg: 270, toBearingDeg: 15 };
    for (const facing of ['toward-sun', 'away', { azimuthDeg: 90 }]) {
      const shoot = evening({ scene: { facing, viewAltitudeDeg: 20 }, moves: [{ ...pan, by }] });
      expect(made(shoot).frames).toEqual(panned.frames);
    }
  });

  test('a reading is held against the light of where the lens points at that time', () => {
    const i = places[3]!;
    const { at, sceneEv100, panDeg } = panned.frames[i]!;
    const ev100 = lightOf(facing((270 + panDeg!) % 360)).sceneEv100[i]!;
    const read = made(facing(270, { moves: [pan], readings: [{ at, ev100 }] }));
    // It says what was expected: nothing moves.
    for (const j of places) expect(read.frames[j]!.sceneEv100).toBeCloseTo(panned.frames[j]!.sceneEv100, 3);
    expect(sceneEv100).toBeCloseTo(ev100, 9);
  });
});

test('a tilt of 50° upward: every frame has the light of a camera that looks so high', () => {
  const tilted = made(facing(270, { moves: [{ axis: 'tilt', by: { deg: 50 }, gear }] }));
  for (const share of [0, 0.37, 0.5, 1]) {
    const i = Math.floor(share * (tilted.frames.length - 1));
    const viewAltitudeDeg = 20 + tilted.frames[i]!.tiltDeg!;
    const still = lightOf(evening({ scene: { facing: { azimuthDeg: 270 }, viewAltitudeDeg } }));
    expect(Math.abs(tilted.frames[i]!.sceneEv100 - still.sceneEv100[i]!)).toBeLessThan(0.002);
  }
  const level = lightOf(facing(270));
  expect(level.sceneEv100.at(-1)! - tilted.frames.at(-1)!.sceneEv100).toBeGreaterThan(0.5);
});

test('a slide turns nothing: the light is that without it, to the last digit', () => {
  const slide = { axis: 'slide', by: { m: 1 }, gear: { topSpeedMPerS: 0.1, settleS: 0.5 } };
  expect(lightOf(facing(250, { moves: [slide] })).sceneEv100).toEqual(lightOf(facing(250)).sceneEv100);
});
