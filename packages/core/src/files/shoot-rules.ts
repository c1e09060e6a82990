// What one key of a shoot asks of another. Runs on a shoot whose shapes and ranges are right.

import { nearestWord } from '../check.js';
import { timeOfStep } from '../exposure/dial.js';
import { frameCountOf } from '../footage/frames.js';
import { moveFaults } from '../move/resolve.js';
import type { Shoot } from '../shoot/shoot.js';
import { opticsOf } from '../shoot/time-left.js';
import { civilDay, parseRfc3339, rfc3339, type Zone, zoneOf } from '../sky/clock.js';
import { dialFaults } from './dial-rules.js';
import { type Fault, type Path, shown } from './file-error.js';
import { strayReadingFaults } from './reading-rules.js';
import { workFaults } from './work-rules.js';

/** Most frames a plan holds: a day at a second. */
export const MOST_FRAMES = 100_000;

const DAY_S = 86_400;

/** Years in which a shoot may lie. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;

/** Everything in a shoot that contradicts itself, the dial or the calendar. */
export function shootFaults(shoot: Shoot): Fault[] {
  const zone = zoneWanted(shoot);
  const dial = dialFaults(shoot.camera);
  const faults = [
    ...(zone ? dateFaults(shoot, zone) : [zoneFault(shoot)]),
    ...spanFaults(shoot, zone),
    ...dial.faults,
    ...(dial.shortestStep === undefined ? [] : intervalFaults(shoot, dial.shortestStep)),
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
  const text = `${shown(place.timeZone)} is not a time zone known here; give an IANA name such as "Europe/Lisbon"`;
  return { path: ['place', 'timeZone'], text };
}

function dateFaults({ date }: Shoot, zone: Zone): Fault[] {
  const fault = (text: string) => [{ path: ['date'], text: `${shown(date)} ${text}` }];
  if (parseRfc3339(`${date}T00:00:00Z`) === undefined) {
    return fault('is not in the calendar; give a real date as YYYY-MM-DD');
  }
  const year = Number(date.slice(0, 4));
  if (year < FIRST_YEAR || year > LAST_YEAR) {
    return fault(`is out of reach; give a year from ${FIRST_YEAR} to ${LAST_YEAR}`);
  }
  try {
    civilDay(date, zone);
    return [];
  } catch {
    return fault(`was skipped by the calendar of ${zone.name}; give the day before or after`);
  }
}

function spanFaults({ span, direction, date, intervalS }: Shoot, zone: Zone | undefined): Fault[] {
  if ('fromSunAltitudeDeg' in span) {
    const { fromSunAltitudeDeg: from, toSunAltitudeDeg: to } = span;
    const path = ['span', 'toSunAltitudeDeg'];
    if (direction === 'dusk' && to >= from) {
      return [
        {
          path,
          text: `${to} is not below ${from}, and at dusk the sun falls; swap them, or give direction "dawn"`,
        },
      ];
    }
    if (direction === 'dawn' && to <= from) {
      return [
        {
          path,
          text: `${to} is not above ${from}, and at dawn the sun rises; swap them, or give direction "dusk"`,
        },
      ];
    }
    return frameFaults(DAY_S, intervalS, 'a day');
  }
  const start = instantOf(span.startAt);
  const end = instantOf(span.endAt);
  if (start === undefined) return [noTime(['span', 'startAt'], span.startAt)];
  if (end === undefined) return [noTime(['span', 'endAt'], span.endAt)];
  if (end < start) {
    return [
      {
        path: ['span', 'endAt'],
        text: `${shown(span.endAt)} is before startAt, ${shown(span.startAt)}; give a later time`,
      },
    ];
  }
  const day = zone && rfc3339(start, zone).slice(0, 10);
  if (day !== undefined && day !== date) {
    return [
      {
        path: ['span', 'startAt'],
        text: `${shown(span.startAt)} falls on ${day} at the place, not on date ${shown(date)}; give both the same day`,
      },
    ];
  }
  return frameFaults((end - start) / 1000, intervalS, 'the span');
}

/** Milliseconds of a time within the years a date may have; undefined for any other and for one that does not exist. */
function instantOf(text: string): number | undefined {
  const year = Number(text.slice(0, 4));
  return year >= FIRST_YEAR && year <= LAST_YEAR ? parseRfc3339(text) : undefined;
}

function noTime(path: Path, instant: string): Fault {
  return {
    path,
    text: `${shown(instant)} is no time in the years ${FIRST_YEAR} to ${LAST_YEAR}; give one such as "2026-09-12T19:04:00+02:00"`,
  };
}

/** A span by sun altitude is not known in seconds here; it lasts less than a day. */
function frameFaults(durationS: number, intervalS: number, what: string): Fault[] {
  if (frameCountOf(durationS, intervalS) <= MOST_FRAMES) return [];
  const least = Math.ceil((durationS / (MOST_FRAMES - 1)) * 100) / 100;
  return [
    {
      path: ['intervalS'],
      text: `${intervalS} makes more than ${MOST_FRAMES} frames in ${what}; give ${least} or more`,
    },
  ];
}

function intervalFaults({ intervalS, camera }: Shoot, shortestStep: number): Fault[] {
  const { gapS, darkFrame, shutter } = camera;
  const timeS = timeOfStep(shortestStep, camera.stepsPerStop);
  const needS = timeS * (darkFrame ? 2 : 1) + gapS;
  if (needS <= intervalS) return [];
  // Rounded up, so that the number to give is enough.
  const least = Math.ceil(needS * 1000) / 1000;
  const exposure = `the shortest shutter, "${shutter.shortest}"${darkFrame ? ' and its dark frame' : ''},`;
  return [
    {
      path: ['intervalS'],
      text: `${intervalS} is too short for ${exposure} and a gap of ${gapS} s; give ${least} or more`,
    },
  ];
}

/** No hand opens and closes a shutter to the hundredth of a stop at every frame. */
function crewFaults({ camera, crew }: Shoot): Fault[] {
  if (!camera.bulb || crew === 'rig') return [];
  const text =
    'a freely timed shutter needs crew "rig"; give that, or leave bulb out and let hands turn the dial';
  return [{ path: ['camera', 'bulb'], text }];
}

function filterFaults({ filters, startFilter }: Shoot): Fault[] {
  const faults: Fault[] = [];
  const names = filters.map((filter) => filter.name);
  for (const [index, name] of names.entries()) {
    const path = ['filters', index, 'name'];
    if (names.indexOf(name) < index) {
      faults.push({ path, text: `${shown(name)} is the name of another filter too; give each its own` });
    }
    // Cues join names by " + " and call the bare lens "none".
    if (name === 'none' || name.includes(' + ') || name.trim() !== name) {
      faults.push({
        path,
        text: `${shown(name)} would be misread in a cue; give a name other than "none", without " + " or outer spaces`,
      });
    }
  }
  if (startFilter !== undefined && !names.includes(startFilter)) {
    const near = nearestWord(startFilter, names);
    const give = near === undefined ? 'add it to filters, or leave it out' : `the nearest is ${shown(near)}`;
    faults.push({ path: ['startFilter'], text: `${shown(startFilter)} is not among the filters; ${give}` });
  }
  return faults;
}

function sceneFaults({ scene }: Shoot): Fault[] {
  const faults: Fault[] = [];
  if (scene.surface !== undefined && scene.reflectance !== undefined) {
    faults.push({ path: ['scene', 'reflectance'], text: 'does not go together with surface; leave one out' });
  }
  const on = typeof scene.lamps === 'object' ? scene.lamps.on : undefined;
  if (typeof on === 'object' && 'fromSunAltitudeDeg' in on && on.fromSunAltitudeDeg <= on.toSunAltitudeDeg) {
    faults.push({
      path: ['scene', 'lamps', 'on', 'toSunAltitudeDeg'],
      text: `${on.toSunAltitudeDeg} is not below fromSunAltitudeDeg, ${on.fromSunAltitudeDeg}; lamps come on as the sun sinks`,
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
    return [
      {
        path,
        text: `${sunAltitudeDeg} is not above the row before, ${before}; sort the rows by rising sun altitude`,
      },
    ];
  });
}

function readingFaults({ readings }: Shoot): Fault[] {
  return readings.flatMap(({ at }, index) =>
    instantOf(at) === undefined ? [noTime(['readings', index, 'at'], at)] : [],
  );
}
