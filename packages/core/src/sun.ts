// Where sun and moon stand, and when they pass the altitudes that have names.
// The one file that knows the ephemeris; its conventions become ours here: every altitude is true (airless) and
// topocentric, degrees, azimuth clockwise from north. How close it comes: docs/sources.md#sun-accuracy.

import { getMoonPosition, getPosition } from 'suncalc';
import { finite, within } from './check.js';
import { bisect, type Curve, crossings, crossingsIn, sampleCurve, turnsOf } from './crossing.js';
import type { Direction, Place } from './shoot.js';

export { type Crossing, crossings } from './crossing.js';

/** Sun and moon at one moment and place. */
export interface SkyPosition {
  readonly sunAltitudeDeg: number; // -90 to 90, true altitude of the centre
  readonly sunAzimuthDeg: number; // 0 to 360, clockwise from north
  readonly moonAltitudeDeg: number;
  readonly moonAzimuthDeg: number;
  readonly moonPhaseAngleDeg: number; // sun-moon-observer: 0 full, 180 new
  readonly moonLitFraction: number; // of the disc, 0 to 1
  readonly moonDistanceKm: number; // from the centre of the Earth, as in almanacs
}

/** Events of sun and moon that a plan may name. */
export type SkyEvent =
  | 'sunrise'
  | 'sunset'
  | 'civil-dawn'
  | 'civil-dusk'
  | 'nautical-dawn'
  | 'nautical-dusk'
  | 'astronomical-dawn'
  | 'astronomical-dusk'
  | 'moonrise'
  | 'moonset';

/** One event, with the sun's true altitude at that moment. */
export interface EventTime {
  readonly name: SkyEvent;
  readonly atMs: number; // UTC epoch
  readonly sunAltitudeDeg: number;
}

/** An event that does not happen, and why, as a sentence for people. */
export interface MissingEvent {
  readonly name: SkyEvent;
  readonly why: string;
}

const RAD = Math.PI / 180;
const AU_KM = 149_597_870.7;
const EARTH_RADIUS_KM = 6378.14;
const EARTH_FLATTENING_E2 = 0.00669438; // WGS 84, eccentricity squared
const MOON_RADIUS_KM = 1737.4;
const SUN_PARALLAX_DEG = 8.794 / 3600;
const J2000_MS = Date.UTC(2000, 0, 1, 12);

/** Altitude of the sun's centre at sunrise and sunset: 34' of refraction, 16' of semidiameter. */
const RISE_ALTITUDE_DEG = -50 / 60;
const MOON_REFRACTION_DEG = 34 / 60;

/**
 * Shift of sunrise and sunset for an eye above a level horizon, degrees per root metre: the angle to the horizon
 * seen from the Earth's centre, because altitudes here are true. Source: docs/sources.md#horizon-dip.
 */
const DIP_DEG_PER_ROOT_M = 0.0347;

/** The refraction that suncalc adds to a true altitude, degrees; below the horizon it holds the value at 0. */
function addedRefraction(trueDeg: number): number {
  const h = Math.max(trueDeg, 0) * RAD;
  return 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179)) / RAD;
}

const HORIZON_REFRACTION_DEG = addedRefraction(0);

/** True altitude from suncalc's apparent one: solves h + R(h) = a. */
function trueAltitude(apparentDeg: number): number {
  let h = apparentDeg - HORIZON_REFRACTION_DEG;
  if (h <= 0) return h;
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

/** The moon seen from the surface. suncalc lowers it by a parallax that is right at the horizon only; ours replaces it. */
function moonAt(date: Date, latitudeDeg: number, turnedLongitudeDeg: number) {
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

const TWILIGHTS = [
  { dawn: 'civil-dawn', dusk: 'civil-dusk', altitudeDeg: -6 },
  { dawn: 'nautical-dawn', dusk: 'nautical-dusk', altitudeDeg: -12 },
  { dawn: 'astronomical-dawn', dusk: 'astronomical-dusk', altitudeDeg: -18 },
] as const;

/** "-10.6°"; with more digits where fewer would read like the altitude it fell short of. */
function degrees(value: number, shortOf?: number): string {
  let digits = 1;
  while (digits < 4 && Number(value.toFixed(digits)) === shortOf) digits++;
  // Adding 0 keeps "-0.0" out of sight.
  return `${(Number(value.toFixed(digits)) + 0).toFixed(digits)}°`;
}

function sunCurve({ latitudeDeg, longitudeDeg }: Place): Curve {
  return (atMs) => sunPosition(atMs, latitudeDeg, longitudeDeg).altitudeDeg;
}

/** Height of the moon's upper limb over the horizon, refraction included: rises and sets at 0. */
function moonLimbCurve({ latitudeDeg, longitudeDeg }: Place): Curve {
  return (atMs) => {
    checkPlace(atMs, latitudeDeg, longitudeDeg);
    const moon = moonAt(new Date(atMs), latitudeDeg, longitudeDeg + siderealShift(atMs));
    return moon.altitudeDeg + MOON_REFRACTION_DEG + Math.asin(MOON_RADIUS_KM / moon.fromEyeKm) / RAD;
  };
}

interface Range {
  readonly low: number;
  readonly high: number;
}

/** Lowest and highest value between two instants. */
function rangeOf(curve: Curve, fromMs: number, toMs: number): Range {
  const turns = turnsOf(curve, sampleCurve(curve, fromMs, toMs)).filter(
    (t) => t.atMs >= fromMs && t.atMs < toMs,
  );
  const values = [curve(fromMs), curve(toMs), ...turns.map((turn) => turn.value)];
  return { low: Math.min(...values), high: Math.max(...values) };
}

function whyNoSun(rises: boolean, level: number, isSunrise: boolean, { low, high }: Range): string {
  if (low >= level) {
    return `${isSunrise ? 'the sun never sets; it' : 'the sun'} reaches only ${degrees(low, level)}`;
  }
  if (high < level) {
    return isSunrise
      ? `the sun never rises; it reaches only ${degrees(high)}`
      : `the sun stays below ${degrees(level)}; it reaches only ${degrees(high, level)}`;
  }
  return `the sun does not ${rises ? 'rise' : 'fall'} through ${degrees(level)} in this time`;
}

function whyNoMoon(rises: boolean, { low, high }: Range): string {
  if (low >= 0) return 'the moon never sets';
  if (high < 0) return 'the moon never rises';
  return `the moon does not ${rises ? 'rise' : 'set'} in this time`;
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
export function skyEvents(
  fromMs: number,
  toMs: number,
  place: Place,
): { readonly events: readonly EventTime[]; readonly missing: readonly MissingEvent[] } {
  finite('fromMs', fromMs);
  finite('toMs', toMs);
  const sun = sunCurve(place);
  const events: EventTime[] = [];
  const missing: MissingEvent[] = [];
  const note = (name: SkyEvent, times: readonly number[], why: () => string) => {
    for (const atMs of times) events.push({ name, atMs, sunAltitudeDeg: sun(atMs) });
    if (times.length === 0) missing.push({ name, why: why() });
  };

  const dipDeg = DIP_DEG_PER_ROOT_M * Math.sqrt(Math.max(0, place.elevationM ?? 0));
  const sunSamples = sampleCurve(sun, fromMs, toMs);
  const levels = [
    { dawn: 'sunrise', dusk: 'sunset', altitudeDeg: RISE_ALTITUDE_DEG - dipDeg } as const,
    ...TWILIGHTS,
  ];
  for (const { dawn, dusk, altitudeDeg } of levels) {
    const found = crossingsIn(sun, sunSamples, altitudeDeg, fromMs, toMs);
    for (const rising of [true, false]) {
      note(
        rising ? dawn : dusk,
        found.filter((crossing) => crossing.rising === rising).map((crossing) => crossing.atMs),
        () => whyNoSun(rising, altitudeDeg, dawn === 'sunrise', rangeOf(sun, fromMs, toMs)),
      );
    }
  }

  const moon = moonLimbCurve(place);
  const moonPasses = crossings(moon, 0, fromMs, toMs);
  for (const rising of [true, false]) {
    note(
      rising ? 'moonrise' : 'moonset',
      moonPasses.filter((crossing) => crossing.rising === rising).map((crossing) => crossing.atMs),
      () => whyNoMoon(rising, rangeOf(moon, fromMs, toMs)),
    );
  }
  return { events: events.sort((a, b) => a.atMs - b.atMs), missing };
}

/** How far outside the day a fall or rise of the sun is followed; away from the poles one lasts half a day. */
const PASS_MARGIN_MS = 36 * 3_600_000;

/** One unbroken fall or rise of the sun. */
interface Run {
  readonly fromMs: number;
  readonly toMs: number;
  readonly fromDeg: number;
  readonly toDeg: number;
}

/** The falls (dusk) or rises (dawn) of the sun that touch a day, in order of time. */
function runsOfDay(direction: Direction, dayStartMs: number, dayEndMs: number, place: Place): Run[] {
  const sun = sunCurve(place);
  const [firstMs, lastMs] = [dayStartMs - PASS_MARGIN_MS, dayEndMs + PASS_MARGIN_MS];
  const inner = turnsOf(sun, sampleCurve(sun, firstMs, lastMs)).filter(
    (t) => t.atMs > firstMs && t.atMs < lastMs,
  );
  const ends = [{ atMs: firstMs, value: sun(firstMs) }, ...inner, { atMs: lastMs, value: sun(lastMs) }];
  const runs: Run[] = [];
  for (let i = 1; i < ends.length; i++) {
    const [from, to] = [ends[i - 1]!, ends[i]!];
    const falls = to.value < from.value;
    if (falls === (direction === 'dusk') && from.atMs < dayEndMs && to.atMs > dayStartMs) {
      runs.push({ fromMs: from.atMs, toMs: to.atMs, fromDeg: from.value, toDeg: to.value });
    }
  }
  return runs;
}

/** The run that fills most of the day. Undefined only at a pole, where the sun may rise or fall for months. */
function mainRun(runs: readonly Run[], dayStartMs: number, dayEndMs: number): Run | undefined {
  const share = (run: Run) => Math.min(run.toMs, dayEndMs) - Math.max(run.fromMs, dayStartMs);
  return [...runs].sort((a, b) => share(b) - share(a))[0];
}

/** When the sun passes from one altitude to another, or how far it does go. */
export type SunPass =
  | { readonly kind: 'ok'; readonly startMs: number; readonly endMs: number }
  | {
      readonly kind: 'none';
      readonly reachedHighDeg: number; // highest and lowest altitude of the fall or rise in question
      readonly reachedLowDeg: number;
      readonly why: string; // a sentence for people
    };

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
  within('fromAltitudeDeg', fromAltitudeDeg, -90, 90);
  within('toAltitudeDeg', toAltitudeDeg, -90, 90);
  const dusk = direction === 'dusk';
  if (dusk ? toAltitudeDeg >= fromAltitudeDeg : toAltitudeDeg <= fromAltitudeDeg) {
    throw new RangeError(
      `toAltitudeDeg must be ${dusk ? 'below' : 'above'} fromAltitudeDeg at ${direction}, got ${fromAltitudeDeg} to ${toAltitudeDeg}`,
    );
  }

  const sun = sunCurve(place);
  const passes = ({ fromDeg, toDeg }: Run, altitudeDeg: number) =>
    fromDeg >= altitudeDeg !== toDeg >= altitudeDeg;
  const runs = runsOfDay(direction, dayStartMs, dayEndMs, place);
  let started: Run | undefined;
  for (const run of runs) {
    if (!passes(run, fromAltitudeDeg)) continue;
    const startMs = bisect(sun, fromAltitudeDeg, run.fromMs, run.toMs);
    if (startMs < dayStartMs || startMs >= dayEndMs) continue;
    if (passes(run, toAltitudeDeg)) {
      return { kind: 'ok', startMs, endMs: bisect(sun, toAltitudeDeg, run.fromMs, run.toMs) };
    }
    started = run;
  }

  const run = started ?? mainRun(runs, dayStartMs, dayEndMs);
  const verb = dusk ? 'falls' : 'rises';
  if (run === undefined) {
    const { low, high } = rangeOf(sun, dayStartMs, dayEndMs);
    const why = `the sun, at ${degrees(high)}, never ${verb} on this day`;
    return { kind: 'none', reachedHighDeg: high, reachedLowDeg: low, why };
  }
  const why =
    started === undefined && passes(run, fromAltitudeDeg)
      ? `the sun ${verb} through ${degrees(fromAltitudeDeg)} on the day before or after, not on this one`
      : `the sun ${verb} only from ${degrees(run.fromDeg, fromAltitudeDeg)} to ${degrees(run.toDeg, toAltitudeDeg)}`;
  return {
    kind: 'none',
    reachedHighDeg: Math.max(run.fromDeg, run.toDeg),
    reachedLowDeg: Math.min(run.fromDeg, run.toDeg),
    why,
  };
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
  const { latitudeDeg, longitudeDeg } = place;
  const azimuthAt = (atMs: number) => sunPosition(atMs, latitudeDeg, longitudeDeg).azimuthDeg;
  const run = mainRun(runsOfDay(direction, dayStartMs, dayEndMs, place), dayStartMs, dayEndMs);
  // At a pole the sun may not turn for months: any azimuth of the day is as good as another.
  if (run === undefined) return azimuthAt(dayStartMs);
  if (run.fromDeg >= 0 !== run.toDeg >= 0) {
    return azimuthAt(bisect(sunCurve(place), 0, run.fromMs, run.toMs));
  }
  return azimuthAt(Math.abs(run.fromDeg) < Math.abs(run.toDeg) ? run.fromMs : run.toMs);
}
