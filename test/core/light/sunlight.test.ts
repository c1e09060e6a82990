import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clearIlluminanceLx,
  skyPartOfSunlight,
  sunIlluminanceLx,
} from '../../../packages/core/src/light/sunlight.js';
import { readRows } from '../../../packages/tools/light-accuracy.mjs';
import { expectSmooth } from './smoothness.js';

const ev = (altitudeDeg: number) => Math.log2(clearIlluminanceLx(altitudeDeg));
const fallPerDeg = (altitudeDeg: number) => (ev(altitudeDeg + 0.05) - ev(altitudeDeg - 0.05)) / 0.1;

test('the published polynomials are met to six digits away from their joints', () => {
  // Explanatory Supplement 1992, coefficients as tabled. A copy with -1899.93 for -1899.83 in the row from
  // -12° to -5° is off by 3e-4 at -10° and 5e-4 at -11.4°, so six digits tell the two apart.
  const pieces = readRows('seidelmann_1992_polynomials').filter((row) => row.body === 'sun');
  expect(pieces.length).toBe(6);
  let checked = 0;
  for (const piece of pieces) {
    const from = Math.max(-18, Number(piece.alt_from_deg)) + 0.5;
    const to = Number(piece.alt_to_deg) - 0.5;
    for (let altitudeDeg = from; altitudeDeg <= to; altitudeDeg += 0.1) {
      const x = altitudeDeg / 90;
      const [l0, l1, l2, l3] = [piece.l0, piece.l1, piece.l2, piece.l3].map(Number);
      const log10Lx = l0! + l1! * x + l2! * x ** 2 + l3! * x ** 3;
      expect(Math.abs(clearIlluminanceLx(altitudeDeg) / 10 ** log10Lx - 1)).toBeLessThan(1e-6);
      checked++;
    }
  }
  expect(checked).toBeGreaterThan(900);
});

test('the row from -12° to -5° has the right last digit', () => {
  // 0.0421064 lx at -10°, evaluated independently (test/data/light/model_horizontal_…); the wrong digit gives 0.04212.
  expect(clearIlluminanceLx(-10)).toBeCloseTo(0.0421064, 7);
});

test('nothing steps at -0.833°, where a formula with refraction jumps 0.6 stop', () => {
  // USNO Circular 171 as published: source in test/data/README.md.
  expect(Math.abs(ev(-0.83) - ev(-0.84))).toBeLessThan(0.01);
});

test('deep twilight does not die below -10° as the sky term of Circular 171 does', () => {
  // AMS Glossary: 0.008 lx at -12°. Koomen's dome: 0.0022 lx at -15°. Circular 171 has 0.0044 and 0.00017.
  expect(Math.abs(Math.log2(clearIlluminanceLx(-12) / 0.008))).toBeLessThan(0.3);
  expect(Math.abs(Math.log2(clearIlluminanceLx(-15) / 0.0021993))).toBeLessThan(0.5);
});

test('altitudes are true ones: read as apparent, the measured light at -6° is missed', () => {
  // Koomen's dome: 3.6156 lx with the sun at -6°. An apparent altitude would say -5.516° then.
  expect(Math.abs(Math.log2(clearIlluminanceLx(-6) / 3.6156))).toBeLessThan(0.3);
  expect(Math.abs(Math.log2(clearIlluminanceLx(-5.516) / 3.6156))).toBeGreaterThan(0.6);
});

describe('how fast it falls, EV a degree (evaluated from the Supplement by hand)', () => {
  test.each([
    { altitudeDeg: -7, perDeg: 1.65, tol: 0.02 },
    { altitudeDeg: 0, perDeg: 0.82, tol: 0.01 },
    { altitudeDeg: 5, perDeg: 0.34, tol: 0.02 },
    { altitudeDeg: 15, perDeg: 0.12, tol: 0.01 },
  ])('$perDeg at $altitudeDeg°', ({ altitudeDeg, perDeg, tol }) => {
    expect(Math.abs(fallPerDeg(altitudeDeg) - perDeg)).toBeLessThan(tol);
  });

  test('above 1.5 from -4.5° to -9°, steepest near -7°', () => {
    const grid = Array.from({ length: 301 }, (_, i) => -15 + 0.05 * i);
    for (const h of grid.filter((g) => g >= -9 && g <= -4.5)) expect(fallPerDeg(h)).toBeGreaterThan(1.5);
    const steepest = grid.reduce((a, b) => (fallPerDeg(b) > fallPerDeg(a) ? b : a));
    expect(Math.abs(steepest + 7)).toBeLessThan(0.5);
  });

  test.each([
    { latitudeDeg: 0, perMin: 0.41 },
    { latitudeDeg: 45, perMin: 0.29 },
    { latitudeDeg: 60, perMin: 0.2 },
  ])('$perMin EV a minute at the equinox, $latitudeDeg° of latitude, -6°', ({ latitudeDeg, perMin }) => {
    const rad = Math.PI / 180;
    // Sun on the equator: sin h = cos φ cos H, H turning 0.25° a minute.
    const cosH = Math.sin(-6 * rad) / Math.cos(latitudeDeg * rad);
    const degPerMin = (0.25 * Math.cos(latitudeDeg * rad) * Math.sqrt(1 - cosH ** 2)) / Math.cos(6 * rad);
    expect(Math.abs(fallPerDeg(-6) * degPerMin - perMin)).toBeLessThan(0.01);
  });
});

test('half of the fall from 6° to -12° is still to come well after sunset', () => {
  const half = (ev(6) + ev(-12)) / 2;
  // Ten minutes after sunset at -0.833° on the equator the sun is 2.5° lower, nowhere more.
  expect(ev(-0.833 - 2.5)).toBeGreaterThan(half);
});

test('value and slope are continuous from -18° to the zenith, and without the night sky below too', () => {
  expectSmooth(ev, { from: -17.99, to: 90, step: 0.01, mostPerUnit: 1.7, mostTurn: 0.005 });
  const withFloor = (h: number) => Math.log2(sunIlluminanceLx(h) + 0.0005);
  expectSmooth(withFloor, { from: -30, to: 90, step: 0.01, mostPerUnit: 1.7, mostTurn: 0.012 });
});

test('sun and a natural night together stay within 0.4 stop of the published twilight', () => {
  const natural = Math.PI * 1.08e5 * 10 ** (-0.4 * 21.8);
  for (let h = -18; h <= -13; h += 0.1) {
    const both = sunIlluminanceLx(h) + natural;
    expect(Math.abs(Math.log2(both / clearIlluminanceLx(h)))).toBeLessThan(0.4);
  }
});

test('the lower the sun, the darker the ground', () => {
  const altitude = fc.double({ min: -18, max: 89.9, noNaN: true });
  fc.assert(
    fc.property(altitude, fc.double({ min: 0.01, max: 0.1, noNaN: true }), (h, d) => {
      expect(clearIlluminanceLx(h)).toBeLessThan(clearIlluminanceLx(h + d));
      expect(sunIlluminanceLx(h)).toBeLessThanOrEqual(clearIlluminanceLx(h));
    }),
    { seed: 18 },
  );
});

test('the beam takes over from the sky as the sun climbs', () => {
  // USNO Circular 171 evaluated: sky over total at 5°, 20°, 90°; test/data/light/model_horizontal_….
  const rows = readRows('model_horizontal_illuminance_by_altitude');
  for (const altitudeDeg of [-0.5, 0.5, 5, 20, 90]) {
    const row = rows.find((r) => Number(r.sun_altitude_deg) === altitudeDeg)!;
    const share = Number(row.c171_sky_lx) / Number(row.illuminance_lx_c171_no_floor);
    expect(Math.abs(skyPartOfSunlight(altitudeDeg) - share)).toBeLessThan(2e-4);
  }
});

test('an altitude that no sun has is refused by name', () => {
  expect(() => clearIlluminanceLx(91)).toThrow('sunAltitudeDeg must be from -90 to 90, got 91');
  expect(() => clearIlluminanceLx(Number.NaN)).toThrow('sunAltitudeDeg must be from -90 to 90, got NaN');
});
