// Which stars stand in a frame: declinations, from where the camera looks. Source: docs/sources.md#star-rules.

import { finite, within } from '../check.js';
import type { Optics } from './angle.js';

/** Where the middle of the frame lies. */
export interface SkyView {
  /** Clockwise from north, any turn. */
  readonly azimuthDeg: number;
  /** -90 to 90. */
  readonly altitudeDeg: number;
}

const DEG = Math.PI / 180;

type Vector = readonly [number, number, number]; // east, north, up

/**
 * Declination nearest to the celestial equator in the part of a level frame above the horizon: the star there trails
 * fastest. 0 where the equator runs through the frame.
 *
 * @returns undefined where the frame shows no sky
 */
export function trailingDeclinationDeg(
  { azimuthDeg, altitudeDeg }: SkyView,
  { lens, sensor }: Optics,
  latitudeDeg: number,
): number | undefined {
  const az = finite('azimuthDeg', azimuthDeg) * DEG;
  const alt = within('altitudeDeg', altitudeDeg, -90, 90) * DEG;
  const lat = within('latitudeDeg', latitudeDeg, -90, 90) * DEG;
  const ahead: Vector = [Math.sin(az) * Math.cos(alt), Math.cos(az) * Math.cos(alt), Math.sin(alt)];
  const right: Vector = [Math.cos(az), -Math.sin(az), 0];
  const up: Vector = [-Math.sin(az) * Math.sin(alt), -Math.cos(az) * Math.sin(alt), Math.cos(alt)];
  const pole: Vector = [0, Math.cos(lat), Math.sin(lat)];

  const wide = sensor.widthMm / 2 / lens.focalMm;
  const high = sensor.heightMm / 2 / lens.focalMm;
  // On the picture the horizon of a level camera is a level line.
  const low = Math.max(-high, -Math.tan(alt));
  if (low >= high) return undefined;
  const corners = [
    [-wide, low],
    [wide, low],
    [wide, high],
    [-wide, high],
  ].map(([x, y]) => plus(ahead, plus(times(right, x), times(up, y))));

  // Along a great circle, as every edge is one, declination turns only where it is farthest from the equator: the
  // nearest lies in a corner, or on the equator where that passes between corners.
  const sines = corners.map((corner) => dot(corner, pole) / Math.sqrt(dot(corner, corner)));
  if (Math.min(...sines) < 0 && Math.max(...sines) > 0) return 0;
  const nearest = sines.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
  return Math.asin(Math.min(1, Math.max(-1, nearest))) / DEG;
}

function plus(a: Vector, b: Vector): Vector {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

function times(a: Vector, by: number): Vector {
  return [a[0] * by, a[1] * by, a[2] * by];
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
