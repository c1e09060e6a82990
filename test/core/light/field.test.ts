// The sky over a lens's field: against adding up many pieces of it one by one.

import { describe, expect, test } from 'vitest';
import { meanSky, piecesOfSky } from '../../../packages/core/src/light/field.js';
import { type Sky, sceneLight } from '../../../packages/core/src/light/scene.js';
import type { SceneWords } from '../../../packages/core/src/light/scene-words.js';
import { azimuthBetweenDeg, sunlitSkyToward } from '../../../packages/core/src/light/sky.js';
import { sceneOf } from '../../../packages/core/src/light/words.js';
import { fieldsOfView } from '../../../packages/core/src/move/angle.js';
import { seeded } from '../../reference/random.js';
import { expectSmooth } from './smoothness.js';

const lens = (focalMm: number) => fieldsOfView({ lens: { focalMm }, sensor: { widthMm: 36, heightMm: 24 } });
const WIDE = lens(16);
const NORMAL = lens(50);
const WORDS: SceneWords = {
  facing: 'toward-sun',
  viewAltitudeDeg: 15,
  skyShare: 1,
  cloud: 'clear',
  night: 'remote',
  lamps: 'none',
};
const skyAt = (sunAltitudeDeg: number, more: Partial<Sky> = {}): Sky => ({
  sunAltitudeDeg,
  sunAzimuthDeg: 270,
  moonAltitudeDeg: -40,
  moonAzimuthDeg: 90,
  moonPhaseAngleDeg: 180,
  moonDistanceKm: 384_400,
  ...more,
});
const whole = (words: Partial<SceneWords>, field = WIDE) =>
  sceneLight({ ...sceneOf({ ...WORDS, ...words }, 270), field });
const point = (words: Partial<SceneWords>) => sceneLight(sceneOf({ ...WORDS, ...words }, 270));

/** The mean of a sky over the top share of a sensor, by directions worked out as vectors. */
function added(
  field: typeof WIDE,
  skyShare: number,
  viewDeg: number,
  sunDeg: number,
  azimuthDeg: number,
): number {
  const rad = Math.PI / 180;
  const n = 24;
  const skies = new Map<number, ReturnType<typeof sunlitSkyToward>>();
  let [sum, count] = [0, 0];
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const x = Math.tan((field.horizontalDeg / 2) * rad) * ((2 * i + 1) / n - 1);
      const y = Math.tan((field.verticalDeg / 2) * rad) * skyShare * ((2 * j + 1) / n - 1);
      // East, north, up; the camera looks north and up.
      const [c, s] = [Math.cos(viewDeg * rad), Math.sin(viewDeg * rad)];
      const [east, north, up] = [x, c - y * s, s + y * c];
      const altitudeDeg = Math.asin(up / Math.hypot(east, north, up)) / rad;
      if (altitudeDeg < 0) continue;
      const wholeDeg = Math.round(altitudeDeg);
      if (!skies.has(wholeDeg)) skies.set(wholeDeg, sunlitSkyToward(wholeDeg));
      sum += skies.get(wholeDeg)!(sunDeg, azimuthBetweenDeg(Math.atan2(east, north) / rad, azimuthDeg));
      count++;
    }
  }
  return sum / count;
}

test('the mean is that of many pieces, within a tenth of a stop, with the sun in the frame a sixth', () => {
  const random = seeded(515);
  for (let k = 0; k < 25; k++) {
    const field = random.pick([WIDE, lens(24), NORMAL, lens(200)]);
    const skyShare = random.between(0.2, 1);
    const viewDeg = random.between(5, 60);
    const [sunDeg, azimuthDeg] = [random.between(-15, 20), random.between(0, 180)];
    const mean = meanSky(piecesOfSky(field, skyShare, viewDeg), sunlitSkyToward)(sunDeg, azimuthDeg);
    const stops = Math.log2(mean / added(field, skyShare, viewDeg, sunDeg, azimuthDeg));
    expect(Math.abs(stops), `${viewDeg} up, sun ${sunDeg}, ${azimuthDeg} off`).toBeLessThan(
      sunDeg > 0 ? 1 / 6 : 0.1,
    );
  }
});

describe('geometry, by hand', () => {
  // A picture 90° wide: a quarter of the half width is tan⁻¹(1/8) = 7.125° aside at the horizon, three quarters 20.556°.
  test('pieces lie at equal steps of the tangent', () => {
    const pieces = piecesOfSky({ horizontalDeg: 90, verticalDeg: 1e-6 }, 1, 0);
    const asides = [...new Set(pieces.map(({ asideDeg }) => asideDeg.toFixed(3)))].map(Number);
    expect(asides).toEqual([7.125, 20.556, 32.005, 41.186]);
  });

  test('nothing lies below the horizon, and something is always left', () => {
    for (const viewDeg of [0, 10, 45, 90]) {
      const pieces = piecesOfSky(WIDE, 1, viewDeg);
      expect(pieces.length).toBeGreaterThan(0);
      for (const { altitudeDeg } of pieces) expect(altitudeDeg).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('what it changes', () => {
  test('a long lens sees what the one direction gives', () => {
    for (const sunDeg of [10, 0, -6, -12]) {
      const ev = whole({}, lens(400))(skyAt(sunDeg)).ev100 - point({})(skyAt(sunDeg)).ev100;
      expect(Math.abs(ev)).toBeLessThan(0.05);
    }
  });

  test('a wide one toward the low sun lies under it, for the glow is small', () => {
    for (const sunDeg of [8, 4, 0]) {
      const half = { skyShare: 0.5 };
      const ev = whole(half)(skyAt(sunDeg)).ev100 - point(half)(skyAt(sunDeg)).ev100;
      expect(ev).toBeLessThan(-0.3);
      expect(ev).toBeGreaterThan(-1.2);
    }
  });

  test('an even sky stays as it is, an overcast one takes the mean of its altitudes', () => {
    const night = (words: Partial<SceneWords>) => whole(words)(skyAt(-40)).skyLuminanceCdM2;
    expect(night({})).toBeCloseTo(point({})(skyAt(-40)).skyLuminanceCdM2, 9);
    const ev = (v: number) =>
      Math.log2(point({ cloud: 'overcast', viewAltitudeDeg: v })(skyAt(5)).skyLuminanceCdM2);
    const wide = Math.log2(whole({ cloud: 'overcast', viewAltitudeDeg: 30 })(skyAt(5)).skyLuminanceCdM2);
    expect(wide).toBeGreaterThan(ev(5));
    expect(wide).toBeLessThan(ev(60));
  });

  test('phase and distance of the moon act on the whole sky alike', () => {
    const moon = { moonAltitudeDeg: 30, moonAzimuthDeg: 200, moonPhaseAngleDeg: 40, moonDistanceKm: 370_000 };
    const sky = skyAt(-30, moon);
    const full = skyAt(-30, { ...moon, moonPhaseAngleDeg: 0 });
    const share = (light: ReturnType<typeof point>) =>
      (light(sky).skyLuminanceCdM2 - 1.71e-4) / (light(full).skyLuminanceCdM2 - 1.71e-4);
    expect(share(whole({}, NORMAL))).toBeCloseTo(share(point({})), 3);
  });
});

test('it has no steps in the altitude of the sun, in azimuth and as the lens tilts', () => {
  const light = whole({ skyShare: 0.6 });
  expectSmooth((h) => light(skyAt(h)).ev100, {
    from: -28,
    to: 40,
    step: 0.02,
    mostPerUnit: 2,
    mostTurn: 0.03,
  });
  const turn = (a: number) => light(skyAt(2, { sunAzimuthDeg: a })).ev100;
  expectSmooth(turn, { from: 90, to: 450, step: 0.05, mostPerUnit: 0.1, mostTurn: 0.005 });
  const tilt = (viewAltitudeDeg: number) => light(skyAt(-4), { viewAzimuthDeg: 270, viewAltitudeDeg }).ev100;
  expectSmooth(tilt, { from: 2, to: 40, step: 0.25, mostPerUnit: 0.2, mostTurn: 0.15 });
});
