import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clearAir } from '../../../packages/core/src/light/air.js';
import {
  MEAN_DISTANCE_KM,
  moonIlluminanceLx,
  moonlitSkyCdM2,
  moonPhaseLight,
} from '../../../packages/core/src/light/moon.js';
import { expectSmooth } from './smoothness.js';

const RAD = Math.PI / 180;
const moon = (altitudeDeg: number, phaseAngleDeg: number, distanceKm = MEAN_DISTANCE_KM) => ({
  altitudeDeg,
  phaseAngleDeg,
  distanceKm,
});

test('USNO Circular 171: air masses and both shares as evaluated there', () => {
  // test/data/light/model_horizontal_…, from E0 = 133,775 lx: overhead 108,436 straight and 15,353 by the sky.
  expect(Math.abs(133_775 * clearAir(90).beam - 108_436)).toBeLessThan(1);
  expect(Math.abs(133_775 * clearAir(90).scattered - 15_353.2)).toBeLessThan(1);
  expect(Math.abs(133_775 * clearAir(5).beam - 1252.81)).toBeLessThan(0.1);
  expect(Math.abs(133_775 * clearAir(-6).scattered - 2.99214)).toBeLessThan(0.001);
});

test('the moon follows the phase law of USNO Circular 171', () => {
  // P = 0.418 p / (1 - 0.005 cos e - 0.03 sin h), times the light through the air; p written out again.
  for (const [altitudeDeg, phase] of [
    [90, 0.5],
    [60, 30],
    [30, 90],
    [10, 150],
  ] as const) {
    const e = (180 - phase) * RAD;
    const p = 0.892 * Math.exp(-3.343 / Math.tan(e / 2) ** 0.632) + 0.0344 * (Math.sin(e) - e * Math.cos(e));
    const { beam, scattered } = clearAir(altitudeDeg);
    const lx =
      ((0.418 * p) / (1 - 0.005 * Math.cos(e) - 0.03 * Math.sin(altitudeDeg * RAD))) * (beam + scattered);
    expect(moonIlluminanceLx(moon(altitudeDeg, phase)) / lx).toBeCloseTo(1, 9);
    expect(moonPhaseLight(phase)).toBeCloseTo(p, 9);
  }
  expect(moonPhaseLight(180)).toBe(0);
});

test('a nearer moon is brighter by the square of the distance', () => {
  // Supplement 1992: 2 log10(HP / 0.951), HP the horizontal parallax; 0.951° is 384,300 km.
  expect(MEAN_DISTANCE_KM).toBeCloseTo(384_275, -3);
  const ratio = moonIlluminanceLx(moon(50, 20, 356_500)) / moonIlluminanceLx(moon(50, 20, 406_700));
  expect(ratio).toBeCloseTo((406_700 / 356_500) ** 2, 3);
});

test('Krisciunas & Schaefer 1991: V = 19.855 at Z 20°, moon at Z 70°, 50° apart, phase 45°, k 0.15', () => {
  const cdM2 = moonlitSkyCdM2(moon(20, 45), 70, 50, 0.15);
  const nanolambert = (cdM2 * Math.PI) / 1e-5;
  expect((20.7233 - Math.log(nanolambert / 34.08)) / 0.92104).toBeCloseTo(19.855, 3);
});

test('moonlight comes and goes without a step as the moon rises', () => {
  const ground = (h: number) => Math.log2(moonIlluminanceLx(moon(h, 10)) + 0.0005);
  expectSmooth(ground, { from: -30, to: 89, step: 0.01, mostPerUnit: 1, mostTurn: 0.005 });
  const sky = (h: number) => Math.log2(moonlitSkyCdM2(moon(h, 10), 30, 90) + 0.00017);
  expectSmooth(sky, { from: -30, to: 89, step: 0.01, mostPerUnit: 1, mostTurn: 0.01 });
  expect(moonIlluminanceLx(moon(-18.01, 0))).toBe(0);
  expect(moonIlluminanceLx(moon(-18, 0))).toBeLessThan(1e-9);
});

test('more of the moon and a higher moon never give less light', () => {
  const angle = (max: number) => fc.double({ min: 0, max, noNaN: true });
  fc.assert(
    fc.property(angle(85), angle(170), (altitudeDeg, phase) => {
      const lx = moonIlluminanceLx(moon(altitudeDeg, phase));
      expect(lx).toBeGreaterThan(moonIlluminanceLx(moon(altitudeDeg, phase + 5)));
      expect(lx).toBeLessThan(moonIlluminanceLx(moon(altitudeDeg + 5, phase)));
    }),
    { seed: 171 },
  );
});

test('a phase or distance that no moon has is refused by name', () => {
  expect(() => moonIlluminanceLx(moon(30, 181))).toThrow('phaseAngleDeg must be from 0 to 180, got 181');
  expect(() => moonIlluminanceLx(moon(30, 0, 0))).toThrow('distanceKm must be positive and finite, got 0');
});
