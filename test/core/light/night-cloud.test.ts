import { describe, expect, test } from 'vitest';
import { cloudOfEighths, overcastSkyToward } from '../../../packages/core/src/light/cloud.js';
import {
  magToLuminanceCdM2,
  nightOfGroundLx,
  nightOfZenith,
  nightShare,
  overcastNightFactor,
} from '../../../packages/core/src/light/night.js';

test('22 magnitudes are 0.17 mcd/m² and 0.0005 lx; 21.6 are 0.0008 lx', () => {
  // Definition of the unit; 0.0008 lx under a natural sky of bright airglow.
  expect(magToLuminanceCdM2(22) * 1000).toBeCloseTo(0.1712, 3);
  expect(nightOfZenith(22).groundLx).toBeCloseTo(0.00054, 5);
  expect(nightOfZenith(21.6).groundLx).toBeCloseTo(0.0008, 4);
});

test('lux on the ground are kept, with the even sky that gives them', () => {
  const night = nightOfGroundLx(0.13);
  expect(night.groundLx).toBe(0.13);
  expect(night.skyCdM2 * Math.PI).toBeCloseTo(0.13, 12);
});

describe('a closed cloud deck', () => {
  test('darkens a natural night to a third (Jechow et al. 2016, Lake Stechlin: 0.33)', () => {
    expect(overcastNightFactor(nightOfZenith(22))).toBeCloseTo(0.33, 6);
  });

  test('brightens a town by 2.8 to 10.1 times (Kyba et al. 2011, 32 km from and in Berlin)', () => {
    expect(Math.abs(Math.log2(overcastNightFactor(nightOfZenith(18)) / 10.1))).toBeLessThan(0.1);
    expect(Math.abs(Math.log2(overcastNightFactor(nightOfZenith(21)) / 2.8))).toBeLessThan(0.8);
    expect(overcastNightFactor(nightOfZenith(16))).toBeLessThan(10.11);
  });

  test('brightens a town the more the brighter it is', () => {
    const factors = [22, 21.5, 21, 20, 19, 18].map((mag) => overcastNightFactor(nightOfZenith(mag)));
    expect([...factors].sort((a, b) => a - b)).toEqual(factors);
  });

  test('leaves alone what was metered in lux', () => {
    expect(overcastNightFactor(nightOfGroundLx(0.02))).toBe(1);
  });

  test('acts on the night from -8° to -12° of sun', () => {
    expect([-7, -8, -10, -12, -20].map(nightShare)).toEqual([0, 0, 0.5, 1, 1]);
  });
});

test('eighths of cover take what Kasten & Czeplak 1980 tabulate', () => {
  // Secondhand: 4 eighths -0.11 stop, 6 -0.47, 7 -0.93, 8 -2.0.
  expect([0, 4, 6, 7, 8].map((n) => Number(cloudOfEighths(n).stops.toFixed(2)))).toEqual([
    0, -0.11, -0.48, -0.93, -2,
  ]);
  expect(cloudOfEighths(2).cover).toBe(0.25);
});

test('the overcast sky is brightest overhead', () => {
  expect(overcastSkyToward(90)).toBeGreaterThan(2.5 * overcastSkyToward(0));
});

test('numbers out of range are refused by name', () => {
  expect(() => cloudOfEighths(9)).toThrow('eighths must be from 0 to 8, got 9');
  expect(() => nightOfZenith(12)).toThrow('zenithMagArcsec2 must be from 14 to 23, got 12');
  expect(() => nightOfGroundLx(0)).toThrow('groundLx must be from');
});
