// When sun and moon go behind the skyline or come over it: the direct light ends or begins there, not on the horizon.

import { overSkylineDeg, skylineToward } from '../light/skyline.js';
import { skylineOf } from '../light/words.js';
import type { Shoot } from '../shoot/shoot.js';
import { crossingsIn, sampleCurve } from '../sky/crossing.js';
import type { EventTime } from '../sky/events.js';
import { sunAndMoon, sunPosition } from '../sky/sun.js';

const STEP_MS = 300_000; // a ridge may be crossed twice within the hour
const LIMB_DEG = -16 / 60; // the last of the disc

/** Events of the skyline in [fromMs, toMs), in order of time; none where the shoot has a level horizon. */
export function skylineEvents({ place, scene }: Shoot, fromMs: number, toMs: number): EventTime[] {
  if (scene.skylineDeg === undefined) return [];
  const skylineDeg = skylineToward(skylineOf(scene.skylineDeg));
  const sunOver = (atMs: number) => {
    const { altitudeDeg, azimuthDeg } = sunPosition(atMs, place);
    return overSkylineDeg(altitudeDeg, skylineDeg(azimuthDeg));
  };
  const moonOver = (atMs: number) => {
    const { moonAltitudeDeg, moonAzimuthDeg } = sunAndMoon(atMs, place);
    return overSkylineDeg(moonAltitudeDeg, skylineDeg(moonAzimuthDeg));
  };
  const sunDeg = (atMs: number) => sunPosition(atMs, place).altitudeDeg;
  const found = (curve: (atMs: number) => number) =>
    crossingsIn(curve, sampleCurve(curve, fromMs, toMs, STEP_MS), LIMB_DEG, fromMs, toMs);
  const named = (body: 'sun' | 'moon', curve: (atMs: number) => number) =>
    found(curve).map(
      ({ atMs, rising }): EventTime => ({
        name: `${body}-${rising ? 'over' : 'behind'}-skyline`,
        atMs,
        sunAltitudeDeg: sunDeg(atMs),
      }),
    );
  return [...named('sun', sunOver), ...named('moon', moonOver)].sort((a, b) => a.atMs - b.atMs);
}
