// Luminance of a piece of clear sky by its direction: measured twilight up to the sun at 5°, the CIE clear
// sky from 10°. Source: docs/sources.md#koomen, docs/sources.md#cie-general-sky.

import { within } from '../check.js';
import { angleFrom, cieSky } from './cie-sky.js';
import { KOOMEN_AZIMUTH_DEG, KOOMEN_CDM2, KOOMEN_SUN_DEG, KOOMEN_VIEW_DEG } from './koomen.js';
import { magToLuminanceCdM2 } from './night.js';
import { cubicAt, hermite, intervalOf, parabolaSlopes, splineSlopes } from './smooth.js';
import {
  clearIlluminanceLx,
  LAST_LIGHT_DEG,
  lastLightEv,
  NO_LIGHT_DEG,
  skyPartOfSunlight,
  sunIlluminanceLx,
} from './sunlight.js';

/** Luminance of the natural night sky, cd/m², 22 magnitudes in a square arcsecond, which the measurements contain. */
const NIGHT_CDM2 = magToLuminanceCdM2(22);

/**
 * log2 of what the sun gives of the sky's luminance, cd/m², at every measured direction: first index sun altitude, then
 * view altitude, then azimuth. A cell not to be trusted lies on the line between its trusted neighbours in azimuth; the
 * three on the horizon below the sun stand as far above the next azimuth as their neighbours 20° up do.
 */
export function measuredLog2(): number[][][] {
  return KOOMEN_CDM2.map((bySun) => {
    const rows = bySun.map((row) => row.map((cell) => (cell === null ? null : Math.log2(cell - NIGHT_CDM2))));
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

/**
 * The measured sky at one view altitude: log2 of the sun's part in cd/m², by sun altitude and azimuth. In sun altitude it
 * is the smoothest curve through the measurements, which lie 3° apart, so that no slope comes from where they were made.
 * Above 5° of sun it stays what it is there.
 *
 * @param slopeAt5Deg with which it leaves that table, by azimuth
 */
function measuredSky(
  viewAltitudeDeg: number,
  slopeAt5Deg: (azimuthFromSunDeg: number) => number,
): (sunAltitudeDeg: number, azimuthFromSunDeg: number) => number {
  const values = measuredLog2().map((table) => atView(table, viewAltitudeDeg));
  const slopes = KOOMEN_AZIMUTH_DEG.map((azimuthDeg, k) =>
    splineSlopes(
      KOOMEN_SUN_DEG,
      values.map((row) => row[k]!),
      slopeAt5Deg(azimuthDeg),
    ),
  );
  const rows = values.map((value, i) => {
    const slope = slopes.map((bySun) => bySun[i]!);
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
    const lowSlope = along(low.slope, low.slopeTurn);
    return (
      hermite(
        Math.min(1, Math.max(0, (sunAltitudeDeg - KOOMEN_SUN_DEG[i]!) / step)),
        step,
        along(low.value, low.valueTurn),
        along(high.value, high.valueTurn),
        lowSlope,
        along(high.slope, high.slopeTurn),
      ) - lastLightEv(lowSlope, Math.max(0, LAST_LIGHT_DEG - sunAltitudeDeg))
    );
  };
}

const MEASURED_TO_DEG = 5;
// From there the measured sky goes over into the CIE clear sky, which is up to half a stop darker away from the sun, so
// slowly that no piece of sky brightens while the sun sinks: half of the difference is left at 15°, a twelfth at 30°.
const TO_CIE_DEG = 6;
const SLOPE_DEG = 0.01; // for slopes by differences

const CLEAR = cieSky(12);

// A lens takes in degrees of sky, so the cusp that the CIE sky has at the sun itself is rounded off.
const ROUND_SUN_DEG = 3;

/** Azimuth between two directions, 0 to 180, whatever turns are in them. */
export function azimuthBetweenDeg(azimuthADeg: number, azimuthBDeg: number): number {
  const turn = azimuthADeg - azimuthBDeg;
  return Math.abs(turn - 360 * Math.round(turn / 360));
}

/**
 * What the sun gives of the luminance of one piece of clear sky, cd/m²; the night is to be added.
 * Sets up once for a view altitude; the returned function takes the sun's true altitude
 * (-90 to 90) and the azimuth between view and sun (0 to 180) and is smooth in both.
 * The sun's disc itself is left out. Measured between -15° and 5° of sun.
 *
 * @throws RangeError unless viewAltitudeDeg is from 0 to 90
 */
export function sunlitSkyToward(
  viewAltitudeDeg: number,
): (sunAltitudeDeg: number, azimuthFromSunDeg: number) => number {
  within('viewAltitudeDeg', viewAltitudeDeg, 0, 90);
  const angleFromView = angleFrom(viewAltitudeDeg);
  const cieLog2 = (sunAltitudeDeg: number, azimuthFromSunDeg: number) => {
    const angleDeg = angleFromView(sunAltitudeDeg, azimuthFromSunDeg);
    const roundedDeg = Math.min(180, Math.sqrt(angleDeg * angleDeg + ROUND_SUN_DEG * ROUND_SUN_DEG));
    const skyLx = sunIlluminanceLx(sunAltitudeDeg) * skyPartOfSunlight(sunAltitudeDeg);
    return Math.log2(CLEAR(sunAltitudeDeg, viewAltitudeDeg, roundedDeg) * skyLx);
  };
  const slopeOf = (log2: typeof cieLog2, atDeg: number) => (azimuthDeg: number) =>
    (log2(atDeg + SLOPE_DEG, azimuthDeg) - log2(atDeg - SLOPE_DEG, azimuthDeg)) / (2 * SLOPE_DEG);
  const cieSlope = slopeOf(cieLog2, MEASURED_TO_DEG);
  const measuredLog2 = measuredSky(viewAltitudeDeg, cieSlope);
  // By azimuth: how far the measured sky stands above the CIE sky where they meet, and (next to nothing) moves from it.
  const measuredSlope = slopeOf(measuredLog2, MEASURED_TO_DEG - SLOPE_DEG);
  const over = byAzimuth(
    (azimuthDeg) => measuredLog2(MEASURED_TO_DEG, azimuthDeg) - cieLog2(MEASURED_TO_DEG, azimuthDeg),
  );
  const parting = byAzimuth((azimuthDeg) => measuredSlope(azimuthDeg) - cieSlope(azimuthDeg));
  return (sunAltitudeDeg, azimuthFromSunDeg) => {
    if (sunAltitudeDeg <= NO_LIGHT_DEG) return 0;
    if (sunAltitudeDeg <= MEASURED_TO_DEG) return 2 ** measuredLog2(sunAltitudeDeg, azimuthFromSunDeg);
    const far = (sunAltitudeDeg - MEASURED_TO_DEG) / TO_CIE_DEG;
    const overEv = (1 + far) * over(azimuthFromSunDeg) + far * TO_CIE_DEG * parting(azimuthFromSunDeg);
    return 2 ** (cieLog2(sunAltitudeDeg, azimuthFromSunDeg) + Math.exp(-far) * overEv);
  };
}

const STEP_DEG = 1.25; // close enough for the glow around the sun

/**
 * A function of azimuth, 0 to 180, the same on both sides of both ends: from a table, by cubics. Each of its values is
 * worked out when it is first asked for: an evening needs a few of them, and above 5° of sun alone.
 */
function byAzimuth(of: (azimuthDeg: number) => number): (azimuthDeg: number) => number {
  const last = 180 / STEP_DEG;
  const values = new Float64Array(last + 1).fill(Number.NaN);
  const value = (i: number) => {
    if (Number.isNaN(values[i])) values[i] = of(STEP_DEG * i);
    return values[i]!;
  };
  const slope = (i: number) => (i === 0 || i === last ? 0 : (value(i + 1) - value(i - 1)) / 2);
  return (azimuthDeg) => {
    const x = azimuthDeg / STEP_DEG;
    const i = Math.min(last - 1, Math.floor(x));
    return hermite(x - i, 1, value(i), value(i + 1), slope(i), slope(i + 1));
  };
}

/**
 * Clear-sky luminance of one piece of sky, the natural night in it, for each lux of {@link clearIlluminanceLx}, in 1/sr:
 * as {@link sunlitSkyToward} otherwise.
 */
export function clearSkyToward(
  viewAltitudeDeg: number,
): (sunAltitudeDeg: number, azimuthFromSunDeg: number) => number {
  const sunlit = sunlitSkyToward(viewAltitudeDeg);
  return (sunAltitudeDeg, azimuthFromSunDeg) =>
    (sunlit(sunAltitudeDeg, azimuthFromSunDeg) + NIGHT_CDM2) / clearIlluminanceLx(sunAltitudeDeg);
}

/**
 * Luminance of a piece of clear moonless sky: measured twilight up to the sun at 5°, the CIE clear sky from
 * 10°. Source: M. J. Koomen and others, Measurements of the brightness of the twilight sky, J. Opt. Soc. Am. 42 (1952) 353, ISO 15469:2004 / CIE S 011, Spatial distribution of daylight.
 *
 * @param direction sunAltitudeDeg -90 to 90, viewAltitudeDeg 0 to 90, azimuthFromSunDeg 0 to 180
 * @returns cd/m²; below -15° of sun it dies away into the natural night
 * @throws RangeError unless sunAltitudeDeg, viewAltitudeDeg and azimuthFromSunDeg are in those ranges
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
