// What one key of a shoot asks of another. Runs on a shoot whose shapes and ranges are right.

import { nearestWord } from '../check.js';
import { timeOfStep } from '../exposure/dial.js';
import { bracketReachEv, exposingS, exposuresOf, pausesS } from '../footage/bracket.js';
import { frameCountOf } from '../footage/frames.js';
import { moveFaults } from '../move/resolve.js';
import type { Shoot } from '../shoot/shoot.js';
import { opticsOf } from '../shoot/time-left.js';
import { MOST_FRAMES } from '../shoot/work.js';
import { civilDay, parseRfc3339, rfc3339, type Zone, zoneOf } from '../sky/clock.js';
import { dialFaults } from './dial-rules.js';
import { type FaultFacts, givenOf } from './fault.js';
import type { Fault, Path } from './file-error.js';
import { strayReadingFaults } from './reading-rules.js';
import { workFaults } from './work-rules.js';

const DAY_S = 86_400;

/** Years in which a shoot may lie. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;
const YEARS = { fromYear: FIRST_YEAR, toYear: LAST_YEAR };

/** Everything in a shoot that contradicts itself, the dial or the calendar. */
export function shootFaults(shoot: Shoot): Fault[] {
  const zone = zoneWanted(shoot);
  const dial = dialFaults(shoot.camera);
  const bracket = bracketFaults(shoot, dial);
  const faults = [
    ...(zone ? dateFaults(shoot, zone) : [zoneFault(shoot)]),
    ...spanFaults(shoot, zone),
    ...dial.faults,
    ...bracket,
    ...(dial.shortestStep === undefined || bracket.length > 0
      ? []
      : intervalFaults(shoot, dial.shortestStep)),
    ...crewFaults(shoot),
    ...filterFaults(shoot),
    ...sceneFaults(shoot),
    ...lookFaults(shoot),
    ...readingFaults(shoot),
    ...moveFaults(shoot.moves, opticsOf(shoot.camera)),
  ];
  // When the frames are taken is only known of a shoot that is right in all else.
  if (faults.length > 0 || zone === undefined) return faults;
  return [...strayReadingFaults(shoot, zone), ...workFaults(shoot)];
}

function zoneWanted({ place }: Shoot): Zone | undefined {
  try {
    return zoneOf(place);
  } catch {
    return undefined;
  }
}

function zoneFault({ place }: Shoot): Fault {
  return { path: ['place', 'timeZone'], kind: 'unknown-zone', given: givenOf(place.timeZone) };
}

function dateFaults({ date }: Shoot, zone: Zone): Fault[] {
  const fault = (facts: FaultFacts) => [{ path: ['date'], ...facts }];
  const given = givenOf(date);
  if (parseRfc3339(`${date}T00:00:00Z`) === undefined) {
    return fault({ kind: 'no-such-date', given });
  }
  const year = Number(date.slice(0, 4));
  if (year < FIRST_YEAR || year > LAST_YEAR) {
    return fault({ kind: 'year-out-of-reach', given, ...YEARS });
  }
  try {
    civilDay(date, zone);
    return [];
  } catch {
    return fault({ kind: 'date-skipped', given, zone: zone.name });
  }
}

function spanFaults({ span, direction, date, intervalS }: Shoot, zone: Zone | undefined): Fault[] {
  if ('fromSunAltitudeDeg' in span) {
    const { fromSunAltitudeDeg: from, toSunAltitudeDeg: to } = span;
    if (direction === 'dusk' ? to >= from : to <= from) {
      const path = ['span', 'toSunAltitudeDeg'];
      return [{ path, kind: 'sun-goes-the-other-way', direction, from, to }];
    }
    return frameFaults(DAY_S, intervalS, 'day');
  }
  const start = instantOf(span.startAt);
  const end = instantOf(span.endAt);
  if (start === undefined) return [noTime(['span', 'startAt'], span.startAt)];
  if (end === undefined) return [noTime(['span', 'endAt'], span.endAt)];
  if (end < start) {
    const [given, startAt] = [givenOf(span.endAt), givenOf(span.startAt)];
    return [{ path: ['span', 'endAt'], kind: 'end-before-start', given, startAt }];
  }
  const day = zone && rfc3339(start, zone).slice(0, 10);
  if (day !== undefined && day !== date) {
    return [{ path: ['span', 'startAt'], kind: 'another-day', given: givenOf(span.startAt), day, date }];
  }
  return frameFaults((end - start) / 1000, intervalS, 'span');
}

/** Milliseconds of a time within the years a date may have; undefined for any other and for one that does not exist. */
function instantOf(text: string): number | undefined {
  const year = Number(text.slice(0, 4));
  return year >= FIRST_YEAR && year <= LAST_YEAR ? parseRfc3339(text) : undefined;
}

function noTime(path: Path, instant: string): Fault {
  return { path, kind: 'no-such-time', given: givenOf(instant), ...YEARS };
}

/** A span by sun altitude is not known in seconds here; it lasts less than a day. */
function frameFaults(durationS: number, intervalS: number, of: 'day' | 'span'): Fault[] {
  if (frameCountOf(durationS, intervalS) <= MOST_FRAMES) return [];
  const leastS = Math.ceil((durationS / (MOST_FRAMES - 1)) * 100) / 100;
  return [{ path: ['intervalS'], kind: 'too-many-frames', intervalS, most: MOST_FRAMES, of, leastS }];
}

function intervalFaults({ intervalS, camera }: Shoot, shortestStep: number): Fault[] {
  const { gapS, darkFrame, shutter, stepsPerStop, bracket } = camera;
  // Of a bracket the middle one, when the shortest is the shortest.
  const timeS = timeOfStep(shortestStep, stepsPerStop) * 2 ** bracketReachEv(bracket);
  const needS = exposingS(timeS, camera) + gapS;
  if (needS <= intervalS) return [];
  // Rounded up, so that the number to give is enough.
  const leastS = Math.ceil(needS * 1000) / 1000;
  return [
    {
      path: ['intervalS'],
      kind: 'interval-too-short',
      intervalS,
      shutter: shutter.shortest,
      darkFrame,
      exposures: exposuresOf(bracket),
      pausesS: pausesS(bracket),
      gapS,
      leastS,
    },
  ];
}

/** Every exposure of a bracket is a mark of the dial, and there is one between its ends that can be the middle. */
function bracketFaults(
  { camera: { bracket, stepsPerStop } }: Shoot,
  { shortestStep, longestStep }: { readonly shortestStep?: number; readonly longestStep?: number },
): Fault[] {
  if (bracket === undefined) return [];
  const clicks = bracket.stepEv * stepsPerStop;
  if (Math.abs(clicks - Math.round(clicks)) > 1e-6) {
    const { stepEv } = bracket;
    return [{ path: ['camera', 'bracket', 'stepEv'], kind: 'bracket-off-dial', stepEv, stepsPerStop }];
  }
  if (shortestStep === undefined || longestStep === undefined) return [];
  const wideEv = 2 * bracketReachEv(bracket);
  const kitEv = (shortestStep - longestStep) / stepsPerStop;
  if (wideEv <= kitEv + 1e-6) return [];
  return [{ path: ['camera', 'bracket'], kind: 'bracket-too-wide', wideEv, kitEv }];
}

/** No hand opens and closes a shutter to the hundredth of a stop at every frame. */
function crewFaults({ camera, crew }: Shoot): Fault[] {
  return !camera.bulb || crew === 'rig' ? [] : [{ path: ['camera', 'bulb'], kind: 'bulb-needs-rig' }];
}

function filterFaults({ filters, startFilter }: Shoot): Fault[] {
  const faults: Fault[] = [];
  const names = filters.map((filter) => filter.name);
  for (const [index, name] of names.entries()) {
    const path = ['filters', index, 'name'];
    if (names.indexOf(name) < index) faults.push({ path, kind: 'filter-named-twice', given: givenOf(name) });
    // Cues join names by " + " and call the bare lens "none".
    if (name === 'none' || /(^|\s)\+(\s|$)/.test(name) || name.trim() !== name) {
      faults.push({ path, kind: 'filter-misread', given: givenOf(name) });
    }
  }
  if (startFilter !== undefined && !['none', ...names].includes(startFilter)) {
    const nearest = nearestWord(startFilter, names);
    faults.push({
      path: ['startFilter'],
      kind: 'unknown-start-filter',
      given: givenOf(startFilter),
      ...(nearest === undefined ? {} : { nearest: givenOf(nearest) }),
    });
  }
  return faults;
}

function sceneFaults({ scene }: Shoot): Fault[] {
  const faults: Fault[] = [];
  if (scene.surface !== undefined && scene.reflectance !== undefined) {
    faults.push({ path: ['scene', 'reflectance'], kind: 'not-together', keys: ['surface'] });
  }
  const on = typeof scene.lamps === 'object' ? scene.lamps.on : undefined;
  if (typeof on === 'object' && 'fromSunAltitudeDeg' in on && on.fromSunAltitudeDeg <= on.toSunAltitudeDeg) {
    faults.push({
      path: ['scene', 'lamps', 'on', 'toSunAltitudeDeg'],
      kind: 'lamps-on-by-rising-sun',
      from: on.fromSunAltitudeDeg,
      to: on.toSunAltitudeDeg,
    });
  }
  return faults;
}

function lookFaults({ look }: Shoot): Fault[] {
  if ('nightEv' in look) return [];
  return look.flatMap(({ sunAltitudeDeg }, index) => {
    const before = look[index - 1]?.sunAltitudeDeg;
    if (before === undefined || before < sunAltitudeDeg) return [];
    const path = ['look', index, 'sunAltitudeDeg'];
    return [{ path, kind: 'look-not-rising', altitudeDeg: sunAltitudeDeg, beforeDeg: before }];
  });
}

function readingFaults({ readings }: Shoot): Fault[] {
  return readings.flatMap(({ at }, index) =>
    instantOf(at) === undefined ? [noTime(['readings', index, 'at'], at)] : [],
  );
}
