// Walls and faces: light on what stands upright, by geometry and in a scene. Against the measured sky: accuracy.test.ts.

import { describe, expect, test } from 'vitest';
import { type Sky, sceneLight } from '../../../packages/core/src/light/scene.js';
import type { SceneWords } from '../../../packages/core/src/light/scene-words.js';
import { skyPartOfSunlight } from '../../../packages/core/src/light/sunlight.js';
import {
  beamOnUpright,
  clearSkyOnUpright,
  moonOnUpright,
  overcastOnUpright,
} from '../../../packages/core/src/light/upright.js';
import { sceneOf } from '../../../packages/core/src/light/words.js';

describe('geometry', () => {
  test('the beam on a wall it meets squarely is its cotangent, and nothing from behind', () => {
    for (const [altitudeDeg, cotangent] of [
      [30, Math.sqrt(3)],
      [45, 1],
      [60, 1 / Math.sqrt(3)],
    ] as const) {
      const beamPart = 1 - skyPartOfSunlight(altitudeDeg);
      expect(beamOnUpright(altitudeDeg, 0) / beamPart).toBeCloseTo(cotangent, 2);
      expect(beamOnUpright(altitudeDeg, 60) / beamPart).toBeCloseTo(cotangent / 2, 1);
      expect(beamOnUpright(altitudeDeg, 180) / beamPart).toBeLessThan(0.005);
    }
  });

  // The overcast sky of 1955, (1 + 2 sin γ) / 3, summed by hand over half the dome and over the whole: 0.396.
  test('an overcast sky gives a wall 0.4 of what it lays on the ground', () => {
    const upright = (2 / 3) * (Math.PI / 4 + 2 / 3);
    const level = ((2 * Math.PI) / 3) * (1 / 2 + 2 / 3);
    expect(Math.abs(Math.log2(overcastOnUpright() / (upright / level)))).toBeLessThan(0.1);
  });

  test('under a sun overhead every wall has the same light of the sky, for nothing tells one side from another', () => {
    const sky = clearSkyOnUpright();
    for (const azimuthDeg of [0, 45, 90, 135]) {
      expect(sky(90, azimuthDeg, 0) / sky(90, 180, 0)).toBeCloseTo(1, 4);
    }
    expect(sky(70, 0, 0) / sky(70, 180, 0)).toBeGreaterThan(1.1);
  });

  test('the moon does the same with its beam, and its sky is even', () => {
    expect(moonOnUpright(45, 0)).toBeGreaterThan(0.9);
    expect(moonOnUpright(45, 180)).toBeLessThan(0.15);
    expect(moonOnUpright(-8, 180)).toBeCloseTo(0.5, 6);
  });
});

const WORDS: SceneWords = {
  facing: 'toward-sun',
  viewAltitudeDeg: 15,
  skyShare: 0,
  reflectance: 0.3,
  cloud: 'clear',
  night: 'rural',
  lamps: 'none',
};
const sun = (sunAltitudeDeg: number): Sky => ({
  sunAltitudeDeg,
  sunAzimuthDeg: 270,
  moonAltitudeDeg: -40,
  moonAzimuthDeg: 0,
  moonPhaseAngleDeg: 90,
  moonDistanceKm: 384_300,
});

describe('in a scene', () => {
  const ev = (words: Partial<SceneWords>, sunDeg: number) =>
    sceneLight(sceneOf({ ...WORDS, ...words }, 270))(sun(sunDeg)).ev100;

  // Looking away from the sunset one sees the lit side, toward it the dark one. Koomen's sums at -6°: 0.49 above
  // level ground facing the sun, 1.49 below turned away; what the ground throws back, 0.15 of it, is added.
  test('at -6° a wall lit by the glow meters half a stop above the ground, one against it over a stop below', () => {
    const ground = ev({}, -6);
    expect(ev({ uprightShare: 1, facing: 'away' }, -6) - ground).toBeCloseTo(Math.log2(1.4045 + 0.15), 1);
    expect(ev({ uprightShare: 1, facing: 'toward-sun' }, -6) - ground).toBeCloseTo(
      Math.log2(0.3553 + 0.15),
      1,
    );
  });

  test('a share of it lies between', () => {
    const luminance = (uprightShare: number) => 2 ** ev({ uprightShare, facing: 'away' }, -6);
    expect(luminance(0.25)).toBeCloseTo(0.75 * luminance(0) + 0.25 * luminance(1), 9);
  });

  test('at night an even sky leaves a wall half the ground’s light, and what the ground throws back', () => {
    expect(ev({ uprightShare: 1 }, -30) - ev({}, -30)).toBeCloseTo(Math.log2(0.5 + 0.15), 6);
  });

  test('under closed cloud it does not matter which way the wall faces', () => {
    const moonlit = { ...sun(-25), moonAltitudeDeg: 30, moonAzimuthDeg: 90, moonPhaseAngleDeg: 10 };
    for (const sky of [sun(-4), moonlit]) {
      const of = (facing: SceneWords['facing']) =>
        sceneLight(sceneOf({ ...WORDS, uprightShare: 1, facing, cloud: 'overcast' }, 270))(sky).ev100;
      expect(of('away')).toBeCloseTo(of('toward-sun'), 9);
    }
  });
});
