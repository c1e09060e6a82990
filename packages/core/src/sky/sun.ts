// Where sun and moon stand, and when the sun passes an altitude. The one file that knows the ephemeris; its
// conventions become ours here: every altitude is true (airless) and topocentric, degrees, azimuth clockwise from
// north. How close it comes: docs/sources.md#sun-accuracy.

import { getMoonPosition, getPosition } from 'suncalc';
import { finite, within } from '../check.js';
import { groupWith, hold } from '../hold.js';
import type { Curve } from './crossing.js';
import type { Direction } from './direction.js';
import { namedEvents, type SkyEvents } from './events.js';
import { keepLast } from './keep-last.js';
import type { Place } from './place.js';
import { horizonMoment, passInDay, type SunPass } from './sun-pass.js';

export { crossings } from './crossing.js';
export type { EventTime, MissingEvent, SkyEvent, SkyEvents } from './events.js';
export type { SunPass } from './sun-pass.js';

/** Sun and moon at one moment and place. */
export interface SkyPosition {
  /** True altitude of the centre, -90 to 90. */
  readonly sunAltitudeDeg: number;
  /** 0 to 360, clockwise from north. */
  readonly sunAzimuthDeg: number;
  /** True altitude of the centre as the place sees it, -90 to 90. */
  readonly moonAltitudeDeg: number;
  /** 0 to 360, clockwise from north. */
  readonly moonAzimuthDeg: number;
  /** Sun-moon-observer, degrees: 0 full, 180 new. */
  readonly moonPhaseAngleDeg: number;
  /** Lit share of the disc, 0 to 1. */
  readonly moonLitFraction: number;
  /** From the centre of the Earth, as in almanacs, kilometres. */
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

/** True altitude from suncalc's apparent one: solves h + R(h) = a. */
function trueAltitude(apparentDeg: number): number {
  let h = apparentDeg;
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
 * as far. Main term of the nutation; up to 0.0044. Source: J. Meeus, Astronomical Algorithms, by way of suncalc.
 */
function siderealShift(atMs: number): number {
  const centuries = (atMs - J2000_MS) / 3_155_760_000_000;
  return -0.00439 * Math.sin((125.04 - 1934.136 * centuries) * RAD);
}

const isThere = () => undefined;
const SPOT = groupWith({ latitudeDeg: isThere, longitudeDeg: isThere });

function checkPlace(atMs: number, place: Pick<Place, 'latitudeDeg' | 'longitudeDeg'>): void {
  finite('atMs', atMs);
  checkSpot(place);
}

function checkSpot(place: Pick<Place, 'latitudeDeg' | 'longitudeDeg'>): void {
  hold('place', place, SPOT);
  within('latitudeDeg', place.latitudeDeg, -90, 90);
  within('longitudeDeg', place.longitudeDeg, -180, 180);
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
 * The sun's true altitude and azimuth, seen from the surface: within 0.01 degree, 1950 to 2050. Source:
 * J. Meeus, Astronomical Algorithms, by way of suncalc.
 *
 * @param atMs UTC epoch milliseconds, any finite number
 * @param place latitude -90 to 90, north positive; longitude -180 to 180, east positive
 * @returns degrees: altitude of the centre without refraction, azimuth clockwise from north
 * @throws RangeError on a place without them, a latitude outside -90 to 90 or a longitude outside -180 to 180
 */
export function sunPosition(
  atMs: number,
  place: Pick<Place, 'latitudeDeg' | 'longitudeDeg'>,
): { readonly altitudeDeg: number; readonly azimuthDeg: number } {
  checkPlace(atMs, place);
  const { latitudeDeg, longitudeDeg } = place;
  return sunAt(new Date(atMs), latitudeDeg, longitudeDeg + siderealShift(atMs));
}

/** The sun's true altitude over a place as a curve of time. */
function sunCurve(place: Place): Curve {
  checkPlace(0, place);
  return sunCurveAt(place.latitudeDeg, place.longitudeDeg);
}

const sunCurveAt = keepLast((latitudeDeg: number, longitudeDeg: number): Curve => {
  const place = { latitudeDeg, longitudeDeg };
  return (atMs) => sunPosition(atMs, place).altitudeDeg;
});

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
 * Where sun and moon stand, and how much of the moon is lit, as the eye at that place sees it. Source:
 * J. Meeus, Astronomical Algorithms, by way of suncalc.
 *
 * @param atMs UTC epoch milliseconds, any finite number
 * @param place latitude -90 to 90, north positive; longitude -180 to 180, east positive
 * @returns degrees, kilometres and the lit share of the disc
 * @throws RangeError on a place without them, a latitude outside -90 to 90 or a longitude outside -180 to 180
 * @example
 * ```ts
 * import { sunAndMoon } from '@evenfall/core';
 *
 * // Full and new moon by the U.S. Naval Observatory's table.
 * sunAndMoon(Date.parse('1980-01-02T09:02Z'), { latitudeDeg: 52, longitudeDeg: 5 }).moonLitFraction; // → 1.00
 * sunAndMoon(Date.parse('1980-01-17T21:19Z'), { latitudeDeg: 52, longitudeDeg: 5 }).moonLitFraction; // → 0.00
 * ```
 */
export function sunAndMoon(atMs: number, place: Pick<Place, 'latitudeDeg' | 'longitudeDeg'>): SkyPosition {
  checkPlace(atMs, place);
  const { latitudeDeg, longitudeDeg } = place;
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

/** A year and more: longer stretches are asked for in parts. */
const MOST_EVENTS_MS = 400 * 86_400_000;

/**
 * Every event of sun and moon in [fromMs, toMs), in order of time, and those that do not happen in it at all.
 * Sunrise and sunset: upper limb on the horizon, 34' of refraction and the dip of `aboveHorizonM` above a level
 * horizon; `elevationM`, above the sea, does not count. Twilights: centre at -6°, -12°, -18°. The moon: upper limb. Source: twilights at 6°, 12° and 18° below the horizon, sunrise and sunset at 50′ below, as almanacs have them.
 *
 * @param fromMs first instant that counts, UTC epoch milliseconds
 * @param toMs first instant that no longer counts; a civil day is given by {@link civilDay}
 * @param place latitude, longitude, height above the horizon in view
 * @returns events with their times, and missing ones with the reason
 * @throws RangeError on a place outside the Earth, fromMs or toMs that are not finite, or a stretch that ends
 *   before it starts or lasts more than 400 days
 * @example
 * ```ts
 * import { civilDay, rfc3339, skyEvents, zoneOf } from '@evenfall/core';
 *
 * // The U.S. Naval Observatory has sunset at 19:10 there, to the minute.
 * const place = { latitudeDeg: 39, longitudeDeg: -105 };
 * const zone = zoneOf(place);
 * const { startMs, endMs } = civilDay('2015-08-02', zone);
 * const sunset = skyEvents(startMs, endMs, place).events.find(({ name }) => name === 'sunset')!;
 * rfc3339(Math.round(sunset.atMs / 60_000) * 60_000, zone).slice(11, 16); // → '19:10'
 * ```
 */
export function skyEvents(fromMs: number, toMs: number, place: Place): SkyEvents {
  checkSpot(place);
  if (toMs - fromMs > MOST_EVENTS_MS) {
    throw new RangeError(`toMs must be at most 400 days after fromMs (${fromMs}), got ${toMs}`);
  }
  return namedEvents(fromMs, toMs, {
    sun: sunCurve(place),
    moonLimb: moonLimbCurve(place),
    aboveHorizonM: place.aboveHorizonM ?? 0,
  });
}

/**
 * When the sun, falling (dusk) or rising (dawn), passes from one true altitude to another. The start falls on
 * [dayStartMs, dayEndMs), the end follows in the same fall or rise, past midnight if need be. Where a day
 * holds two such passes (the first just after midnight) the earlier is taken. A fall or rise is followed for
 * 36 hours past the day, which only matters within a degree of the poles.
 *
 * @param direction dusk or dawn
 * @param fromAltitudeDeg true altitude of the centre, -90 to 90
 * @param toAltitudeDeg likewise; below it for dusk, above it for dawn
 * @param dayStartMs UTC epoch milliseconds, from {@link civilDay}
 * @param dayEndMs likewise
 * @param place latitude and longitude
 * @returns when, or how far the sun does go
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
 * The sun's azimuth where it sinks through (dusk) or climbs over (dawn) true altitude 0 in the fall or rise
 * that fills most of the day; where it does not reach 0, the azimuth at that end of the fall or rise nearest
 * to 0.
 *
 * @param direction dusk or dawn
 * @param dayStartMs UTC epoch milliseconds, from {@link civilDay}
 * @param dayEndMs likewise
 * @param place latitude and longitude
 * @returns degrees clockwise from north, 0 to 360
 * @throws RangeError on a place outside the Earth or times that are not finite
 */
export function horizonAzimuthDeg(
  direction: Direction,
  dayStartMs: number,
  dayEndMs: number,
  place: Place,
): number {
  const atMs = horizonMoment(direction, dayStartMs, dayEndMs, sunCurve(place));
  return sunPosition(atMs, place).azimuthDeg;
}
