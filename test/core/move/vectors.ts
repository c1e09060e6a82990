// Geometry by plain vectors and a pinhole camera: slow, obvious, and nothing in common with the formulas tested.

export type Vector = readonly [number, number, number]; // right, ahead, up

const DEG = Math.PI / 180;

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Angle between two directions, degrees. */
export function apartDeg(a: Vector, b: Vector): number {
  return Math.acos(Math.min(1, dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b)))) / DEG;
}

/** Turned about the vertical, right positive. */
export function panned([x, y, z]: Vector, deg: number): Vector {
  const [c, s] = [Math.cos(deg * DEG), Math.sin(deg * DEG)];
  return [x * c + y * s, y * c - x * s, z];
}

/** Turned about the level axis that points right, up positive. */
export function tilted([x, y, z]: Vector, deg: number): Vector {
  const [c, s] = [Math.cos(deg * DEG), Math.sin(deg * DEG)];
  return [x, y * c - z * s, z * c + y * s];
}

/** Where a direction falls behind a pinhole of this focal length, for a camera that looks ahead; millimetres. */
export function projectedMm([x, y, z]: Vector, focalMm: number): readonly [number, number] {
  return [(focalMm * x) / y, (focalMm * z) / y];
}
