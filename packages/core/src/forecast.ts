// The light of a shoot, frame by frame: from its span to frame times, sun and moon, and the scene's EV.
// `light/` knows no dates and `sun.ts` no scene; this is where they meet.

import { civilDay, frameTimes, parseRfc3339, type Zone, zoneOf } from './clock.js';
import { bandWithLamps } from './light/band.js';
import { type Correction, correctedBandAt, correctForecast, type Reading } from './light/reading.js';
import { type SceneLight, sceneLight } from './light/scene.js';
import { knownOf, sceneOf } from './light/words.js';
import { frameCountOf, type Shoot } from './shoot.js';
import { skyTrack } from './sky-track.js';
import { horizonAzimuth, type SkyPosition, sunAndMoon, sunPass, sunPosition } from './sun.js';

/** When the frames are taken, or that the sun never passes through the span on that day. */
export type ShootSpan =
  | { readonly kind: 'ok'; readonly times: Float64Array } // start of each frame, UTC epoch milliseconds
  | { readonly kind: 'no-span'; readonly why: string; readonly highDeg: number; readonly lowDeg: number };

/** A shoot's light, one entry a frame in every list. */
export interface Forecast {
  readonly zone: Zone;
  readonly times: Float64Array; // UTC epoch milliseconds
  readonly sky: readonly SkyPosition[];
  readonly light: readonly SceneLight[]; // as forecast, before readings
  readonly sceneEv100: Float64Array; // as the readings have corrected it
  readonly lowEv100: Float64Array;
  readonly highEv100: Float64Array;
  readonly correction: Correction;
}

/** Frame times of a shoot. The first frame starts on a whole second, so that a person can start it by the clock. */
export function shootSpan({ place, date, direction, span, intervalS }: Shoot): ShootSpan {
  const ends =
    'startAt' in span
      ? { kind: 'ok' as const, startMs: instant(span.startAt), endMs: instant(span.endAt) }
      : sunSpan(span.fromSunAltitudeDeg, span.toSunAltitudeDeg);
  if (ends.kind === 'none') {
    return { kind: 'no-span', why: ends.why, highDeg: ends.reachedHighDeg, lowDeg: ends.reachedLowDeg };
  }
  const startMs = Math.round(ends.startMs / 1000) * 1000;
  const frameCount = frameCountOf(Math.max(0, ends.endMs - startMs) / 1000, intervalS);
  return { kind: 'ok', times: frameTimes(startMs, frameCount, intervalS) };

  function sunSpan(fromDeg: number, toDeg: number) {
    const day = civilDay(date, zoneOf(place));
    return sunPass(direction, fromDeg, toDeg, day.startMs, day.endMs, place);
  }
}

/** The light at given times under a shoot's scene and readings. */
export function forecastLight(shoot: Shoot, times: Float64Array): Forecast {
  const { place, direction, date, scene } = shoot;
  const zone = zoneOf(place);
  const day = civilDay(date, zone);
  const azimuthDeg = horizonAzimuth(direction, day.startMs, day.endMs, place);
  const seen = sceneOf(scene, azimuthDeg);
  const lightOf = sceneLight(seen);
  const lampsCdM2 = seen.lamps.luminanceCdM2 * seen.lamps.share;

  const correction = correctForecast(
    shoot.readings.map(({ at, ev100 }): Reading => ({ atMs: instant(at), ev100 })),
    {
      forecastEv100At: (atMs) => lightOf(sunAndMoon(atMs, place.latitudeDeg, place.longitudeDeg)).ev100,
      sunAltitudeAt: (atMs) => sunPosition(atMs, place.latitudeDeg, place.longitudeDeg).altitudeDeg,
      // A plan made ahead under "clear" does not know the evening's weather; any other word states it.
      known: knownOf(scene, azimuthDeg, scene.cloud !== 'clear'),
    },
  );
  const sky = skyTrack(times, place);
  const light = sky.map(lightOf);
  const sceneEv100 = times.map((atMs, i) => light[i].ev100 + correction.offsetEvAt(atMs));
  const lowEv100 = new Float64Array(times.length);
  const highEv100 = new Float64Array(times.length);
  sky.forEach(({ sunAltitudeDeg }, i) => {
    const weather = correctedBandAt(correction, times[i], sunAltitudeDeg);
    const { lowEv, highEv } = bandWithLamps(weather, lampsCdM2 / light[i].luminanceCdM2);
    lowEv100[i] = sceneEv100[i] + lowEv;
    highEv100[i] = sceneEv100[i] + highEv;
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

function instant(text: string): number {
  const atMs = parseRfc3339(text);
  if (atMs !== undefined) return atMs;
  throw new RangeError(`"${text}" is no RFC 3339 time with an offset`);
}
