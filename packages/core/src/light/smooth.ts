// Joining pieces so that neither value nor slope jumps: a step in the light is a visible step in the clip.

/** Rises from 0 at `from` to 1 at `to` (either order) with zero slope at both ends; flat outside. */
export function smoothstep(from: number, to: number, x: number): number {
  const u = Math.min(1, Math.max(0, (x - from) / (to - from)));
  return u * u * (3 - 2 * u);
}

/**
 * Slopes for a cubic through the knots that follows the parabola through each three neighbours.
 * Linear in `ys`, so that interpolating a table first one way and then the other stays smooth both ways.
 *
 * @param xs rising knots, at least three
 * @param ends slope at the first and last knot; absent, the slope of the outermost parabola
 * @returns one slope a knot, in units of y per unit of x
 */
export function parabolaSlopes(
  xs: readonly number[],
  ys: readonly number[],
  ends: { readonly first?: number; readonly last?: number } = {},
): number[] {
  const last = xs.length - 1;
  const secant = (i: number) => (ys[i + 1]! - ys[i]!) / (xs[i + 1]! - xs[i]!);
  const inner = (i: number) => {
    const before = xs[i]! - xs[i - 1]!;
    const after = xs[i + 1]! - xs[i]!;
    return (secant(i - 1) * after + secant(i) * before) / (before + after);
  };
  return xs.map((_, i) => {
    if (i === 0) return ends.first ?? 2 * secant(0) - inner(1);
    if (i === last) return ends.last ?? 2 * secant(last - 1) - inner(last - 1);
    return inner(i);
  });
}

/**
 * Slopes of the natural cubic spline: of all curves through the knots the one that bends least, its second derivative
 * continuous. Linear in `ys` and `lastSlope`, as {@link parabolaSlopes}. Source: natural cubic spline, Holladay (1957).
 *
 * @param lastSlope at the last knot; at the first the curve runs out straight
 */
export function splineSlopes(xs: readonly number[], ys: readonly number[], lastSlope: number): number[] {
  const last = xs.length - 1;
  const width = (i: number) => xs[i + 1]! - xs[i]!;
  const secant = (i: number) => (ys[i + 1]! - ys[i]!) / width(i);
  // Row i: below · d[i-1] + middle · d[i] + above · d[i+1] = right, solved by elimination downward and back.
  const above: number[] = [];
  const right: number[] = [];
  for (let i = 0; i <= last; i++) {
    const [below, middle, next, value] =
      i === 0
        ? [0, 2, 1, 3 * secant(0)]
        : i === last
          ? [0, 1, 0, lastSlope]
          : [
              width(i),
              2 * (width(i) + width(i - 1)),
              width(i - 1),
              3 * (width(i) * secant(i - 1) + width(i - 1) * secant(i)),
            ];
    const pivot = middle - below * (above[i - 1] ?? 0);
    above.push(next / pivot);
    right.push((value - below * (right[i - 1] ?? 0)) / pivot);
  }
  for (let i = last - 1; i >= 0; i--) right[i] = right[i]! - above[i]! * right[i + 1]!;
  return right;
}

/**
 * Slopes for a cubic that rises and falls only where the knots do, flat at both ends.
 * Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300.
 */
export function monotoneSlopes(xs: readonly number[], ys: readonly number[]): number[] {
  const last = xs.length - 1;
  return xs.map((_, i) => {
    if (i === 0 || i === last) return 0;
    const before = xs[i]! - xs[i - 1]!;
    const after = xs[i + 1]! - xs[i]!;
    const left = (ys[i]! - ys[i - 1]!) / before;
    const right = (ys[i + 1]! - ys[i]!) / after;
    if (left * right <= 0) return 0;
    const wLeft = 2 * after + before;
    const wRight = after + 2 * before;
    return (wLeft + wRight) / (wLeft / left + wRight / right);
  });
}

/** The cubic over one interval of `width`, at share `u` of it (0 to 1), from values and slopes at its ends. */
export function hermite(u: number, width: number, y0: number, y1: number, d0: number, d1: number): number {
  const v = 1 - u;
  return v * v * ((1 + 2 * u) * y0 + u * width * d0) + u * u * ((3 - 2 * u) * y1 - v * width * d1);
}

/** Index i of the interval xs[i]…xs[i + 1] that holds x; the outermost ones reach to infinity. */
export function intervalOf(xs: readonly number[], x: number): number {
  let i = 0;
  while (i < xs.length - 2 && x >= xs[i + 1]!) i++;
  return i;
}

/** Value at x of the cubic through knots with slopes; constant beyond the ends. */
export function cubicAt(
  xs: readonly number[],
  ys: readonly number[],
  slopes: readonly number[],
  x: number,
): number {
  const i = intervalOf(xs, x);
  const width = xs[i + 1]! - xs[i]!;
  const u = Math.min(1, Math.max(0, (x - xs[i]!) / width));
  return hermite(u, width, ys[i]!, ys[i + 1]!, slopes[i]!, slopes[i + 1]!);
}

/** Value at x of the straight lines through knots; constant beyond the ends. */
export function linearAt(xs: readonly number[], ys: readonly number[], x: number): number {
  const i = intervalOf(xs, x);
  const u = Math.min(1, Math.max(0, (x - xs[i]!) / (xs[i + 1]! - xs[i]!)));
  return ys[i]! * (1 - u) + ys[i + 1]! * u;
}
