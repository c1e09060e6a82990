// Angles a camera turns through, read off the picture, the compass or a tape: and the field of view they need.
// A lens is rectilinear and focused far away, so that a point at angle a from the axis falls at f tan a.
// Source: docs/sources.md#field-of-view.

import { finite, positive, within } from '../check.js';

/** The lens on the camera. */
export interface Lens {
  /** True focal length, millimetres, > 0. */
  readonly focalMm: number;
}

/** The part of the sensor that the clip uses, as the camera stands: upright, `heightMm` is the longer side. */
export interface Sensor {
  /** Across, millimetres, > 0. */
  readonly widthMm: number;
  /** Upright, millimetres, > 0. */
  readonly heightMm: number;
  /** Pixels across, > 0; absent where nothing needs counting in pixels. */
  readonly widthPx?: number | undefined;
}

/** What decides how an angle falls on the picture. */
export interface Optics {
  /** In front of the sensor. */
  readonly lens: Lens;
  /** The part of it that the clip uses. */
  readonly sensor: Sensor;
}

/** A point of the picture in shares of its sides: 0 at the left or the bottom edge, 1 at the right or the top. */
export interface PicturePoint {
  /** Share of the width, 0 to 1. */
  readonly fromLeft: number;
  /** Share of the height, 0 to 1. */
  readonly fromBottom: number;
}

/** Which way round the compass. */
export type Way = 'shorter' | 'clockwise' | 'counterclockwise';

const DEG = Math.PI / 180;

/**
 * Angle a side of the sensor takes in: 2 atan(side / 2f). Source: geometry of a rectilinear lens focused far away.
 *
 * @param sideMm millimetres, > 0
 * @param focalMm true focal length, millimetres, > 0
 * @returns degrees, 0 to 180
 * @throws RangeError unless sideMm and focalMm are positive and finite
 * @example
 * ```ts
 * import { fieldOfViewDeg } from '@evenfall/core';
 *
 * // As in published tables of lens coverage.
 * fieldOfViewDeg(36, 28); // → 65.470
 * fieldOfViewDeg(24, 28); // → 46.397
 * ```
 */
export function fieldOfViewDeg(sideMm: number, focalMm: number): number {
  return (2 * Math.atan(positive('sideMm', sideMm) / (2 * positive('focalMm', focalMm)))) / DEG;
}

/** Fields of view across, upright and corner to corner, degrees. */
export function fieldsOfView({ lens, sensor }: Optics): {
  horizontalDeg: number;
  verticalDeg: number;
  diagonalDeg: number;
} {
  return {
    horizontalDeg: fieldOfViewDeg(sensor.widthMm, lens.focalMm),
    verticalDeg: fieldOfViewDeg(sensor.heightMm, lens.focalMm),
    diagonalDeg: fieldOfViewDeg(Math.hypot(sensor.widthMm, sensor.heightMm), lens.focalMm),
  };
}

/** Side of one pixel in micrometres, or undefined where the pixels are not counted. 36 mm on 8256 is 4.36. */
export function pixelPitchUm({ widthMm, widthPx }: Sensor): number | undefined {
  return widthPx === undefined
    ? undefined
    : (1000 * positive('widthMm', widthMm)) / positive('widthPx', widthPx);
}

/**
 * Where a point of the picture lies in the world, from the camera's heading and the horizon.
 *
 * @param cameraTiltDeg how far the camera looks up, -90 to 90; 0 is level
 * @returns azimuth to the right of the camera's heading, -180 to 180, and altitude, both in degrees
 */
export function directionOfPoint(
  { fromLeft, fromBottom }: PicturePoint,
  { lens, sensor }: Optics,
  cameraTiltDeg = 0,
): { azimuthDeg: number; altitudeDeg: number } {
  const x = ((within('fromLeft', fromLeft, 0, 1) - 0.5) * sensor.widthMm) / positive('focalMm', lens.focalMm);
  const y = ((within('fromBottom', fromBottom, 0, 1) - 0.5) * sensor.heightMm) / lens.focalMm;
  const tilt = within('cameraTiltDeg', cameraTiltDeg, -90, 90) * DEG;
  const ahead = Math.cos(tilt) - y * Math.sin(tilt);
  const up = Math.sin(tilt) + y * Math.cos(tilt);
  return {
    azimuthDeg: Math.atan2(x, ahead) / DEG,
    altitudeDeg: Math.atan2(up, Math.hypot(x, ahead)) / DEG,
  };
}

/**
 * The pan and tilt that bring the camera from one point of a picture to another. Source:
 * geometry of a rectilinear lens focused far away.
 *
 * @param from point that the middle of the frame starts on
 * @param to point that it ends on
 * @param optics lens and sensor the picture was taken with
 * @param cameraTiltDeg how far the camera looked up when it was taken, -90 to 90; 0 is level
 * @returns degrees: pan, right positive, and tilt, up positive
 * @throws RangeError on a point outside the picture, a tilt beyond -90 to 90, or a lens or sensor that is not
 *   above 0
 */
export function turnBetweenPoints(
  from: PicturePoint,
  to: PicturePoint,
  optics: Optics,
  cameraTiltDeg = 0,
): { panDeg: number; tiltDeg: number } {
  const [a, b] = [from, to].map((point) => directionOfPoint(point, optics, cameraTiltDeg));
  return {
    panDeg: turnBetweenBearings(a.azimuthDeg, b.azimuthDeg),
    tiltDeg: b.altitudeDeg - a.altitudeDeg,
  };
}

/**
 * Turn from one compass bearing to another, clockwise positive. Opposite bearings are reached clockwise; from
 * a bearing to itself is 0.
 *
 * @param fromDeg clockwise from north, any turn
 * @param toDeg likewise
 * @param way which way round
 * @returns degrees, above -360 to below 360; -180 to 180 by the shorter way
 * @throws RangeError unless fromDeg and toDeg are finite
 */
export function turnBetweenBearings(fromDeg: number, toDeg: number, way: Way = 'shorter'): number {
  const turn = (finite('toDeg', toDeg) - finite('fromDeg', fromDeg)) % 360;
  const clockwise = turn < 0 ? turn + 360 : turn;
  if (way === 'clockwise' || clockwise === 0) return clockwise;
  return way === 'counterclockwise' || clockwise > 180 ? clockwise - 360 : clockwise;
}

/**
 * Angle between two points so far apart, whose middle is so far away and seen square on: 2 atan(size / 2
 * distance).
 *
 * @param sizeM metres, finite; negative turns the other way
 * @param distanceM metres, > 0
 * @returns degrees, -180 to 180
 * @throws RangeError unless sizeM is finite and distanceM is positive and finite
 */
export function angleOfSizeDeg(sizeM: number, distanceM: number): number {
  return (2 * Math.atan(finite('sizeM', sizeM) / (2 * positive('distanceM', distanceM)))) / DEG;
}
