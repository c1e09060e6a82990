// The light of a shoot, frame by frame: from frame times to sun and moon, and the scene's EV.
// `light/` knows no dates and `sun.ts` no scene; this is where they meet.

import { aNumber, hold, listOf } from '../hold.js';
import { bandAround, forecastBand } from '../light/band.js';
import { type Correction, correctedBandAt, correctForecast, type Reading } from '../light/reading.js';
import { type SceneLight, sceneLight } from '../light/scene.js';
import { knownOf, lampsByClock, sceneIn } from '../light/words.js';
import { fieldsOfView } from '../move/angle.js';
import { sceneAtStart, shootPointing } from '../shoot/pointing.js';
import type { Shoot } from '../shoot/shoot.js';
import { checkShoot } from '../shoot/shoot-check.js';
import { instant } from '../shoot/span.js';
import { opticsOf } from '../shoot/time-left.js';
import { civilDay, type Zone, zoneOf } from '../sky/clock.js';
import { horizonAzimuthDeg, type SkyPosition, sunAndMoon, sunPosition } from '../sky/sun.js';
import { skyTrack } from '../sky/track.js';

/** A shoot's light, one entry a frame in every list. */
export interface Forecast {
  /** The place's clock. */
  readonly zone: Zone;
  /** Start of each frame, UTC epoch milliseconds. */
  readonly times: Float64Array;
  /** Where sun and moon stand. */
  readonly sky: readonly SkyPosition[];
  /** As forecast, before readings. */
  readonly light: readonly SceneLight[];
  /** What a meter reads off the frame, EV at ISO 100, as the readings have corrected it. */
  readonly sceneEv100: Float64Array;
  /** 5 % of evenings are darker, EV at ISO 100. */
  readonly lowEv100: Float64Array;
  /** 5 % are brighter, EV at ISO 100. */
  readonly highEv100: Float64Array;
  /** The forecast and its readings, to ask at other times or to add to. */
  readonly correction: Correction;
}

/**
 * The light at given times under a shoot's scene and readings.
 *
 * @param shoot its place, date, direction, scene and readings
 * @param times UTC epoch milliseconds, rising, one or more: from {@link shootSpan}, or any others
 * @returns one entry a time in every list
 * @throws RangeError on a shoot that `readShoot` would refuse, or times that are not finite
 * @example
 * ```ts
 * // With the shoot of planShoot's example.
 * import { forecastLight } from '@evenfall/core';
 *
 * // A reading two stops below the forecast moves the light at its time by about as much.
 * const times = Float64Array.of(Date.parse('2026-09-22T19:30:00+02:00'));
 * const before = forecastLight(shoot, times).sceneEv100[0]!;
 * const readings = [{ at: '2026-09-22T19:30:00+02:00', ev100: before - 2 }];
 * before - forecastLight({ ...shoot, readings }, times).sceneEv100[0]!; // → 2.0
 * ```
 */
export function forecastLight(shoot: Shoot, times: Float64Array): Forecast {
  checkShoot(shoot);
  hold('times', times, listOf(aNumber, 1));
  return forecastOver(shoot, times);
}

/** The same of a shoot that is right. */
export function forecastOver(shoot: Shoot, times: Float64Array): Forecast {
  const { place, direction, date } = shoot;
  const scene = sceneAtStart(shoot);
  const zone = zoneOf(place);
  const day = civilDay(date, zone);
  const azimuthDeg = horizonAzimuthDeg(direction, day.startMs, day.endMs, place);
  const optics = opticsOf(shoot.camera);
  const words = sceneIn(scene, azimuthDeg);
  const seen = optics === undefined ? words : { ...words, field: fieldsOfView(optics) };
  const lightOf = sceneLight(seen);
  const pointing = shootPointing(shoot, {
    azimuthDeg: seen.viewAzimuthDeg,
    altitudeDeg: seen.viewAltitudeDeg,
  });
  const lampsLit = lampsByClock(scene, direction === 'dusk', instant);
  const lightAt = (atMs: number, sky: SkyPosition) => {
    const view = pointing?.(atMs);
    if (view === undefined && lampsLit === undefined) return lightOf(sky);
    const { azimuthDeg, altitudeDeg } = view ?? {
      azimuthDeg: seen.viewAzimuthDeg,
      altitudeDeg: seen.viewAltitudeDeg,
    };
    return lightOf(sky, {
      viewAzimuthDeg: azimuthDeg,
      // There is no sky below the horizon: a lens that looks down has what is nearest to it.
      viewAltitudeDeg: Math.max(0, altitudeDeg),
      ...(lampsLit === undefined ? {} : { lampsLit: lampsLit(atMs) }),
    });
  };
  // A plan made ahead under "clear" does not know the evening's weather; any other word states it.
  const known = knownOf(scene, scene.cloud !== 'clear');
  const bandOfFrame = forecastBand(known);
  const skyAt = (atMs: number) => sunAndMoon(atMs, place);

  const correction = correctForecast(
    shoot.readings.map(({ at, ev100 }): Reading => ({ atMs: instant(at), ev100 })),
    {
      forecastEv100At: (atMs) => lightAt(atMs, skyAt(atMs)).ev100,
      bandAt: (atMs) => {
        const { ev100, parts } = lightAt(atMs, skyAt(atMs));
        return bandAround(ev100, bandOfFrame(parts));
      },
      sunAltitudeAt: (atMs) => sunPosition(atMs, place).altitudeDeg,
      known,
    },
  );
  const sky = skyTrack(times, place);
  const light = sky.map((position, i) => lightAt(times[i], position));
  const sceneEv100 = times.map((atMs, i) => light[i].ev100 + correction.offsetEvAt(atMs));
  const lowEv100 = new Float64Array(times.length);
  const highEv100 = new Float64Array(times.length);
  sky.forEach(({ sunAltitudeDeg }, i) => {
    const weather = bandOfFrame(light[i].parts);
    const spread = correctedBandAt(correction, times[i], { sunAltitudeDeg, weather });
    const band = bandAround(sceneEv100[i], spread);
    lowEv100[i] = band.lowEv100;
    highEv100[i] = band.highEv100;
  });
  return {
    zone,
    times,
    sky,
    light,
    sceneEv100,
    lowEv100,
    highEv100,
    correction,
  };
}
