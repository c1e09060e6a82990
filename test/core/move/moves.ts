// Moves for the tests: invented gear, plain and at random.

import fc from 'fast-check';
import type { Ease } from '../../../packages/core/src/move/ease.js';
import type { Move, SlideMove, TurnMove } from '../../../packages/core/src/move/moves.js';

export const OPTICS = { lens: { focalMm: 35 }, sensor: { widthMm: 36, heightMm: 24, widthPx: 6000 } };

export function turn(axis: 'pan' | 'tilt', deg: number, change: Partial<TurnMove> = {}): TurnMove {
  return {
    axis,
    by: { deg },
    mode: 'stopped',
    ease: 'smoothstep',
    gear: { settleS: 1, topSpeedDegPerS: 5 },
    ...change,
  };
}

export function slide(m: number, change: Partial<SlideMove> = {}): SlideMove {
  return {
    axis: 'slide',
    by: { m },
    mode: 'stopped',
    ease: 'smoothstep',
    gear: { settleS: 1.5, topSpeedMPerS: 0.05 },
    toward: 'side',
    nearestM: 5,
    ...change,
  };
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
export const anyEase = fc.oneof(
  fc.constantFrom<Ease>('linear', 'smoothstep', 'quintic'),
  between(0, 0.5).map((trapezoid): Ease => ({ trapezoid })),
);
const sign = fc.constantFrom(-1, 1);
const mode = fc.constantFrom('stopped' as const, 'continuous' as const);

/** One to three moves on different axes. */
export const anyMoves: fc.Arbitrary<readonly Move[]> = fc
  .record({
    pan: fc.tuple(between(0.5, 180), sign, anyEase, mode, between(0.2, 20), between(0, 3)),
    tilt: fc.tuple(between(0.5, 60), sign, anyEase, mode, between(0.2, 20), between(0, 3)),
    slide: fc.tuple(between(0.05, 30), sign, anyEase, mode, between(0.01, 1), between(0, 3)),
    chosen: fc.subarray(['pan', 'tilt', 'slide'] as const, { minLength: 1 }),
  })
  .map(({ chosen, ...all }) =>
    chosen.map((axis): Move => {
      const [size, way, ease, how, speed, settleS] = all[axis];
      return axis === 'slide'
        ? slide(size * way, { ease, mode: how, gear: { settleS, topSpeedMPerS: speed } })
        : turn(axis, size * way, { ease, mode: how, gear: { settleS, topSpeedDegPerS: speed } });
    }),
  );
