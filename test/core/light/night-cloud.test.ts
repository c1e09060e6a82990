import { describe, expect, test } from 'vitest';
import { cloudOfEighths, overcastSkyToward } from '../../../packages/core/src/light/cloud.js';
import {
  magToLuminanceCdM2,
  nightOfGroundLx,
  nightOfZenith,
  nightShare,
  overcastNightFactor,
} from '../../../packages/core/src/light/night.js';
import { NIGHTS } from '../../../packages/core/src/light/words.js';

test('22 magnitudes are 0.17 mcd/m²; natural skies, 22.0 to 21.6, lay 0.0007 to 0.001 lx on the ground', () => {
  // Definition of the unit; measured moonless nights without towns.
  expect(magToLuminanceCdM2(22) * 1000).toBeCloseTo(0.1712, 3);
  expect(NIGHTS.remote.groundLx).toBeCloseTo(0.0008, 6);
  expect(nightOfZenith(21.6).groundLx).toBeCloseTo(0.001, 4);
  // What towns add counts as an even sky: π times its luminance.
  const added = (mag: number) => nightOfZenith(mag).groundLx - NIGHTS.remote.groundLx;
  expect(added(18)).toBeCloseTo(Math.PI * (magToLuminanceCdM2(18) - magToLuminanceCdM2(22)), 9);
});

test('the city word: 0.13 lx, measured in mixed weather, lies half way between its clear sky and its cloud', () => {
  const { groundLx } = NIGHTS.city;
  const underCloud = groundLx * overcastNightFactor(NIGHTS.city);
  expect(Math.abs(Math.log2(Math.sqrt(groundLx * underCloud) / 0.13))).toBeLessThan(0.1);
  // Kyba et al. 2011: ten times as much comes back from cloud over a large city.
  expect(underCloud / groundLx).toBeCloseTo(10.1, 0);
  expect(groundLx).toBeGreaterThan(NIGHTS.town.groundLx);
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
