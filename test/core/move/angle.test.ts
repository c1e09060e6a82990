import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  angleOfSizeDeg,
  directionOfPoint,
  fieldOfViewDeg,
  fieldsOfView,
  pixelPitchUm,
  turnBetweenBearings,
  turnBetweenPoints,
} from '../../../packages/core/src/move/angle.js';
import { readTable } from '../../reference/csv.js';
import { apartDeg, panned, tilted, type Vector } from './vectors.js';

const SENSOR = { widthMm: 36, heightMm: 24 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('check values', () => {
  // Source: field_of_view.csv: T. Bryant's table of lens coverage, 1999, to three decimals.
  const rows = readTable('move/field_of_view.csv');
  test('the table has rows', () => expect(rows.length).toBe(9));
  test.each(rows)('$focal_mm mm on 36 × 24 mm takes in $published_h_deg° across', (row) => {
    const view = fieldsOfView({ lens: { focalMm: Number(row.focal_mm) }, sensor: SENSOR });
    expect(Math.abs(view.horizontalDeg - Number(row.published_h_deg))).toBeLessThan(6e-4);
    expect(Math.abs(view.verticalDeg - Number(row.published_v_deg))).toBeLessThan(6e-4);
    expect(Math.abs(view.diagonalDeg - Number(row.published_diag_deg))).toBeLessThan(6e-4);
  });

  // Source: worked_examples.csv W087, W089.
  test('24 mm, and why width to height is no ratio of angles', () => {
    expect(Math.abs(fieldOfViewDeg(36, 24) - 73.74)).toBeLessThan(5e-4);
    expect(Math.abs(fieldOfViewDeg(36, 21) / fieldOfViewDeg(24, 21) - 1.365)).toBeLessThan(1e-3);
  });

  // Source: hand: a right-angled isosceles triangle on each side of the axis.
  test('10 m at 5 m are a right angle, and a negative size turns back', () => {
    expect(angleOfSizeDeg(10, 5)).toBeCloseTo(90, 12);
    expect(angleOfSizeDeg(-10, 5)).toBeCloseTo(-90, 12);
  });

  // Source: hand: 36 mm / 6000.
  test('pixels of 6 micrometres', () => {
    expect(pixelPitchUm({ ...SENSOR, widthPx: 6000 })).toBe(6);
    expect(pixelPitchUm(SENSOR)).toBeUndefined();
  });

  // Source: hand, on the compass.
  test.each([
    [350, 20, 'shorter', 30],
    [20, 350, 'shorter', -30],
    [350, 20, 'counterclockwise', -330],
    [20, 350, 'clockwise', 330],
    [90, 270, 'shorter', 180],
    [270, 90, 'shorter', 180],
    [10, 10, 'counterclockwise', 0],
    [-10, 370, 'shorter', 20],
  ] as const)('from %d° to %d° the %s way is %d°', (from, to, way, turn) => {
    expect(turnBetweenBearings(from, to, way)).toBeCloseTo(turn, 9);
  });
});

describe('by vectors', () => {
  const optics = fc
    .tuple(between(10, 400), between(10, 50), between(10, 50))
    .map(([focalMm, widthMm, heightMm]) => ({ lens: { focalMm }, sensor: { widthMm, heightMm } }));
  const point = fc.record({ fromLeft: between(0, 1), fromBottom: between(0, 1) });

  test('a camera turned to the direction of a point has that point on its axis', () => {
    fc.assert(
      fc.property(optics, point, between(-60, 60), (o, p, tiltDeg) => {
        const ray: Vector = [
          (p.fromLeft - 0.5) * o.sensor.widthMm,
          o.lens.focalMm,
          (p.fromBottom - 0.5) * o.sensor.heightMm,
        ];
        const world = tilted(ray, tiltDeg);
        const { azimuthDeg, altitudeDeg } = directionOfPoint(p, o, tiltDeg);
        const axis = panned(tilted([0, 1, 0], altitudeDeg), azimuthDeg);
        expect(apartDeg(axis, world)).toBeLessThan(1e-5);
      }),
      { seed: 1 },
    );
  });

  test('between two points on the middle line of a level picture, the pan is the angle between them', () => {
    fc.assert(
      fc.property(optics, between(0, 1), between(0, 1), (o, a, b) => {
        const ray = (share: number): Vector => [(share - 0.5) * o.sensor.widthMm, o.lens.focalMm, 0];
        const at = (fromLeft: number) => ({ fromLeft, fromBottom: 0.5 });
        const { panDeg, tiltDeg } = turnBetweenPoints(at(a), at(b), o);
        expect(Math.abs(Math.abs(panDeg) - apartDeg(ray(a), ray(b)))).toBeLessThan(1e-5);
        expect(panDeg === 0 ? 0 : Math.sign(panDeg)).toBe(
          Math.sign(Math.atan(ray(b)[0]) - Math.atan(ray(a)[0])),
        );
        expect(tiltDeg).toBeCloseTo(0, 9);
      }),
      { seed: 2 },
    );
  });

  test('edge to edge is the field of view, and bottom to top the upright one', () => {
    const o = { lens: { focalMm: 24 }, sensor: SENSOR };
    const across = turnBetweenPoints({ fromLeft: 0, fromBottom: 0.5 }, { fromLeft: 1, fromBottom: 0.5 }, o);
    expect(across.panDeg).toBeCloseTo(73.74, 3); // W087
    const up = turnBetweenPoints({ fromLeft: 0.5, fromBottom: 0 }, { fromLeft: 0.5, fromBottom: 1 }, o);
    expect(up.tiltDeg).toBeCloseTo(fieldsOfView(o).verticalDeg, 9);
  });

  test('two things seen square on are as far apart as their size and distance say', () => {
    fc.assert(
      fc.property(between(0.01, 1000), between(0.1, 10_000), (sizeM, distanceM) => {
        const [a, b]: Vector[] = [
          [-sizeM / 2, distanceM, 0],
          [sizeM / 2, distanceM, 0],
        ];
        expect(Math.abs(angleOfSizeDeg(sizeM, distanceM) - apartDeg(a!, b!))).toBeLessThan(1e-5);
      }),
      { seed: 3 },
    );
  });

  test('every way round the compass ends at the second bearing, the shorter in half a turn or less', () => {
    fc.assert(
      fc.property(between(-720, 720), between(-720, 720), (from, to) => {
        const off = (turn: number) => Math.abs(Math.sin((((from + turn - to) / 2) * Math.PI) / 180));
        const [short, right, left] = (['shorter', 'clockwise', 'counterclockwise'] as const).map((way) =>
          turnBetweenBearings(from, to, way),
        );
        for (const turn of [short, right, left]) expect(off(turn!)).toBeLessThan(1e-9);
        expect(Math.abs(short!)).toBeLessThanOrEqual(180);
        expect(right).toBeGreaterThanOrEqual(0);
        expect(left).toBeLessThanOrEqual(0);
        expect(Math.max(right!, -left!)).toBeLessThanOrEqual(360);
      }),
      { seed: 4 },
    );
  });
});

test('errors name the argument and the value', () => {
  expect(() => fieldOfViewDeg(36, 0)).toThrow('focalMm must be positive and finite, got 0');
  expect(() => fieldOfViewDeg(0, 24)).toThrow('sideMm must be positive and finite, got 0');
  expect(() => angleOfSizeDeg(1, -2)).toThrow('distanceM must be positive and finite, got -2');
  expect(() => angleOfSizeDeg(Number.NaN, 2)).toThrow('sizeM must be finite, got NaN');
  expect(() => turnBetweenBearings(Number.NaN, 2)).toThrow('fromDeg must be finite, got NaN');
  expect(() => turnBetweenBearings(2, Number.NaN)).toThrow('toDeg must be finite, got NaN');
  expect(() => pixelPitchUm({ widthMm: 0, heightMm: 24, widthPx: 6000 })).toThrow(
    'widthMm must be positive and finite, got 0',
  );
  expect(() => pixelPitchUm({ ...SENSOR, widthPx: 0 })).toThrow('widthPx must be positive and finite, got 0');
  const o = { lens: { focalMm: 24 }, sensor: SENSOR };
  expect(() => directionOfPoint({ fromLeft: 1.2, fromBottom: 0 }, o)).toThrow(
    'fromLeft must be from 0 to 1, got 1.2',
  );
  expect(() => directionOfPoint({ fromLeft: 1, fromBottom: -0.1 }, o)).toThrow(
    'fromBottom must be from 0 to 1, got -0.1',
  );
  expect(() => directionOfPoint({ fromLeft: 1, fromBottom: 0 }, o, 91)).toThrow(
    'cameraTiltDeg must be from -90 to 90, got 91',
  );
  expect(() => directionOfPoint({ fromLeft: 1, fromBottom: 0 }, { ...o, lens: { focalMm: 0 } })).toThrow(
    'focalMm must be positive and finite, got 0',
  );
});
