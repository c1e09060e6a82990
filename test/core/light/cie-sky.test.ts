import { describe, expect, test } from 'vitest';
import {
  angleBetweenDeg,
  type CieSkyType,
  cieGradation,
  cieIndicatrix,
  cieSky,
} from '../../../packages/core/src/light/cie-sky.js';
import { readRows } from '../../../packages/tools/light-accuracy.mjs';

const DEG = Math.PI / 180;
const types = readRows('cie_standard_general_sky');

test('all fifteen types follow the definition of ISO 15469:2004', () => {
  expect(types.length).toBe(15);
  for (const row of types) {
    const type = Number(row.type) as CieSkyType;
    const [a, b, c, d, e] = [row.a, row.b, row.c, row.d, row.e].map(Number);
    for (const viewDeg of [5, 30, 60, 90]) {
      const phi = 1 + a! * Math.exp(b! / Math.cos((90 - viewDeg) * DEG));
      expect(cieGradation(type, viewDeg)).toBeCloseTo(phi, 10);
    }
    for (const angleDeg of [0, 20, 90, 150]) {
      const chi = angleDeg * DEG;
      const f = 1 + c! * (Math.exp(d! * chi) - Math.exp((d! * Math.PI) / 2)) + e! * Math.cos(chi) ** 2;
      expect(cieIndicatrix(type, angleDeg)).toBeCloseTo(f, 10);
    }
    expect(cieGradation(type, 0)).toBe(1);
  }
});

test('type 12 is the clear sky of CIE 22 (1973), whose constants were printed as 0.274 and 0.91', () => {
  for (const viewDeg of [10, 35, 80]) {
    for (const angleDeg of [5, 40, 120]) {
      const chi = angleDeg * DEG;
      const old =
        (1 - Math.exp(-0.32 / Math.sin(viewDeg * DEG))) *
        (0.91 + 10 * Math.exp(-3 * chi) + 0.45 * Math.cos(chi) ** 2);
      const now = cieGradation(12, viewDeg) * cieIndicatrix(12, angleDeg);
      expect(now / old).toBeCloseTo(1, 2);
    }
  }
  expect(cieGradation(12, 90)).toBeCloseTo(0.274, 3);
});

describe('a sky scaled to the light it lays on the ground', () => {
  test('the uniform sky has 1/π everywhere', () => {
    expect(cieSky(5)(30, 10, 60)).toBeCloseTo(1 / Math.PI, 6);
  });

  test('the overcast sky is three times brighter overhead than on the horizon, zenith 9/(7π)', () => {
    // Moon & Spencer's overcast sky, L = Lz (1 + 2 sin γ) / 3, gives Lz = 9 E / (7 π) = 0.409 E.
    const overcast = cieSky(1);
    expect(Math.abs(overcast(20, 90, 70) * ((7 * Math.PI) / 9) - 1)).toBeLessThan(0.03);
    expect(overcast(20, 90, 70) / overcast(20, 0, 20)).toBeCloseTo(1 + 4 * Math.exp(-0.7), 6);
    expect(overcast(20, 25, 10)).toBe(overcast(20, 25, 150));
  });

  test.each([12, 30, 47.5, 85])('the clear sky summed over a fine dome is one lux, sun at %s°', (sunDeg) => {
    const clear = cieSky(12);
    let lux = 0;
    const step = 0.75;
    for (let viewDeg = step / 2; viewDeg < 90; viewDeg += step) {
      for (let azimuthDeg = step / 2; azimuthDeg < 180; azimuthDeg += step) {
        const luminance = clear(sunDeg, viewDeg, angleBetweenDeg(viewDeg, sunDeg, azimuthDeg));
        lux += 2 * luminance * Math.sin(viewDeg * DEG) * Math.cos(viewDeg * DEG) * (step * DEG) ** 2;
      }
    }
    expect(Math.abs(lux - 1)).toBeLessThan(0.01);
  });

  test('a type that is none is refused', () => {
    expect(() => cieSky(16 as CieSkyType)).toThrow('type must be from 1 to 15, got 16');
    expect(() => cieSky(1.5 as CieSkyType)).toThrow('type must be a whole number from 1 to 15, got 1.5');
  });
});

test('angles between directions', () => {
  expect(angleBetweenDeg(0, 0, 90)).toBeCloseTo(90, 10);
  expect(angleBetweenDeg(90, 20, 133)).toBeCloseTo(70, 10);
  expect(angleBetweenDeg(30, 30, 180)).toBeCloseTo(120, 10);
});
