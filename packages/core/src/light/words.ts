// The plain words of a shoot file and the numbers they stand for. Source of each table: docs/sources.md.

import { ev100ToLuminance } from '../exposure/exposure.js';
import type { Known } from './band.js';
import { type Cloud, cloudOfEighths } from './cloud.js';
import { type Night, nightOfGroundLx, nightOfZenith } from './night.js';
import type { Lamps, Scene } from './scene.js';
import type { CloudWord, LampsWord, NightWord, SceneWords, SurfaceWord } from './scene-words.js';

/**
 * Reflectance of a scene that nothing is said about: the grey card's.
 *
 * @example
 * ```ts
 * import { GREY_REFLECTANCE } from '@evenfall/core';
 *
 * GREY_REFLECTANCE; // → 0.18
 * ```
 */
export const GREY_REFLECTANCE = 0.18;

/**
 * Reflectance of grounds in visible light, 0 to 1. Source: docs/sources.md#surfaces.
 *
 * @example
 * ```ts
 * import { SURFACES } from '@evenfall/core';
 *
 * // Fresh snow is two stops brighter than a grey card.
 * Math.log2(SURFACES.snow / 0.18); // → 2.06
 * ```
 */
export const SURFACES: Readonly<Record<SurfaceWord, number>> = {
  grass: 0.1,
  sand: 0.35,
  snow: 0.75,
  water: 0.07,
  rock: 0.2,
  city: 0.15,
};

/**
 * Night light of places, clear and moonless; stated cloud changes it. Source: docs/sources.md#night-sky.
 *
 * @example
 * ```ts
 * import { NIGHTS } from '@evenfall/core';
 *
 * NIGHTS.remote.skyCdM2; // → 1.71e-4
 * NIGHTS.city.groundLx; // → 0.041
 * ```
 */
export const NIGHTS: Readonly<Record<NightWord, Night>> = {
  remote: nightOfZenith(22),
  rural: nightOfZenith(21.3),
  suburb: nightOfZenith(19.5),
  town: nightOfZenith(18.5),
  // 0.13 lx were measured on a roof in a large city in mixed weather: half way, in stops, between its clear sky and cloud
  // that gives ten times as much back.
  city: nightOfZenith(17.3),
};

/**
 * What cloud takes, in stops, and the share of the sky it covers. Stops: docs/sources.md#cloud. How much of
 * the pattern around the sun it hides is our estimate: none has been measured for these words.
 *
 * @example
 * ```ts
 * import { CLOUDS } from '@evenfall/core';
 *
 * CLOUDS.overcast; // → { stops: -2.2, cover: 1 }
 * ```
 */
export const CLOUDS: Readonly<Record<CloudWord, Cloud>> = {
  clear: { stops: 0, cover: 0 },
  thin: { stops: -0.7, cover: 0.25 },
  broken: { stops: -1.6, cover: 0.6 },
  overcast: { stops: -2.2, cover: 1 },
  heavy: { stops: -3.2, cover: 1 },
};

/**
 * Lit streets, floodlit walls, a skyline far off: `ev100` as a spot meter reads them, EV at ISO 100, and
 * `share` of the frame, 0 to 1. Source: docs/sources.md#scene-table.
 *
 * @example
 * ```ts
 * import { LAMPS } from '@evenfall/core';
 *
 * LAMPS.street; // → { ev100: 7, share: 0.2 }
 * ```
 */
export const LAMPS: Readonly<Record<LampsWord, { readonly ev100: number; readonly share: number }>> = {
  none: { ev100: 0, share: 0 },
  street: { ev100: 7, share: 0.2 },
  floodlit: { ev100: 4, share: 0.2 },
  skyline: { ev100: 2, share: 0.1 },
};

/**
 * The scene that the words of a shoot file describe.
 *
 * @param words from a shoot
 * @param horizonSunAzimuthDeg azimuth of the sun where it stands on the horizon that day (or is nearest to
 *   it), clockwise from north, from {@link horizonAzimuthDeg}; `facing` counts from it: "side" is 90° clockwise,
 *   "away" 180°
 * @returns the same in numbers
 * @throws RangeError where a number among the words is out of its range
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { sceneOf } from '@evenfall/core';
 *
 * sceneOf({ ...shoot.scene, facing: 'side' }, 280).viewAzimuthDeg; // → 10
 * sceneOf({ ...shoot.scene, surface: 'snow', cloud: 'heavy' }, 280).cloud.stops; // → -3.2
 * ```
 */
export function sceneOf(words: SceneWords, horizonSunAzimuthDeg: number): Scene {
  return {
    viewAzimuthDeg: viewAzimuthDeg(words.facing, horizonSunAzimuthDeg),
    viewAltitudeDeg: words.viewAltitudeDeg,
    skyShare: words.skyShare,
    reflectance:
      words.reflectance ?? (words.surface === undefined ? GREY_REFLECTANCE : SURFACES[words.surface]),
    uprightShare: words.uprightShare ?? 0,
    cloud: cloudOf(words.cloud),
    night: nightOf(words.night),
    lamps: lampsOf(words.lamps),
  };
}

function viewAzimuthDeg(facing: SceneWords['facing'], horizonSunAzimuthDeg: number): number {
  if (typeof facing === 'object') return facing.azimuthDeg;
  const turnDeg = { 'toward-sun': 0, side: 90, away: 180 }[facing];
  return (horizonSunAzimuthDeg + turnDeg) % 360;
}

function nightOf(night: SceneWords['night']): Night {
  if (typeof night === 'string') return NIGHTS[night];
  return 'groundLx' in night ? nightOfGroundLx(night.groundLx) : nightOfZenith(night.zenithMagArcsec2);
}

function lampsOf(lamps: SceneWords['lamps']): Lamps {
  const { ev100, share } = typeof lamps === 'string' ? LAMPS[lamps] : lamps;
  return { luminanceCdM2: ev100ToLuminance(ev100), share };
}

/**
 * What the words tell of how sure the forecast is, for the band around it.
 *
 * @param words from a shoot
 * @param cloudStated whether the photographer stated the cloud, or it is the default that nobody looked at
 * @returns for {@link forecastBand}
 * @throws RangeError where a number among the words is out of its range
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { knownOf } from '@evenfall/core';
 *
 * knownOf(shoot.scene, false); // → { cloud: 'unknown', base: { stops: 0, cover: 0 } }
 * knownOf({ ...shoot.scene, cloud: 'thin' }, true); // → { cloud: 'cloudy', base: { stops: -0.7, cover: 0.25 } }
 * ```
 */
export function knownOf({ cloud }: Pick<SceneWords, 'cloud'>, cloudStated: boolean): Known {
  const base = cloudOf(cloud);
  return { cloud: cloudStated ? (base.stops === 0 ? 'clear' : 'cloudy') : 'unknown', base };
}

function cloudOf(cloud: SceneWords['cloud']): Cloud {
  return typeof cloud === 'string' ? CLOUDS[cloud] : cloudOfEighths(cloud.eighths);
}
