// Shoots for tests: invented evenings at real coordinates, and random ones built to be valid.

import { readShoot } from '../../packages/core/src/files/shoot-file.js';
import type { Shoot } from '../../packages/core/src/shoot/shoot.js';
import type { Random } from '../reference/random.js';

/** What a test's shoot is where it says nothing else. */
export const PLAIN_SHOOT = {
  format: 'evenfall-shoot/1',
  place: { latitudeDeg: 43.54, longitudeDeg: -5.66, timeZone: 'Europe/Madrid' },
  date: '2026-09-18',
  intervalS: 6,
  camera: {
    shutter: { shortest: '1/4000', longest: '30' },
    iso: { lowest: 100, highest: 3200 },
    aperture: '4',
  },
};

/** A pan to the right at an even pace that stands while the shutter is open. */
export const evenPan = (deg: number) => ({
  axis: 'pan',
  by: { deg },
  mode: 'stopped',
  ease: 'linear',
  gear: { settleS: 1, moveS: 1 },
});

/** A shoot from the keys of a shoot file; throws where it is wrong. */
export function shootFrom(keys: Record<string, unknown>): Shoot {
  const read = readShoot({ ...PLAIN_SHOOT, ...keys });
  if (read.kind === 'ok') return read.shoot;
  throw new Error(read.errors.map(({ message }) => message).join('\n'));
}

/** A random shoot anywhere on Earth, with any kit; many are feasible, some are not. */
export function randomShoot(random: Random): Shoot {
  const { chance, between, whole } = random;
  const pick = <T>(from: readonly T[]) => random.pick(from);
  const stepsPerStop = pick([2, 3]);
  const dusk = chance(0.5);
  const longest = pick(['4', '8', '15', '30', '60']);
  const keys = {
    place: { latitudeDeg: between(-66, 66), longitudeDeg: between(-180, 180) },
    date: `${whole(2000, 2049)}-${pick(['01', '04', '06', '09', '12'])}-${whole(10, 28)}`,
    direction: dusk ? 'dusk' : 'dawn',
    span: dusk
      ? { fromSunAltitudeDeg: between(0, 8), toSunAltitudeDeg: between(-14, -4) }
      : { fromSunAltitudeDeg: between(-14, -4), toSunAltitudeDeg: between(0, 8) },
    intervalS: pick([3, 5, 8, 12.5, 20, 40]),
    camera: {
      stepsPerStop,
      shutter: { shortest: '1/4000', longest },
      iso: { lowest: pick([100, 200]), highest: pick([800, 1600, 3200, 6400]) },
      aperture: chance(0.2) ? { widest: '2.8', narrowest: '8' } : pick(['2.8', '4', '8']),
      gapS: pick([0.5, 1, 2]),
      darkFrame: chance(0.2),
      bulb: chance(0.15),
      frameMB: 30,
      cardGB: 64,
    },
    filters: pick([
      [],
      [{ name: 'ND8', factor: 8 }],
      [
        { name: 'ND 0.9', density: 0.9 },
        { name: 'ND1000', factor: 1000 },
      ],
    ]),
    stackFilters: chance(0.3),
    scene: {
      facing: pick(['toward-sun', 'side', 'away']),
      cloud: pick(['clear', 'thin', 'overcast']),
      night: pick(['remote', 'rural', 'city']),
      lamps: pick(['none', 'street', 'skyline']),
    },
    crew: pick(['hand', 'rig']),
    limits: {
      ...(chance(0.3) ? { secondsBetweenCues: whole(0, 90) } : {}),
      ...(chance(0.2) ? { maxFilterChanges: whole(0, 2) } : {}),
    },
  };
  // Shorter than the shutter's 14 stops, and with pauses that leave time for the shortest.
  const frames = pick([3, 5, 7]);
  const stepEv = pick(stepsPerStop === 3 ? [2 / 3, 1, 2] : [0.5, 1, 2]);
  const pausesS = between(0, 0.9 * (keys.intervalS - keys.camera.gapS) - 0.6);
  const bracket = { frames, stepEv, betweenS: Math.max(0, pausesS) / (frames - 1) };
  const camera = { ...keys.camera, ...(chance(0.25) && (frames - 1) * stepEv < 12 ? { bracket } : {}) };
  // No hand times a shutter freely.
  return shootFrom({ ...keys, camera, ...(camera.bulb ? { crew: 'rig' } : {}) });
}
