// Luminance of a piece of clear sky by its direction: measured twilight up to the sun at 5°, the CIE clear
// sky from 10°. Source: docs/sources.md#koomen, docs/sources.md#cie-general-sky.

import { within } from '../check.js';
import { angleFrom, cieSky } from './cie-sky.js';
import { KOOMEN_AZIMUTH_DEG, KOOMEN_CDM2, KOOMEN_SUN_DEG, KOOMEN_VIEW_DEG } from './koomen.js';
import { cubicAt, hermite, intervalOf, monotoneSlopes, parabolaSlopes, smoothstep } from './smooth.js';
import { clearIlluminanceLx, skyPartOfSunlight } from './sunlight.js';

/**
 * log2 of sky luminance over the sky's part of horizontal illuminance, in 1/sr, at every measured direction: first index sun
 * altitude, then view altitude, then azimuth. A cell not to be trusted lies on the line between its trusted
 * neighbours in azimuth; the three on the horizon below the sun stand as far above the next azimuth as their
 * neighbours 20° up do.
 */
export function measuredRatiosLog2(): number[][][] {
  return KOOMEN_CDM2.map((bySun, i) => {
    const sunDeg = KOOMEN_SUN_DEG[i]!;
    const logLx = Math.log2(clearIlluminanceLx(sunDeg) * skyPartOfSunlight(sunDeg));
    const rows = bySun.map((row) => row.map((cell) => (cell === null ? null : Math.log2(cell) - logLx)));
    return rows.map((row, j) =>
      row.map((cell, k) => {
        if (cell !== null) return cell;
        if (k === 0) return row[1]! + (rows[j + 1]![0]! - rows[j + 1]![1]!);
        const [before, here, after] = [k - 1, k, k + 1].map((n) => KOOMEN_AZIMUTH_DEG[n]!);
        const share = (here! - before!) / (after! - before!);
        return row[k - 1]! * (1 - share) + row[k + 1]! * share;
      }),
    );
  });
}

/** A value for each azimuth at one view altitude, from a table by view altitude and azimuth. */
function atView(table: readonly (readonly number[])[], viewAltitudeDeg: number): number[] {
  const nextToZenith = table[KOOMEN_VIEW_DEG.indexOf(80)]!;
  // Past the zenith the same circle comes down opposite, which sets the slope there.
  const opposite = (k: number) =>
    cubicAt(KOOMEN_AZIMUTH_DEG, nextToZenith, azimuthSlopes(nextToZenith), 180 - KOOMEN_AZIMUTH_DEG[k]!);
  return KOOMEN_AZIMUTH_DEG.map((_, k) => {
    const column = table.map((row) => row[k]!);
    const last = (opposite(k) - nextToZenith[k]!) / 20;
    return cubicAt(
      KOOMEN_VIEW_DEG,
      column,
      parabolaSlopes(KOOMEN_VIEW_DEG, column, { last }),
      viewAltitudeDeg,
    );
  });
}

/** The sky is the same on both sides of the sun, so slopes toward it and away from it are zero. */
function azimuthSlopes(row: readonly number[]): number[] {
  return parabolaSlopes(KOOMEN_AZIMUTH_DEG, row, { first: 0, last: 0 });
}

/** The measured sky at one view altitude: log2 of the ratio by sun altitude and azimuth, held beyond -15° and 5°. */
function measuredSky(viewAltitudeDeg: number): (sunAltitudeDeg: number, azimuthFromSunDeg: number) => number {
  const ratios = measuredRatiosLog2();
  const slopes: number[][][] = ratios.map((table) => table.map((row) => row.map(() => 0)));
  for (let j = 0; j < KOOMEN_VIEW_DEG.length; j++) {
    for (let k = 0; k < KOOMEN_AZIMUTH_DEG.length; k++) {
      const bySun = monotoneSlopes(
        KOOMEN_SUN_DEG,
        ratios.map((table) => table[j]![k]!),
      );
      bySun.forEach((slope, i) => {
        slopes[i]![j]![k] = slope;
      });
    }
  }
  const rows = ratios.map((table, i) => {
    const value = atView(table, viewAltitudeDeg);
    const slope = atView(slopes[i]!, viewAltitudeDeg);
    return { value, valueTurn: azimuthSlopes(value), slope, slopeTurn: azimuthSlopes(slope) };
  });
  return (sunAltitudeDeg, azimuthFromSunDeg) => {
    const k = intervalOf(KOOMEN_AZIMUTH_DEG, azimuthFromSunDeg);
    const width = KOOMEN_AZIMUTH_DEG[k + 1]! - KOOMEN_AZIMUTH_DEG[k]!;
    const u = (azimuthFromSunDeg - KOOMEN_AZIMUTH_DEG[k]!) / width;
    const along = (y: readonly number[], d: readonly number[]) =>
      hermite(u, width, y[k]!, y[k + 1]!, d[k]!, d[k + 1]!);
    const i = intervalOf(KOOMEN_SUN_DEG, sunAltitudeDeg);
    const low = rows[i]!;
    const high = rows[i + 1]!;
    const step = KOOMEN_SUN_DEG[i + 1]! - KOOMEN_SUN_DEG[i]!;
    return hermite(
      Math.min(1, Math.max(0, (sunAltitudeDeg - KOOMEN_SUN_DEG[i]!) / step)),
      step,
      along(low.value, low.valueTurn),
      along(high.value, high.valueTurn),
      along(low.slope, low.slopeTurn),
      along(high.slope, high.slopeTurn),
    );
  };
}

const MEASURED_TO_DEG = 5;
const CIE_FROM_DEG = 10;

// A lens takes in degrees of sky, so the cusp that the CIE sky has at the sun itself is rounded off.
const ROUND_SUN_DEG = 3;

/** Azimuth between two directions, 0 to 180, whatever turns are in them. */
export function azimuthBetweenDeg(azimuthADeg: number, azimuthBDeg: number): number {
  const turn = azimuthADeg - azimuthBDeg;
  return Math.abs(turn - 360 * Math.round(turn / 360));
}

/**
 * Clear-sky luminance of one piece of sky for each lux of {@link clearIlluminanceLx}, in 1/sr.
 * Sets up once for a view altitude (about 2 ms); the returned function takes the sun's true altitude
 * (-90 to 90) and the azimuth between view and sun (0 to 180) and is smooth in both.
 * The sun's disc itself is left out. Measured between -15° and 5° of sun; below, the last pattern is held.
 *
 * @throws RangeError unless viewAltitudeDeg is from 0 to 90
 */
export function clearSkyToward(
  viewAltitudeDeg: number,
): (sunAltitudeDeg: number, azimuthFromSunDeg: number) => number {
  within('viewAltitudeDeg', viewAltitudeDeg, 0, 90);
  const measuredLog2 = measuredSky(viewAltitudeDeg);
  const clear = cieSky(12);
  const angleFromView = angleFrom(viewAltitudeDeg);
  const cieLog2 = (sunAltitudeDeg: number, azimuthFromSunDeg: number) => {
    const angleDeg = angleFromView(sunAltitudeDeg, azimuthFromSunDeg);
    const roundedDeg = Math.min(180, Math.sqrt(angleDeg * angleDeg + ROUND_SUN_DEG * ROUND_SUN_DEG));
    return Math.log2(clear(sunAltitudeDeg, viewAltitudeDeg, roundedDeg));
  };
  return (sunAltitudeDeg, azimuthFromSunDeg) => {
    const toCie = smoothstep(MEASURED_TO_DEG, CIE_FROM_DEG, sunAltitudeDeg);
    const measured = toCie < 1 ? measuredLog2(sunAltitudeDeg, azimuthFromSunDeg) * (1 - toCie) : 0;
    const cie = toCie > 0 ? cieLog2(sunAltitudeDeg, azimuthFromSunDeg) * toCie : 0;
    return Math.exp(Math.LN2 * (measured + cie)) * skyPartOfSunlight(sunAltitudeDeg);
  };
}

/**
 * Luminance of a piece of clear moonless sky: measured twilight up to the sun at 5°, the CIE clear sky from
 * 10°. Source: docs/sources.md#koomen, docs/sources.md#cie-general-sky.
 *
 * @param direction sunAltitudeDeg -90 to 90, viewAltitudeDeg 0 to 90, azimuthFromSunDeg 0 to 180
 * @returns cd/m²; below -15° of sun the last measured pattern is held
 * @throws RangeError unless sunAltitudeDeg, viewAltitudeDeg and azimuthFromSunDeg are in those ranges
 * @example
 * ```ts
 * import { clearSkyLuminanceCdM2 } from '@evenfall/core';
 *
 * // Koomen and others measured this at the zenith at the end of civil twilight.
 * clearSkyLuminanceCdM2({ sunAltitudeDeg: -6, viewAltitudeDeg: 90, azimuthFromSunDeg: 0 }); // → 0.5256
 * ```
 */
export function clearSkyLuminanceCdM2(direction: {
  readonly sunAltitudeDeg: number;
  readonly viewAltitudeDeg: number;
  readonly azimuthFromSunDeg: number;
}): number {
  const { sunAltitudeDeg, viewAltitudeDeg, azimuthFromSunDeg } = direction;
  within('azimuthFromSunDeg', azimuthFromSunDeg, 0, 180);
  const lx = clearIlluminanceLx(sunAltitudeDeg);
  return clearSkyToward(viewAltitudeDeg)(sunAltitudeDeg, azimuthFromSunDeg) * lx;
}
