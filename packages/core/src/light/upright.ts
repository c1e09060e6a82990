// Light on what stands upright, walls and faces, against light on level ground.
// Source: docs/sources.md#koomen and docs/sources.md#cie-general-sky, summed over half the dome.

import { clearAir, refractionDeg } from './air.js';
import { overcastSkyToward } from './cloud.js';
import { clearSkyToward } from './sky.js';
import { cubicAt, hermite, intervalOf, monotoneSlopes, parabolaSlopes } from './smooth.js';
import { skyPartOfSunlight } from './sunlight.js';

const DEG = Math.PI / 180;

/** An even sky lights an upright surface by half of what it lays on level ground. */
export const UPRIGHT_OF_EVEN_SKY = 0.5;

const SUN_DEG = [-15, -12, -9, -6, -3, 0, 3, 5, 7.5, 10, 15, 20, 30, 45, 60, 75, 90];
const AZIMUTH_DEG = [0, 22.5, 45, 67.5, 90, 112.5, 135, 157.5, 180];
const RINGS = 8;
const SECTORS = 32; // of the whole circle; a surface's edge then falls between two

/** Rings of the dome, each by the altitude of its middle and its solid angle for one sector, in sr. */
const DOME = Array.from({ length: RINGS }, (_, ring) => {
  const altitudeDeg = (90 * (ring + 0.5)) / RINGS;
  return {
    altitudeDeg,
    patchSr: Math.cos(altitudeDeg * DEG) * ((90 / RINGS) * DEG) * ((360 / SECTORS) * DEG),
  };
});

/** Lux on an upright surface and on level ground from a sky given by ring and by azimuth from the sun. */
function sums(luminance: readonly (readonly number[])[], surfaceAzimuthDeg: number) {
  let upright = 0;
  let level = 0;
  DOME.forEach(({ altitudeDeg, patchSr }, ring) => {
    for (let sector = 0; sector < SECTORS; sector++) {
      const azimuthDeg = (360 * (sector + 0.5)) / SECTORS;
      const light = luminance[ring]![sector]! * patchSr;
      const facing = Math.cos(altitudeDeg * DEG) * Math.cos((azimuthDeg - surfaceAzimuthDeg) * DEG);
      upright += light * Math.max(0, facing);
      level += light * Math.sin(altitudeDeg * DEG);
    }
  });
  return { upright, level };
}

/**
 * Lux on an upright surface for each lux on level ground under a clear sky, the sun in it or below it, without what
 * the ground throws back. With the sun at -6° about 1.4 facing it and 0.35 turned away; with the sun at 10°, the beam
 * included, 4 and 0.2.
 *
 * Sets up once (tens of milliseconds); the returned function takes the sun's true altitude (-90 to 90) and the azimuth between
 * sun and the surface's normal (0 to 180), and is smooth in both; `shown` is the share of the disc that shines on it. Below -15° the last pattern is held.
 */
export function clearSkyOnUpright(): (
  sunAltitudeDeg: number,
  azimuthFromSunDeg: number,
  shown?: number,
) => number {
  const toward = DOME.map(({ altitudeDeg }) => clearSkyToward(altitudeDeg));
  const ratiosLog2 = SUN_DEG.map((sunDeg) => {
    const luminance = toward.map((ratio) => {
      const half = Array.from({ length: SECTORS / 2 }, (_, sector) =>
        ratio(sunDeg, (360 * (sector + 0.5)) / SECTORS),
      );
      return [...half, ...half.toReversed()];
    });
    return AZIMUTH_DEG.map((azimuthDeg) => {
      const { upright, level } = sums(luminance, azimuthDeg);
      return Math.log2(upright / level);
    });
  });
  const bySun = AZIMUTH_DEG.map((_, k) =>
    monotoneSlopes(
      SUN_DEG,
      ratiosLog2.map((row) => row[k]!),
    ),
  );
  const turn = (row: readonly number[]) => parabolaSlopes(AZIMUTH_DEG, row, { first: 0, last: 0 });
  const rows = ratiosLog2.map((value, i) => {
    const slope = bySun.map((slopes) => slopes[i]!);
    return { value, valueTurn: turn(value), slope, slopeTurn: turn(slope) };
  });
  return (sunAltitudeDeg, azimuthFromSunDeg, shown = 1) => {
    const sunDeg = Math.max(SUN_DEG[0]!, sunAltitudeDeg);
    const i = intervalOf(SUN_DEG, sunDeg);
    const width = SUN_DEG[i + 1]! - SUN_DEG[i]!;
    const [low, high] = [rows[i]!, rows[i + 1]!];
    const at = (y: readonly number[], d: readonly number[]) => cubicAt(AZIMUTH_DEG, y, d, azimuthFromSunDeg);
    const log2 = hermite(
      (sunDeg - SUN_DEG[i]!) / width,
      width,
      at(low.value, low.valueTurn),
      at(high.value, high.valueTurn),
      at(low.slope, low.slopeTurn),
      at(high.slope, high.slopeTurn),
    );
    const beam = shown === 0 ? 0 : shown * beamOnUpright(sunAltitudeDeg, azimuthFromSunDeg);
    return skyPartOfSunlight(sunAltitudeDeg) * 2 ** log2 + beam;
  };
}

// A sun that grazes the wall comes on over some degrees; a corner in the light would be one in the clip.
const GRAZING = 0.1;

/**
 * Lux that the beam of sun or moon lays on an upright surface for each lux that beam and sky together lay on level
 * ground: the beam's part of them times the cotangent of its altitude, nothing from behind.
 */
export function beamOnUpright(altitudeDeg: number, azimuthFromSurfaceDeg: number): number {
  const { beam, scattered } = clearAir(altitudeDeg);
  // Level ground's beam is part of a published sum; a wall takes the beam as the eye sees it come, lifted by the air.
  const { facing } = clearAir(Math.min(90, altitudeDeg + refractionDeg(altitudeDeg)));
  const cos = Math.cos(azimuthFromSurfaceDeg * DEG);
  const shining = (cos + Math.sqrt(cos * cos + GRAZING * GRAZING)) / 2;
  return (shining * Math.cos(altitudeDeg * DEG) * facing) / (beam + scattered);
}

/** Lux of moonlight on an upright surface for each lux on level ground: the beam, and an even share of the sky's. */
export function moonOnUpright(altitudeDeg: number, azimuthFromMoonDeg: number, shown = 1): number {
  const { beam, scattered } = clearAir(altitudeDeg);
  const sky = scattered / (beam + scattered);
  return shown * beamOnUpright(altitudeDeg, azimuthFromMoonDeg) + UPRIGHT_OF_EVEN_SKY * sky;
}

/** Lux on an upright surface for each lux on level ground under a closed deck of cloud: 0.40 whichever way it faces. */
export function overcastOnUpright(): number {
  const luminance = DOME.map(({ altitudeDeg }) =>
    Array<number>(SECTORS).fill(overcastSkyToward(altitudeDeg)),
  );
  const { upright, level } = sums(luminance, 0);
  return upright / level;
}
