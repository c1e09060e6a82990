import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trailingDeclinationDeg } from '../../../packages/core/src/move/sky-view.js';
import {
  npfFullS,
  npfSimpleS,
  rule500S,
  starAdvice,
  starDriftArcsecPerS,
} from '../../../packages/core/src/move/stars.js';
import { readTable } from '../../reference/csv.js';
import { panned, tilted, type Vector } from './vectors.js';

const SENSOR = { widthMm: 36, heightMm: 24 };
const lensOf = (focalMm: number) => ({ lens: { focalMm }, sensor: SENSOR });
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('check values', () => {
  // Source: worked_examples.csv, topic stars; each row names its own.
  const want = new Map(
    readTable('exposure/worked_examples.csv')
      // W079 gives an older form of the rule without its f-number, pitch and focal length.
      .filter(({ topic, id }) => topic === 'stars' && id !== 'W079')
      .map(({ id, expected }) => [id, Number.parseFloat(expected!)]),
  );
  const wide = { fNumber: 2.8, pitchUm: 4.35, focalMm: 14 };
  const got: Record<string, number> = {
    W069: rule500S(lensOf(24)),
    W071: rule500S(lensOf(50)),
    W073: npfSimpleS(wide),
    W075: npfFullS(wide, 0),
    W077: npfFullS({ fNumber: 4, pitchUm: 6.4, focalMm: 24 }, 0, 2),
    W081: starDriftArcsecPerS(60),
  };
  test('every row of the table is met', () => {
    expect([...want.keys()].sort()).toEqual(Object.keys(got));
    for (const [id, seconds] of want) expect(Math.abs(got[id!]! - seconds), id).toBeLessThan(1e-3);
  });

  // Source: worked_examples.csv W077, in passing.
  test('the simplified rule allows more than the full one', () => {
    expect(npfSimpleS({ fNumber: 4, pitchUm: 6.4, focalMm: 24 })).toBeCloseTo(13.833, 3);
  });

  // Source: definition: half the diagonal is a crop of two.
  test('a smaller sensor is taken as the longer lens that it frames like', () => {
    expect(rule500S({ lens: { focalMm: 25 }, sensor: { widthMm: 18, heightMm: 12 } })).toBeCloseTo(10, 12);
  });

  // Source: definition: stars at the pole stand still, and those at the equator are the fastest.
  test('pole and equator', () => {
    expect(starDriftArcsecPerS(90)).toBe(0);
    expect(npfFullS(wide, -90)).toBe(Number.POSITIVE_INFINITY);
    expect(npfFullS(wide, 60) / npfFullS(wide, 0)).toBeCloseTo(2, 9);
    expect(starDriftArcsecPerS(0)).toBeCloseTo(15.0411, 4); // W081's rate
  });
});

describe('which stars are in the frame', () => {
  // Source: definitions: the zenith has the latitude's declination, the pole stands at its altitude, due east and
  // west on the horizon lie on the equator.
  test.each([
    [0, 90, 52, 52],
    [0, 52, 52, 90],
    [180, 35, -35, -90],
    [90, 0, 52, 0],
    [270, 0, -33, 0],
    [180, 38, 52, 0],
  ])(
    'azimuth %d° and altitude %d° at latitude %d° is declination %d°',
    (azimuthDeg, altitudeDeg, latitude, dec) => {
      // A frame of a hundredth of a degree is nearly the direction itself.
      const got = trailingDeclinationDeg({ azimuthDeg, altitudeDeg }, lensOf(200_000), latitude);
      expect(got).toBeCloseTo(dec, 1);
    },
  );

  test('toward the equator it is 0, toward the pole it is the lowest corner, toward the ground there is no sky', () => {
    // The celestial pole stands as high as the latitude, due north, wherever one is.
    for (let lat = 0; lat <= 90; lat += 0.5) {
      expect(trailingDeclinationDeg({ azimuthDeg: 0, altitudeDeg: lat }, lensOf(200_000), lat)).toBeCloseTo(
        90,
        1,
      );
    }
    expect(trailingDeclinationDeg({ azimuthDeg: 180, altitudeDeg: 30 }, lensOf(24), 52)).toBe(0);
    expect(trailingDeclinationDeg({ azimuthDeg: 0, altitudeDeg: 52 }, lensOf(24), 52)).toBeGreaterThan(45);
    expect(trailingDeclinationDeg({ azimuthDeg: 0, altitudeDeg: -52 }, lensOf(24), 52)).toBeUndefined();
    // At the pole of the Earth the frame's lower edge lies so low as it stands: 50° less half of 53.13°.
    const low = trailingDeclinationDeg({ azimuthDeg: 77, altitudeDeg: 50 }, lensOf(24), 90) as number;
    const corner = Math.asin((Math.sin(rad(50)) - 0.5 * Math.cos(rad(50))) / Math.hypot(1, 0.5, 0.75));
    expect(low).toBeCloseTo(corner / rad(1), 6);
  });

  test('no point of the frame above the horizon lies nearer to the equator, and one lies as near', () => {
    let [zero, pole, ground] = [0, 0, 0];
    fc.assert(
      fc.property(
        between(0, 360),
        between(-60, 90),
        between(-90, 90),
        between(12, 135),
        (azimuthDeg, altitudeDeg, latitude, focalMm) => {
          const steps = 60;
          let nearest = Number.POSITIVE_INFINITY;
          let signs = 0;
          for (let i = 0; i <= steps; i++) {
            for (let j = 0; j <= steps; j++) {
              const ray: Vector = [((i / steps - 0.5) * 36) / focalMm, 1, ((j / steps - 0.5) * 24) / focalMm];
              const [east, north, up] = panned(tilted(ray, altitudeDeg), azimuthDeg);
              if (up < 0) continue;
              const length = Math.hypot(east, north, up);
              const sine = (north * Math.cos(rad(latitude)) + up * Math.sin(rad(latitude))) / length;
              const dec = Math.asin(Math.max(-1, Math.min(1, sine))) / rad(1);
              nearest = Math.min(nearest, Math.abs(dec));
              signs |= dec < 0 ? 1 : 2;
            }
          }
          const got = trailingDeclinationDeg({ azimuthDeg, altitudeDeg }, lensOf(focalMm), latitude);
          if (nearest === Number.POSITIVE_INFINITY) {
            ground++;
            return;
          }
          const cell = (Math.atan(18 / focalMm) / rad(1) / steps) * 4;
          expect(Math.abs(got as number)).toBeLessThanOrEqual(nearest + 1e-6);
          if (signs === 3) {
            zero++;
            expect(got).toBe(0);
          } else {
            pole++;
            expect(nearest - Math.abs(got as number)).toBeLessThan(cell);
          }
        },
      ),
      { seed: 21, numRuns: 300 },
    );
    expect(Math.min(zero, pole, ground)).toBeGreaterThan(10);
  });
});

describe('advice', () => {
  const camera = { lens: { focalMm: 24 }, sensor: { ...SENSOR, widthPx: 6000 } };
  test('all rules for one view, by the star that trails fastest in any frame of a pan', () => {
    const north = { azimuthDeg: 0, altitudeDeg: 60 };
    const south = { azimuthDeg: 180, altitudeDeg: 30 };
    const still = starAdvice(camera, 2.8, [north], 60)!;
    const pan = starAdvice(camera, 2.8, [north, south], 60)!;
    expect(pan.declinationDeg).toBe(0);
    expect(pan.npfFullS).toBe(npfFullS({ fNumber: 2.8, pitchUm: 6, focalMm: 24 }, 0));
    expect(still.npfFullS).toBeGreaterThan(pan.npfFullS as number);
    expect(still.rule500S).toBe(pan.rule500S);
    // Source: hand: 15.0411″ are 7.2921e-5 rad, times 24 mm over 6 µm.
    expect(pan.trailPxPerS).toBeCloseTo((7.2921e-5 * 24) / 0.006, 4);
  });

  test('without pixels there is the 500 rule alone; without sky there is none', () => {
    const south = { azimuthDeg: 180, altitudeDeg: 30 };
    expect(starAdvice(lensOf(24), 2.8, [south], 60)).toEqual({ declinationDeg: 0, rule500S: 500 / 24 });
    expect(starAdvice(camera, 2.8, [{ azimuthDeg: 0, altitudeDeg: -80 }], 60)).toBeUndefined();
  });
});

test('errors name the argument and the value', () => {
  const npf = { fNumber: 2.8, pitchUm: 4.35, focalMm: 14 };
  const view = { azimuthDeg: 0, altitudeDeg: 30 };
  const bad = { lens: { focalMm: -1 }, sensor: SENSOR };
  const positive = (name: string, value: number) => `${name} must be positive and finite, got ${value}`;
  expect(() => rule500S(bad)).toThrow(positive('focalMm', -1));
  expect(() => rule500S({ ...lensOf(24), sensor: { widthMm: 0, heightMm: 24 } })).toThrow(
    positive('widthMm', 0),
  );
  expect(() => rule500S({ ...lensOf(24), sensor: { widthMm: 36, heightMm: 0 } })).toThrow(
    positive('heightMm', 0),
  );
  for (const rule of [npfSimpleS, (of: typeof npf) => npfFullS(of, 0)]) {
    expect(() => rule({ ...npf, fNumber: 0 })).toThrow(positive('fNumber', 0));
    expect(() => rule({ ...npf, pitchUm: 0 })).toThrow(positive('pitchUm', 0));
    expect(() => rule({ ...npf, focalMm: 0 })).toThrow(positive('focalMm', 0));
  }
  expect(() => npfFullS(npf, 0, 0)).toThrow(positive('softness', 0));
  expect(() => npfFullS(npf, 91)).toThrow('declinationDeg must be from -90 to 90, got 91');
  expect(() => trailingDeclinationDeg({ ...view, altitudeDeg: 91 }, lensOf(24), 0)).toThrow(
    'altitudeDeg must be from -90 to 90, got 91',
  );
  expect(() => trailingDeclinationDeg({ ...view, azimuthDeg: Number.NaN }, lensOf(24), 0)).toThrow(
    'azimuthDeg must be finite, got NaN',
  );
  expect(() => trailingDeclinationDeg(view, lensOf(24), -91)).toThrow(
    'latitudeDeg must be from -90 to 90, got -91',
  );
});

function rad(deg: number): number {
  return (deg * Math.PI) / 180;
}
