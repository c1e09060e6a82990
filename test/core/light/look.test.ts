import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lookOffsetEv } from '../../../packages/core/src/light/look.js';

test('nightEv: nothing by day, half of it at -6°, all of it from -12° down', () => {
  const look = { nightEv: -1.5 };
  expect(lookOffsetEv(look, 30)).toBeCloseTo(0, 12);
  expect(lookOffsetEv(look, 0)).toBeCloseTo(0, 12);
  // Smoothstep s² (3 - 2s), hand: a quarter of the way it is 5/32.
  expect(lookOffsetEv(look, -3)).toBeCloseTo((-1.5 * 5) / 32, 12);
  expect(lookOffsetEv(look, -6)).toBeCloseTo(-0.75, 12);
  expect(lookOffsetEv(look, -12)).toBeCloseTo(-1.5, 12);
  expect(lookOffsetEv(look, -50)).toBeCloseTo(-1.5, 12);
});

test('a table is linear between its rows and level beyond its ends', () => {
  const look = [
    { sunAltitudeDeg: -10, offsetEv: -2 },
    { sunAltitudeDeg: -5, offsetEv: -1 },
    { sunAltitudeDeg: 0, offsetEv: 0.5 },
  ];
  for (const [altitude, offset] of [
    [-20, -2],
    [-10, -2],
    [-7.5, -1.5],
    [-5, -1],
    [-2, -0.1],
    [0, 0.5],
    [40, 0.5],
  ] as const) {
    expect(lookOffsetEv(look, altitude)).toBeCloseTo(offset, 12);
  }
  expect(() => lookOffsetEv([], 0)).toThrow('look must hold at least 1, got 0');
});

test('a darker night never brightens any moment, and the look has no jump', () => {
  const altitude = fc.double({ min: -90, max: 90, noNaN: true });
  const night = fc.double({ min: -5, max: 0, noNaN: true });
  fc.assert(
    fc.property(altitude, night, night, (deg, a, b) => {
      const [dark, light] = [Math.min(a, b), Math.max(a, b)];
      expect(lookOffsetEv({ nightEv: dark }, deg)).toBeLessThanOrEqual(lookOffsetEv({ nightEv: light }, deg));
      expect(
        Math.abs(lookOffsetEv({ nightEv: dark }, deg) - lookOffsetEv({ nightEv: dark }, deg + 1e-6)),
      ).toBeLessThan(1e-5);
    }),
  );
});
