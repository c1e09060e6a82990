// The plain words of a shoot file and the numbers they stand for. Source of each table: docs/sources.md.

import { finite } from '../check.js';
import { ev100ToLuminance } from '../exposure/exposure.js';
import { hold } from '../hold.js';
import type { Known } from './band.js';
import { type Cloud, cloudOfEighths } from './cloud.js';
import { type Night, nightOfGroundLx, nightOfZenith } from './night.js';
import type { Lamps, Scene } from './scene.js';
import { sceneCheck } from './scene-check.js';
import type { CloudWord, LampsWord, NightWord, SceneWords, SurfaceWord } from './scene-words.js';
import type { SkylinePoint } from './skyline.js';
import { smoothstep } from './smooth.js';

/** Reflectance of a scene that nothing is said about: the grey card's. */
export const GREY_REFLECTANCE = 0.18;

/** Reflectance of grounds in visible light, 0 to 1. Source: round values of lighting handbooks. */
export const SURFACES: Readonly<Record<SurfaceWord, number>> = {
  grass: 0.1,
  sand: 0.35,
  snow: 0.75,
  water: 0.07,
  rock: 0.2,
  city: 0.15,
};

/** Night light of places, clear and moonless; stated cloud changes it. Source: L = 1.08e5 · 10^(−0.4 m) cd/m², the usual conversion of magnitudes. */
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
 * What cloud takes, in stops, and the share of the sky it covers. Stops: F. Kasten and G. Czeplak, Solar Energy 24 (1980) 177, and USNO Circular 171 (1987). How much of
 * the pattern around the sun it hides is our estimate: none has been measured for these words.
 */
export const CLOUDS: Readonly<Record<CloudWord, Cloud>> = {
  clear: { stops: 0, cover: 0 },
  thin: { stops: -0.7, cover: 0.25 },
  broken: { stops: -1.6, cover: 0.6 },
  overcast: { stops: -2.2, cover: 1 },
  heavy: { stops: -3.2, cover: 1 },
};

/**
 * Lamps in the frame: `ev100` of the lit parts as a spot meter reads them, EV at ISO 100, and `share` of the frame, 0 to
 * 1. Both together give the frame what the scene table has: a night street with its windows EV 7, floodlit buildings 4,
 * lit buildings far off 2. Source: ANSI PH2.7-1973/1986, exposure guide.
 */
export const LAMPS: Readonly<Record<LampsWord, { readonly ev100: number; readonly share: number }>> = {
  none: { ev100: 0, share: 0 },
  street: { ev100: 8, share: 0.5 },
  floodlit: { ev100: 5, share: 0.5 },
  skyline: { ev100: 3.6, share: 0.33 },
};

/**
 * When public lighting comes on where nothing is said, by the sun's altitude: a clear sky gives level ground 79 lx at the
 * first, 16 at the second, around the 35 lx at which light sensors of street lamps are commonly set. Source:
 * common practice after BS 5489, switching at 35 lx.
 *
 * @example
 * ```ts
 * import { LAMPS_ON } from '@evenfall/core';
 *
 * LAMPS_ON; // → { fromSunAltitudeDeg: -3, toSunAltitudeDeg: -4.6 }
 * ```
 */
export const LAMPS_ON = { fromSunAltitudeDeg: -3, toSunAltitudeDeg: -4.6 };

/**
 * The scene that the words of a shoot file describe.
 *
 * @param words from a shoot
 * @param horizonSunAzimuthDeg azimuth of the sun where it stands on the horizon that day (or is nearest to
 *   it), clockwise from north, as {@link sunAndMoon} gives it at the sunset of {@link skyEvents}; `facing` counts from it: "side" is 90° clockwise,
 *   "away" 180°
 * @returns the same in numbers
 * @throws RangeError where a word is none or a number among them out of its range, or unless horizonSunAzimuthDeg is finite
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
  hold('words', words, sceneCheck);
  finite('horizonSunAzimuthDeg', horizonSunAzimuthDeg);
  return sceneIn(words, horizonSunAzimuthDeg);
}

/** The same of words that are right. */
export function sceneIn(words: SceneWords, horizonSunAzimuthDeg: number): Scene {
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
    ...(words.skylineDeg === undefined ? {} : { skyline: skylineOf(words.skylineDeg) }),
  };
}

/** One angle all round, or the points themselves. */
export function skylineOf(skylineDeg: NonNullable<SceneWords['skylineDeg']>): readonly SkylinePoint[] {
  return typeof skylineDeg === 'number' ? [{ azimuthDeg: 0, altitudeDeg: skylineDeg }] : skylineDeg;
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
  const named = typeof lamps === 'string' ? { word: lamps } : lamps;
  const { ev100, share } = 'word' in named ? LAMPS[named.word] : named;
  const on = 'on' in named && named.on !== undefined ? named.on : LAMPS_ON;
  // By the clock they are told frame by frame.
  const bySun = on !== 'always' && 'fromSunAltitudeDeg' in on;
  return { luminanceCdM2: ev100ToLuminance(ev100), share, ...(bySun ? { on } : {}) };
}

/** Share of the lamps lit at a time, where the words say it by the clock; undefined where the sun says it. */
export function lampsByClock(
  { lamps }: Pick<SceneWords, 'lamps'>,
  dusk: boolean,
  instant: (text: string) => number,
): ((atMs: number) => number) | undefined {
  const on = typeof lamps === 'object' ? lamps.on : undefined;
  if (on === undefined || on === 'always' || !('fromAt' in on)) return undefined;
  const fromMs = instant(on.fromAt);
  // Half a second where they come on at once: a step in one frame is what the eye would see too.
  const overMs = Math.max(500, on.overMin * 60_000);
  return (atMs) =>
    dusk ? smoothstep(fromMs, fromMs + overMs, atMs) : smoothstep(fromMs + overMs, fromMs, atMs);
}

/**
 * What the words tell of how sure the forecast is, for the band around it.
 *
 * @param words from a shoot
 * @param cloudStated whether the photographer stated the cloud, or it is the default that nobody looked at
 * @returns for {@link forecastBand}
 * @throws RangeError where a number among the words is out of its range
 */
export function knownOf({ cloud }: Pick<SceneWords, 'cloud'>, cloudStated: boolean): Known {
  const base = cloudOf(cloud);
  return { cloud: cloudStated ? (base.stops === 0 ? 'clear' : 'cloudy') : 'unknown', base };
}

function cloudOf(cloud: SceneWords['cloud']): Cloud {
  return typeof cloud === 'string' ? CLOUDS[cloud] : cloudOfEighths(cloud.eighths);
}
