import { expect } from 'vitest';

/**
 * Walks a grid and holds the largest step of value and the largest turn of slope to a bound. A jump shows as a
 * step of its own size however fine the grid, a corner as a turn of its own size; both shrink where there is none.
 *
 * @param f in stops
 * @param mostPerUnit steepest slope allowed, stops a unit
 * @param mostTurn largest change of slope allowed from one grid step to the next, stops a unit
 */
export function expectSmooth(
  f: (x: number) => number,
  grid: { from: number; to: number; step: number; mostPerUnit: number; mostTurn: number },
) {
  let worstSlope = { at: Number.NaN, is: 0 };
  let worstTurn = { at: Number.NaN, is: 0 };
  let lastSlope: number | undefined;
  let y0 = f(grid.from);
  const count = Math.round((grid.to - grid.from) / grid.step);
  for (let i = 1; i <= count; i++) {
    const x = grid.from + ((grid.to - grid.from) * i) / count;
    const y1 = f(x);
    const slope = (y1 - y0) / grid.step;
    if (!Number.isFinite(slope)) throw new Error(`no number at ${x}`);
    if (Math.abs(slope) > worstSlope.is) worstSlope = { at: x, is: Math.abs(slope) };
    const turn = lastSlope === undefined ? 0 : Math.abs(slope - lastSlope);
    if (turn > worstTurn.is) worstTurn = { at: x, is: turn };
    lastSlope = slope;
    y0 = y1;
  }
  expect(count).toBeGreaterThan(100);
  expect(worstSlope.is, `slope at ${worstSlope.at}`).toBeLessThan(grid.mostPerUnit);
  expect(worstTurn.is, `turn of slope at ${worstTurn.at}`).toBeLessThan(grid.mostTurn);
}
