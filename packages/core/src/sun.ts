// Where sun and moon stand, and when the sun passes an altitude. The one file that knows the ephemeris; its
// conventions become ours here: every altitude is true (airless) and topocentric, degrees, azimuth clockwise from
// north. How close it comes: docs/sources.md#sun-accuracy.

import { getMoonPosition, getPosition } from 'suncalc';
import { finite, within } from './check.js';
import type { Curve } from './crossing.js';
import type { Direction, Place } from './shoot.js';
import { namedEvents, type SkyEvents } from './sky-events.js';
import { horizonMoment, passInDay, type SunPass } from './sun-pass.js';

export { type Crossing, crossings } from './crossing.js';
export type { EventTime, MissingEvent, SkyEvent, SkyEvents } from './sky-events.js';
export type { SunPass } from './sun-pass.js';

/** Sun and moon at one moment and place. */
export interface SkyPosition {
  /** -90 to 90, true altitude of the centre. */
  readonly sunAltitudeDeg: number;
  /** 0 to 360, clockwise from north. */
  readonly sunAzimuthDeg: number;
  readonly moonAltitudeDeg: number;
  readonly moonAzimuthDeg: number;
  /** Sun-moon-observer: 0 full, 180 new. */
  readonly moonPhaseAngleDeg: number;
  /** Of the disc, 0 to 1. */
  readonly moonLitFraction: number;
  /** From the centre of the Earth, as in almanacs. */
  readonly moonDistanceKm: number;
}

/** The moon alone. */
interface MoonPosition {
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  readonly fromEyeKm: number;
  readonly distanceKm: number; // from the centre of the Earth
}

const RAD = Math.PI / 180;
const AU_KM = 149_597_870.7;
const EARTH_RADIUS_KM = 6378.14;
const EARTH_FLATTENING_E2 = 0.00669438; // WGS 84, eccentricity squared
const MOON_RADIUS_KM = 1737.4;
const MOON_RISE_REFRACTION_DEG = 34 / 60;
const SUN_PARALLAX_DEG = 8.794 / 3600;
const J2000_MS = Date.UTC(2000, 0, 1, 12);

/** The refraction that suncalc adds to a true altitude, degrees; below the horizon it holds the value at 0. */
function addedRefraction(trueDeg: number): number {
  const h = Math.max(trueDeg, 0) * RAD;
  return 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179)) / RAD;
}

const HORIZON_REFRACTION_DEG = addedRefraction(0);

/** True altitude from suncalc's apparent one: solves h + R(h) = a. */
function trueAltitude(apparentDeg: number): number {
  let h = apparentDeg - HORIZON_REFRACTION_DEG;
  // R falls by less than 0.2 degree a degree, so each round gains a digit near the horizon, more above.
  for (let i = 0; i < 20; i++) {
    const next = apparentDeg - addedRefraction(h);
    if (Math.abs(next - h) < 1e-12) break;
    h = next;
  }
  return h;
}

/**
 * Degrees that suncalc's mean sidereal time lacks to the apparent one; added to the longitude, it turns the sky
 * as far. Main term of the nutation; up to 0.0044. Source: docs/sources.md#sun-accuracy.
 */
function siderealShift(atMs: number): number {
  const centuries = (atMs - J2000_MS) / 3_155_760_000_000;
  return -0.00439 * Math.sin((125.04 - 1934.136 * centuries) * RAD);
}

function checkPlace(atMs: number, latitudeDeg: number, longitudeDeg: number): void {
  finite('atMs', atMs);
  within('latitudeDeg', latitudeDeg, -90, 90);
  within('longitudeDeg', longitudeDeg, -180, 180);
}

function sunAt(date: Date, latitudeDeg: number, turnedLongitudeDeg: number) {
  const { altitude, azimuth } = getPosition(date, latitudeDeg, turnedLongitudeDeg);
  const geocentricDeg = trueAltitude(altitude);
  return {
    altitudeDeg: geocentricDeg - SUN_PARALLAX_DEG * Math.cos(geocentricDeg * RAD),
    azimuthDeg: azimuth,
  };
}

/**
 * The sun's true altitude and azimuth, seen from the surface: within 0.01 degree, 1950 to 2050.
 *
 * @param atMs UTC epoch milliseconds, any finite number
 * @throws RangeError on a latitude outside -90 to 90 or a longitude outside -180 to 180
 */
export function sunPosition(
  atMs: number,
  latitudeDeg: number,
  longitudeDeg: number,
): { readonly altitudeDeg: number; readonly azimuthDeg: number } {
  checkPlace(atMs, latitudeDeg, longitudeDeg);
  return sunAt(new Date(atMs), latitudeDeg, longitudeDeg + siderealShift(atMs));
}

/** The sun's true altitude over a place as a curve of time. */
function sunCurve({ latitudeDeg, longitudeDeg }: Place): Curve {
  return (atMs) => sunPosition(atMs, latitudeDeg, longitudeDeg).altitudeDeg;
}

/** The moon seen from the surface. suncalc lowers it by a parallax that is right at the horizon only; ours replaces it. */
function moonAt(date: Date, latitudeDeg: number, turnedLongitudeDeg: number): MoonPosition {
  const { altitude, azimuth, distance } = getMoonPosition(date, latitudeDeg, turnedLongitudeDeg);

  // Back to the centre of the Earth: g - asin(R / d cos g) = h.
  const lowered = trueAltitude(altitude) * RAD;
  let g = lowered;
  for (let i = 0; i < 5; i++) g = lowered + Math.asin((EARTH_RADIUS_KM / distance) * Math.cos(g));

  // Then to the eye, which stands on an ellipsoid: subtract its place, north and up, in kilometres.
  const sinLatitude = Math.sin(latitudeDeg * RAD);
  const squash = Math.sqrt(1 - EARTH_FLATTENING_E2 * sinLatitude ** 2);
  const eyeNorth =
    (-EARTH_RADIUS_KM * EARTH_FLATTENING_E2 * sinLatitude * Math.cos(latitudeDeg * RAD)) / squash;
  const level = distance * Math.cos(g);
  const north = level * Math.cos(azimuth * RAD) - eyeNorth;
  const east = level * Math.sin(azimuth * RAD);
  const up = distance * Math.sin(g) - EARTH_RADIUS_KM * squash;
  const across = Math.sqrt(north ** 2 + east ** 2);
  return {
    altitudeDeg: Math.atan2(up, across) / RAD,
    azimuthDeg: (Math.atan2(east, north) / RAD + 360) % 360,
    fromEyeKm: Math.sqrt(across ** 2 + up ** 2),
    distanceKm: distance,
  };
}

/**
 * Where sun and moon stand, and how much of the moon is lit, as the eye at that place sees it.
 *
 * @param atMs UTC epoch milliseconds, any finite number
 * @throws RangeError on a latitude outside -90 to 90 or a longitude outside -180 to 180
 */
export function sunAndMoon(atMs: number, latitudeDeg: number, longitudeDeg: number): SkyPosition {
  checkPlace(atMs, latitudeDeg, longitudeDeg);
  const date = new Date(atMs);
  const turnedDeg = longitudeDeg + siderealShift(atMs);
  const sun = sunAt(date, latitudeDeg, turnedDeg);
  const moon = moonAt(date, latitudeDeg, turnedDeg);

  const [sunRad, moonRad] = [sun.altitudeDeg * RAD, moon.altitudeDeg * RAD];
  const cosApart =
    Math.sin(sunRad) * Math.sin(moonRad) +
    Math.cos(sunRad) * Math.cos(moonRad) * Math.cos((sun.azimuthDeg - moon.azimuthDeg) * RAD);
  const apart = Math.acos(Math.min(1, Math.max(-1, cosApart)));
  const phaseRad = Math.atan2(AU_KM * Math.sin(apart), moon.fromEyeKm - AU_KM * Math.cos(apart));
  return {
    sunAltitudeDeg: sun.altitudeDeg,
    sunAzimuthDeg: sun.azimuthDeg,
    moonAltitudeDeg: moon.altitudeDeg,
    moonAzimuthDeg: moon.azimuthDeg,
    moonPhaseAngleDeg: phaseRad / RAD,
    moonLitFraction: (1 + Math.cos(phaseRad)) / 2,
    moonDistanceKm: moon.distanceKm,
  };
}

/** Height of the moon's upper limb over the horizon, refraction included: rises and sets at 0. */
function moonLimbCurve({ latitudeDeg, longitudeDeg }: Place): Curve {
  return (atMs) => {
    const moon = moonAt(new Date(atMs), latitudeDeg, longitudeDeg + siderealShift(atMs));
    return moon.altitudeDeg + MOON_RISE_REFRACTION_DEG + Math.asin(MOON_RADIUS_KM / moon.fromEyeKm) / RAD;
  };
}

/**
 * Every event of sun and moon in [fromMs, toMs), in order of time, and those that do not happen at all in it.
 *
 * Sunrise and sunset: the sun's centre 50' below the horizon (34' refraction, 16' semidiameter); where
 * `elevationM` is above 0, lower by the dip of a level horizon that far below. Twilights: centre at exactly -6,
 * -12, -18 degrees, whatever the elevation. Moonrise and moonset: upper limb on the horizon under 34' of
 * refraction, so the topocentric centre stands at -34' less the semidiameter (14.7' to 16.8').
 * Source: docs/sources.md#sun-events.
 *
 * @throws RangeError on a place outside the Earth or times that are not finite
 */
export function skyEvents(fromMs: number, toMs: number, place: Place): SkyEvents {
  return namedEvents(fromMs, toMs, {
    sun: sunCurve(place),
    moonLimb: moonLimbCurve(place),
    elevationM: place.elevationM ?? 0,
  });
}

/**
 * When the sun, falling (dusk) or rising (dawn), passes from one true altitude to another. The start falls on
 * [dayStartMs, dayEndMs), the end follows in the same fall or rise, past midnight if need be. Where a day holds
 * two such passes (the first just after midnight) the earlier is taken. A fall or rise is followed for 36 hours
 * past the day, which only matters within a degree of the poles.
 *
 * @throws RangeError unless the altitudes go down for dusk, up for dawn, or on a place outside the Earth
 */
export function sunPass(
  direction: Direction,
  fromAltitudeDeg: number,
  toAltitudeDeg: number,
  dayStartMs: number,
  dayEndMs: number,
  place: Place,
): SunPass {
  return passInDay(direction, fromAltitudeDeg, toAltitudeDeg, dayStartMs, dayEndMs, sunCurve(place));
}

/**
 * The sun's azimuth where it sinks through (dusk) or climbs over (dawn) true altitude 0 in the fall or rise that
 * fills most of the day; where it does not reach 0, the azimuth at that end of the fall or rise nearest to 0.
 *
 * @returns degrees clockwise from north, 0 to 360
 * @throws RangeError on a place outside the Earth or times that are not finite
 */
export function horizonAzimuth(
  direction: Direction,
  dayStartMs: number,
  dayEndMs: number,
  place: Place,
): number {
  const atMs = horizonMoment(direction, dayStartMs, dayEndMs, sunCurve(place));
  return sunPosition(atMs, place.latitudeDeg, place.longitudeDeg).azimuthDeg;
}
