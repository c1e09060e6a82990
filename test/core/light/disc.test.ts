// The sun's disc in a frame, against the disc itself summed over the sensor, and against published sunlight.

import { describe, expect, test } from 'vitest';
import { discInFrame } from '../../../packages/core/src/light/disc.js';
import { CLOUDS } from '../../../packages/core/src/light/words.js';

const DEG = Math.PI / 180;
const scene = { skyShare: 1, cloud: CLOUDS.clear };
const field = { horizontalDeg: 73.74, verticalDeg: 53.13 }; // 24 mm on 36 × 24 mm
const level = { viewAzimuthDeg: 270, viewAltitudeDeg: 0 };
const sunAt = (sunAltitudeDeg: number, sunAzimuthDeg = 270) => ({ sunAltitudeDeg, sunAzimuthDeg });

/** Share of the sensor that a disc of sun's size covers, aside of the middle of a level frame, by counting points. */
function coveredShare(asideDeg: number): number {
  const [halfWidth, halfHeight] = [Math.tan((73.74 / 2) * DEG), Math.tan((53.13 / 2) * DEG)];
  const x0 = Math.tan(asideDeg * DEG);
  const toward = [Math.cos(asideDeg * DEG), Math.sin(asideDeg * DEG)] as const;
  const [span, steps] = [0.03, 600];
  let inside = 0;
  for (let i = 0; i < steps; i++) {
    for (let j = 0; j < steps; j++) {
      const x = x0 + span * ((i + 0.5) / steps - 0.5);
      const y = span * ((j + 0.5) / steps - 0.5);
      const cos = (toward[0] + x * toward[1]) / Math.hypot(1, x, y);
      if (cos >= Math.cos(0.266 * DEG)) inside++;
    }
  }
  return (inside * (span / steps) ** 2) / (4 * halfWidth * halfHeight);
}

describe('what the disc adds to the mean of a frame', () => {
  // The disc's luminance is its illuminance over its solid angle, π(0.266°)²; the sun is seen half a degree up there.
  test.each([0, 15, 30])('is its luminance by the share of the sensor that it covers, %d° aside', (aside) => {
    const middle = discInFrame(scene, field, level, sunAt(1, 270));
    const beside = discInFrame(scene, field, level, sunAt(1, 270 + aside));
    expect(beside / middle).toBeCloseTo(coveredShare(aside) / coveredShare(0), 1);
  });

  // Meinel, Applied Solar Energy (1976), from memory: 1353 W/m² · 0.7^(air mass^0.678) straight from the sun; a low sun
  // gives about 100 lm/W (common practice). Air mass 5.6 at 10°, 2.9 at 20°, 1.15 at 60°.
  test.each([
    [10, 5.6],
    [20, 2.9],
    [60, 1.15],
  ])('follows published direct sunlight, sun %d° up', (altitudeDeg, airMass) => {
    const lux = 100 * 1353 * 0.7 ** (airMass ** 0.678);
    const cdM2 = discInFrame(
      scene,
      field,
      { viewAzimuthDeg: 270, viewAltitudeDeg: altitudeDeg },
      sunAt(altitudeDeg),
    );
    const frameSr = 4 * Math.tan((73.74 / 2) * DEG) * Math.tan((53.13 / 2) * DEG);
    expect(Math.abs(Math.log2((cdM2 * frameSr) / lux))).toBeLessThan(0.4);
  });

  test('is nothing outside the frame, in its ground, under the horizon, behind a skyline or closed cloud', () => {
    const at = (changed: object, sun = sunAt(5)) => discInFrame({ ...scene, ...changed }, field, level, sun);
    expect(at({})).toBeGreaterThan(1000);
    expect(at({}, sunAt(5, 270 + 36))).toBeGreaterThan(0);
    expect(at({}, sunAt(5, 270 + 38))).toBe(0);
    expect(at({}, sunAt(5, 90))).toBe(0);
    expect(at({}, sunAt(28))).toBe(0);
    expect(at({}, sunAt(-1))).toBe(0);
    expect(at({ skyShare: 0.1 })).toBe(0);
    expect(at({ skyline: [{ azimuthDeg: 0, altitudeDeg: 8 }] })).toBe(0);
    expect(at({ cloud: CLOUDS.overcast })).toBe(0);
    expect(at({ cloud: CLOUDS.thin })).toBeLessThan(at({}) / 2 ** 0.7);
  });
});
