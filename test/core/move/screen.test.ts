import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fieldsOfView } from '../../../packages/core/src/move/angle.js';
import type { Move } from '../../../packages/core/src/move/moves.js';
import { travelsOf } from '../../../packages/core/src/move/resolve.js';
import {
  blurPx,
  COMFORT_CROSSING_S,
  fastestOnScreen,
  fewestFrames,
  widthsOf,
  widthsPerUnit,
} from '../../../packages/core/src/move/screen.js';
import { stepAfter } from '../../../packages/core/src/move/steps.js';
import { readTable } from '../../reference/csv.js';
import { anyEase, anyMoves, OPTICS, slide, turn } from './moves.js';
import { panned, projectedMm, tilted, type Vector } from './vectors.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lensOf = (focalMm: number, widthMm = 36, heightMm = 24) => ({
  lens: { focalMm },
  sensor: { widthMm, heightMm },
});

describe('one width in seven seconds', () => {
  // Source: field_of_view.csv: "Panning speed best practices", one image width in no less than 7 s, on Bryant's angles.
  const rows = readTable('move/field_of_view.csv');
  test('the table has rows', () => expect(rows.length).toBe(9));
  test.each(rows)('$focal_mm mm: at most $max_pan_deg_per_playback_s_7s_rule° a second of clip', (row) => {
    const optics = lensOf(Number(row.focal_mm));
    const [pan] = travelsOf([turn('pan', 90, { ease: 'linear' })]);
    const degPerS = 1 / (widthsPerUnit(pan!, optics) as number) / COMFORT_CROSSING_S;
    expect(Math.abs(degPerS - Number(row.max_pan_deg_per_playback_s_7s_rule))).toBeLessThan(6e-5);
    expect(Math.abs(degPerS / 24 - Number(row.max_pan_deg_per_frame_24fps_7s_rule))).toBeLessThan(6e-6);
    // A pan of 90° at constant speed lasts as long as the table says, to the frame.
    const steps = (fewestFrames([pan!], optics, 24, COMFORT_CROSSING_S) as number) - 1;
    expect(steps / 24).toBeGreaterThanOrEqual(Number(row.seconds_for_90deg_pan_7s_rule) - 0.005);
    expect((steps - 1) / 24).toBeLessThan(Number(row.seconds_for_90deg_pan_7s_rule) + 0.005);
  });

  // Source: worked_examples.csv W083, W085 (the handbook's cine pan lasts 60 s, within 20 %).
  test('50 mm, and a cine frame behind 100 mm', () => {
    const [pan] = travelsOf([turn('pan', 90, { ease: 'linear' })]);
    expect(1 / (widthsPerUnit(pan!, lensOf(50)) as number) / 7).toBeCloseTo(5.6568, 4);
    expect(1 / (widthsPerUnit(pan!, lensOf(50)) as number) / 7 / 24).toBeCloseTo(0.2357, 5);
    const frames = fewestFrames([pan!], lensOf(100, 22, 16), 24, COMFORT_CROSSING_S) as number;
    expect((frames - 1) / 24).toBeCloseTo(50.18, 1);
    expect((frames - 1) / 24 / 60).toBeGreaterThan(0.8);
  });
});

describe('fewest frames', () => {
  // Step by step, the long way: a slide against a pan is fastest anywhere.
  const slowly = (travels: Parameters<typeof fastestOnScreen>[0], count: number) => {
    let most = 0;
    for (let i = 0; i < count - 1; i++) {
      const steps = travels.map((travel) => stepAfter(travel, i, count));
      most = Math.max(most, widthsOf(travels, steps, lensOf(24)) ?? 0);
    }
    return most;
  };

  test('of many steps only those near the fastest are looked at, and none faster is missed', () => {
    let held = 0;
    fc.assert(
      fc.property(anyEase, anyEase, between(1, 90), between(0.1, 20), (a, b, deg, m) => {
        const travels = travelsOf([turn('pan', deg, { ease: a }), slide(-m, { ease: b, nearestM: 2 })]);
        for (const count of [2050, 5001]) {
          const found = fastestOnScreen(travels, count, 24, lensOf(24))!.widthsPerS / 24;
          expect(found / slowly(travels, count)).toBeCloseTo(1, 8);
          held++;
        }
      }),
      { seed: 3, numRuns: 60 },
    );
    expect(held).toBeGreaterThan(60);
  });

  test('more than a plan holds are no advice', () => {
    const far = travelsOf([slide(10_000, { nearestM: 0.01 })]);
    expect(fewestFrames(far, lensOf(24), 240, COMFORT_CROSSING_S)).toBeUndefined();
    // 24 mm · 8.9 m over 36 mm · 0.01 m are 593.3 widths, which take 7 s each at an even pace: 99,680 steps.
    const [near] = travelsOf([slide(8.9, { ease: 'linear', nearestM: 0.01 })]);
    expect(fewestFrames([near!], lensOf(24), 24, COMFORT_CROSSING_S)).toBe(99_681);
    // 9 m take 100,800.
    const [beyond] = travelsOf([slide(9, { ease: 'linear', nearestM: 0.01 })]);
    expect(fewestFrames([beyond!], lensOf(24), 24, COMFORT_CROSSING_S)).toBeUndefined();
  });
});

describe('by a pinhole camera', () => {
  test('an object under a steady pan or tilt crosses the frame in the time said', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('pan' as const, 'tilt' as const),
        between(12, 300),
        between(0.02, 0.3),
        (axis, focalMm, stepDeg) => {
          const optics = lensOf(focalMm);
          const [travel] = travelsOf([turn(axis, 90)]);
          const half = axis === 'pan' ? 18 : 12;
          // Frames during which a far object, just inside the edge, stays in the picture.
          let [frames, angle] = [0, (-Math.atan(half / focalMm) * 180) / Math.PI];
          const seen = (deg: number) => {
            const ray = axis === 'pan' ? panned([0, 1, 0], deg) : tilted([0, 1, 0], deg);
            return Math.abs(projectedMm(ray, focalMm)[axis === 'pan' ? 0 : 1]) <= half + 1e-9;
          };
          while (seen(angle)) {
            frames++;
            angle += stepDeg;
          }
          // Tilts are counted in widths: the frame is two thirds of one high.
          const widths = (widthsOf([travel!], [stepDeg], optics) as number) * frames;
          const want = axis === 'pan' ? 1 : 24 / 36;
          expect(Math.abs(widths - want)).toBeLessThanOrEqual(
            (widthsOf([travel!], [stepDeg], optics) as number) + 1e-9,
          );
        },
      ),
      { seed: 15 },
    );
  });

  test('a thing beside a slide passes the frame as it is projected, and one ahead spreads to the edge', () => {
    fc.assert(
      fc.property(between(12, 300), between(1, 200), between(-0.05, 0.05), (focalMm, nearestM, stepM) => {
        const optics = lensOf(focalMm);
        const step = (toward: 'side' | 'forward') => {
          const [travel] = travelsOf([slide(1, { nearestM, toward })]);
          return widthsOf([travel!], [stepM], optics) as number;
        };
        const [before] = projectedMm([0, nearestM, 0], focalMm);
        const [after] = projectedMm([-stepM, nearestM, 0], focalMm);
        expect(Math.abs(step('side') - Math.abs(after - before) / 36)).toBeLessThan(1e-12);

        const edgeM = (nearestM * 18) / focalMm;
        const [edge] = projectedMm([edgeM, nearestM - stepM, 0], focalMm);
        expect(Math.abs(step('forward') - Math.abs(edge - 18) / 36)).toBeLessThan(
          Math.abs(stepM / nearestM) * 0.06 + 1e-12,
        );
      }),
      { seed: 16 },
    );
  });

  test('a slide against a pan holds the near thing and lets the far ones pass', () => {
    const moves = travelsOf([turn('pan', 10), slide(-1, { nearestM: 10 })]);
    const [pan, side] = moves.map((travel) => (widthsPerUnit(travel, OPTICS) as number) * travel.length);
    expect(widthsOf(moves, [10, -1], OPTICS)).toBeCloseTo(Math.max(pan!, Math.abs(pan! + side!)), 12);
    expect(widthsOf(moves, [10, 1], OPTICS)).toBeCloseTo(pan! - side!, 12);
  });

  test('smear is what the corners, the centre, near and far things move on the sensor', () => {
    const unit = fc.tuple(between(-0.05, 0.05), between(-0.05, 0.05), between(-0.01, 0.01));
    fc.assert(
      fc.property(
        unit,
        fc.constantFrom('side' as const, 'forward' as const),
        between(20, 200),
        ([panDeg, tiltDeg, m], toward, focalMm) => {
          const nearestM = 8;
          const mode = 'continuous';
          const nonzero = (x: number) => (Math.abs(x) < 1e-4 ? 1e-4 : x);
          const moves: Move[] = [
            turn('pan', nonzero(panDeg), { mode, ease: 'linear' }),
            turn('tilt', nonzero(tiltDeg), { mode, ease: 'linear' }),
            slide(nonzero(m), { mode, ease: 'linear', toward, nearestM }),
          ];
          const optics = { lens: { focalMm }, sensor: { ...OPTICS.sensor } };
          const got = blurPx(travelsOf(moves), 0, 1, 2, optics) as number;
          const pitchMm = 36 / 6000;
          let most = 0;
          for (const [x, y] of [[0, 0], ...[-18, 18].flatMap((px) => [-12, 12].map((py) => [px, py]))] as [
            number,
            number,
          ][]) {
            for (const far of [false, true]) {
              const ray: Vector = [x / focalMm, 1, y / focalMm];
              const by = far ? 0 : nonzero(m) / nearestM;
              const moved: Vector = toward === 'side' ? [ray[0] - by, 1, ray[2]] : [ray[0], 1 - by, ray[2]];
              // The camera turns one way, the world the other.
              const [nx, ny] = projectedMm(
                tilted(panned(moved, -nonzero(panDeg)), -nonzero(tiltDeg)),
                focalMm,
              );
              most = Math.max(most, Math.hypot(nx - x, ny - y) / pitchMm);
            }
          }
          expect(Math.abs(got / most - 1)).toBeLessThan(5e-3);
        },
      ),
      { seed: 17 },
    );
  });
});

describe('properties', () => {
  test('the peak on screen is what theory says of the ease: 1, 1.5, 1.875, 1/(1-a) of the mean', () => {
    for (const [ease, slope] of [
      ['linear', 1],
      ['smoothstep', 1.5],
      ['quintic', 1.875],
      [{ trapezoid: 0.25 }, 4 / 3],
      [{ trapezoid: 0.5 }, 2],
    ] as const) {
      const travels = travelsOf([turn('pan', 60, { ease })]);
      const { widthsPerS, crossingS } = fastestOnScreen(travels, 2001, 24, OPTICS)!;
      const mean = (60 / fieldsOfView(OPTICS).horizontalDeg / 2000) * 24;
      expect(widthsPerS / mean).toBeGreaterThan(slope * 0.999);
      expect(widthsPerS / mean).toBeLessThanOrEqual(slope * (1 + 1e-9));
      expect(widthsPerS * crossingS).toBeCloseTo(1, 12);
    }
  });

  test('the fastest frame is the fastest of all', () => {
    fc.assert(
      fc.property(anyMoves, fc.integer({ min: 2, max: 300 }), (moves, frameCount) => {
        const travels = travelsOf(moves);
        const all = Array.from({ length: frameCount - 1 }, (_, i) =>
          widthsOf(
            travels,
            travels.map((t) => stepAfter(t, i, frameCount)),
            OPTICS,
          ),
        ) as number[];
        const fastest = fastestOnScreen(travels, frameCount, 25, OPTICS)!;
        expect(fastest.widthsPerS / (25 * Math.max(...all))).toBeCloseTo(1, 6);
        expect(all[fastest.frame]! / Math.max(...all)).toBeCloseTo(1, 6);
      }),
      { seed: 18 },
    );
  });

  test('the fewest frames are enough, and one fewer is not', () => {
    let more = 0;
    fc.assert(
      fc.property(anyMoves, between(1, 60), (moves, fps) => {
        const travels = travelsOf(moves);
        const frames = fewestFrames(travels, OPTICS, fps, COMFORT_CROSSING_S) as number;
        const crossing = (count: number) => fastestOnScreen(travels, count, fps, OPTICS)!.crossingS;
        expect(crossing(frames)).toBeGreaterThanOrEqual(COMFORT_CROSSING_S * (1 - 1e-9));
        if (frames > 2) {
          more++;
          expect(crossing(frames - 1)).toBeLessThan(COMFORT_CROSSING_S);
        }
      }),
      { seed: 19 },
    );
    expect(more).toBeGreaterThan(50);
  });

  test('twice the shutter smears twice as far under a linear move, and more under any', () => {
    fc.assert(
      fc.property(anyEase, fc.integer({ min: 3, max: 100 }), between(0.01, 0.45), (ease, count, open) => {
        const travels = travelsOf([turn('pan', 60, { mode: 'continuous', ease })]);
        const frame = Math.floor(count / 2) - 1;
        const smear = (share: number) => blurPx(travels, frame, frame + share, count, OPTICS) as number;
        expect(smear(2 * open)).toBeGreaterThan(smear(open));
        if (ease === 'linear') expect(smear(2 * open) / smear(open)).toBeCloseTo(2, 6);
      }),
      { seed: 20 },
    );
  });
});

test('what is not known is not guessed', () => {
  const pan = travelsOf([turn('pan', 60)]);
  const { nearestM: _, ...nowhere } = slide(1, { mode: 'continuous' });
  expect(fastestOnScreen(pan, 100, 24, undefined)).toBeUndefined();
  expect(fewestFrames(pan, undefined, 24, 7)).toBeUndefined();
  expect(fastestOnScreen(travelsOf([nowhere]), 100, 24, OPTICS)).toBeUndefined();
  expect(blurPx(travelsOf([nowhere]), 0, 1, 100, OPTICS)).toBeUndefined();
  expect(blurPx(travelsOf([turn('pan', 60, { mode: 'continuous' })]), 0, 1, 100, lensOf(35))).toBeUndefined();
  expect(blurPx(pan, 0, 1, 100, undefined)).toBe(0);
});
