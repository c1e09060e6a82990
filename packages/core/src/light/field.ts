// The sky part of a frame as a lens takes it in: the mean of many pieces of sky rather than the one in its middle.
// A lens is rectilinear, so that equal pieces of the sensor are equal steps of the tangent. Darkening toward the corners
// is left out. Source: docs/sources.md#field-of-view.

import { hermite } from './smooth.js';

const DEG = Math.PI / 180;

/** What the whole frame takes in, across and upright, degrees, 0 to 180. */
export interface Field {
  /** Across. */
  readonly horizontalDeg: number;
  /** Upright. */
  readonly verticalDeg: number;
}

/** What a piece of sky gives under a sun or moon, >= 0: its altitude, and the azimuth between the two, 0 to 180. */
export type OfBody = (bodyAltitudeDeg: number, azimuthFromBodyDeg: number) => number;

/** A piece of the frame's sky: altitude, and azimuth from the middle of the frame. */
interface Piece {
  readonly altitudeDeg: number;
  readonly asideDeg: number; // to either side
}

const ACROSS = 4; // on each side of the middle
const UPRIGHT = 5;

/** Pieces of equal weight of the sky in a frame: all its width, `skyShare` of its height, its middle at an altitude. */
export function piecesOfSky(field: Field, skyShare: number, viewAltitudeDeg: number): Piece[] {
  const [sin, cos] = [Math.sin(viewAltitudeDeg * DEG), Math.cos(viewAltitudeDeg * DEG)];
  const halfWidth = Math.tan((field.horizontalDeg / 2) * DEG);
  const halfHeight = skyShare * Math.tan((field.verticalDeg / 2) * DEG);
  const pieces: Piece[] = [];
  for (let j = 0; j < UPRIGHT; j++) {
    const up = halfHeight * ((2 * j + 1) / UPRIGHT - 1);
    for (let i = 0; i < ACROSS; i++) {
      const aside = (halfWidth * (i + 0.5)) / ACROSS;
      const level = cos - up * sin;
      const altitudeDeg = Math.atan2(sin + up * cos, Math.hypot(level, aside)) / DEG;
      if (altitudeDeg >= 0) pieces.push({ altitudeDeg, asideDeg: Math.atan2(aside, level) / DEG });
    }
  }
  return pieces.length > 0 ? pieces : [{ altitudeDeg: viewAltitudeDeg, asideDeg: 0 }];
}

/** The mean of what depends on the altitude alone. */
export function meanAltitude(pieces: readonly Piece[], of: (altitudeDeg: number) => number): number {
  return pieces.reduce((sum, { altitudeDeg }) => sum + of(altitudeDeg), 0) / pieces.length;
}

const STEP_BODY_DEG = 1;
const STEP_AZIMUTH_DEG = 5;
const AZIMUTHS = 180 / STEP_AZIMUTH_DEG;
const FLOOR = 1e-30; // under any light, so that there is a logarithm

/**
 * The mean sky of the pieces, from a table by the degree of the body's altitude and every five of azimuth. Each of its
 * values is worked out when it is first asked for: an evening needs a few of them. Between them it runs in cubics, so that
 * a call costs no more than a single piece.
 *
 * @param skyAt one piece, by its altitude
 */
export function meanSky(pieces: readonly Piece[], skyAt: (altitudeDeg: number) => OfBody): OfBody {
  const skies = pieces.map(({ altitudeDeg, asideDeg }) => ({ sky: skyAt(altitudeDeg), asideDeg }));
  const mean = (bodyDeg: number, azimuthDeg: number) => {
    let sum = 0;
    for (const { sky, asideDeg } of skies) {
      const far = azimuthDeg + asideDeg;
      sum += sky(bodyDeg, Math.abs(azimuthDeg - asideDeg)) + sky(bodyDeg, far > 180 ? 360 - far : far);
    }
    return Math.log2(FLOOR + sum / (2 * skies.length));
  };
  const rows = new Map<number, Float64Array>();
  const along = (k: number, azimuthDeg: number) => {
    const row = rows.get(k) ?? new Float64Array(AZIMUTHS + 1).fill(Number.NaN);
    rows.set(k, row);
    const at = (n: number) => {
      // The same on both sides of the body and of the point opposite.
      const a = n < 0 ? -n : n > AZIMUTHS ? 2 * AZIMUTHS - n : n;
      if (Number.isNaN(row[a])) {
        row[a] = mean(Math.min(90, Math.max(-90, k * STEP_BODY_DEG)), a * STEP_AZIMUTH_DEG);
      }
      return row[a]!;
    };
    const x = azimuthDeg / STEP_AZIMUTH_DEG;
    const i = Math.min(AZIMUTHS - 1, Math.floor(x));
    return hermite(x - i, 1, at(i), at(i + 1), (at(i + 1) - at(i - 1)) / 2, (at(i + 2) - at(i)) / 2);
  };
  return (bodyAltitudeDeg, azimuthFromBodyDeg) => {
    const x = bodyAltitudeDeg / STEP_BODY_DEG;
    const k = Math.floor(x);
    const [before, low, high, after] = [
      along(k - 1, azimuthFromBodyDeg),
      along(k, azimuthFromBodyDeg),
      along(k + 1, azimuthFromBodyDeg),
      along(k + 2, azimuthFromBodyDeg),
    ];
    return Math.max(0, 2 ** hermite(x - k, 1, low, high, (high - before) / 2, (after - low) / 2) - FLOOR);
  };
}
