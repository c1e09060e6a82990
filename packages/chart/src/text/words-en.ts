// Every word that chart, card and calendar print, in English. Another language is one more file like this.

import { clockOver, englishSentences as said } from '@evenfall/core';
import type { LibrarySentences } from './library.js';
import { counted, dateParts, fixed, minus } from './words-parts.js';

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);
const WEEKDAYS = 'Sunday Monday Tuesday Wednesday Thursday Friday Saturday'.split(' ');

const library: LibrarySentences = { ...said, faults: { ...said.faults, ...said.savedFaults } };

/**
 * Every word that chart, card and calendar print, in English, with a clock of 24 hours.
 *
 * @example
 * ```ts
 * import { english } from '@evenfall/chart';
 *
 * english.date('2026-09-22'); // → 'Tuesday 22 September 2026'
 * ```
 */
export const english = {
  language: 'en',
  /** A civil date as people say it, from YYYY-MM-DD. */
  date(isoDate: string): string {
    const { year, month, day, weekday } = dateParts(isoDate);
    return `${WEEKDAYS[weekday]} ${day} ${MONTHS[month - 1]} ${year}`;
  },
  /** The time of day of an RFC 3339 time; `wordsFor` puts one of twelve hours in its place. */
  clock: clockOver(undefined),
  halves: { morning: 'am', evening: 'pm' },
  /** So many digits after the point, whatever they are. */
  number: (value: number, digits: number) => minus(fixed(value, digits)),
  /** At most so many digits after the point. */
  upTo: (value: number, digits: number) => minus(String(Number(fixed(value, digits)))),
  seconds: (value: number) => `${Number(fixed(value, 2))} s`,
  /** What the library says as data. */
  library,
  compass: { north: 'N', south: 'S', east: 'E', west: 'W' },
  solarTime: 'mean solar time',
  untitled: 'Exposure plan',
  cardTitle: (date: string) => `Cue card, ${date}`,
  untitledLight: 'Light of the scene',
  events: {
    sunrise: 'sunrise',
    sunset: 'sunset',
    'civil-dawn': 'civil dawn',
    'civil-dusk': 'civil dusk',
    'nautical-dawn': 'nautical dawn',
    'nautical-dusk': 'nautical dusk',
    'astronomical-dawn': 'astronomical dawn',
    'astronomical-dusk': 'astronomical dusk',
    moonrise: 'moonrise',
    moonset: 'moonset',
    'sun-behind-skyline': 'sun behind the skyline',
    'sun-over-skyline': 'sun over the skyline',
    'moon-behind-skyline': 'moon behind the skyline',
    'moon-over-skyline': 'moon over the skyline',
    'clocks-forward': 'clocks forward',
    'clocks-back': 'clocks back',
  },
  twilights: {
    day: ['daylight', 'day'],
    civil: ['civil twilight', 'civil'],
    nautical: ['nautical twilight', 'nautical', 'naut.'],
    astronomical: ['astronomical twilight', 'astronomical', 'astron.'],
    night: ['night'],
  },
  controls: { shutter: 'Shutter', iso: 'ISO', aperture: 'Aperture', filter: 'Filter' },
  lanes: { shutter: 'shutter', bracket: 'bracket', iso: 'ISO', aperture: 'aperture', filter: 'filter' },
  noFilter: 'no filter',
  move: {
    axes: { pan: 'Pan', tilt: 'Tilt', slide: 'Slide' },
    lanes: { pan: 'pan', tilt: 'tilt', slide: 'slide', speed: 'speed', time: 'interval' },
    ways: { left: 'left', right: 'right', up: 'up', down: 'down', forward: 'forward', back: 'back' },
    stopped: 'stopping',
    continuous: 'without a stop',
    starts: (move: string, how: string, first: string, longest: string) =>
      `${move}, ${how}; steps ${first} to ${longest}`,
    ends: (axis: string, gone: string) => `At the end: ${axis} at ${gone}`,
    width: (seconds: string) => `crosses the frame in ${seconds}`,
    spare: (seconds: string) => `${seconds} to spare at least`,
  },
  chart: {
    scene: 'scene',
    target: 'target',
    sceneAndTarget: 'scene and target',
    settings: 'settings',
    band: 'likely range',
    affected: 'filter change',
    localTime: 'local time',
    sun: 'sun',
    steepest: 'steepest',
    speedWithPeak: (slope: string, clock: string) => `EV a minute: steepest ${slope} at ${clock}`,
    interval: (seconds: string) => `every ${seconds}`,
    ev: 'EV',
    evNote: 'EV at ISO 100',
  },
  describe: {
    plan: (p: { from: string; to: string; fromEv: string; toEv: string; frames: number; cues: number }) =>
      `From ${p.from} to ${p.to} the scene goes from EV ${p.fromEv} to EV ${p.toEv} at ISO 100. ` +
      `${counted(p.frames, 'frame')}, ${counted(p.cues, 'cue')}.`,
    light: (p: { from: string; to: string; fromEv: string; toEv: string }) =>
      `From ${p.from} to ${p.to} the scene goes from EV ${p.fromEv} to EV ${p.toEv} at ISO 100.`,
    settings: (first: string, last: string) => `First setting ${first}; last setting ${last}.`,
    filterChanges: (list: string) => `Filter changes: ${list}.`,
    noFilterChanges: 'The filter does not change.',
    events: (list: string) => `Events: ${list}.`,
    steepest: (slope: string, clock: string) =>
      `The light changes fastest at ${clock}: ${slope} EV a minute.`,
  },
  card: {
    page: (n: number, of: number) => `page ${n} of ${of}`,
    every: (seconds: string) => `every ${seconds}`,
    setUpBy: (clock: string) => `Be set up by ${clock}`,
    start: 'Start',
    end: 'End',
    frames: (count: number) => counted(count, 'frame'),
    bracket: {
      setTo: (exposures: number, stops: string) => `Bracket: ${exposures} exposures, ${stops} stops apart`,
      how: (exposures: number) =>
        `One release takes all ${exposures}, always in the same order. The settings here are the middle one's.`,
      first: (ends: string) => `First: ${ends}.`,
      longest: (p: { shutter: string; clock: string; seconds: string; interval: string }) =>
        `Longest: ${p.shutter} from ${p.clock}, in all ${p.seconds} of ${p.interval}.`,
      ends: (shortest: string, longest: string) => `middle of ${shortest} to ${longest}`,
    },
    clip: (seconds: string, fps: string) => `clip ${seconds} at ${fps} fps`,
    cues: (count: number) => counted(count, 'cue'),
    firstSetting: 'First setting',
    startsFrom: 'Page starts from',
    endsOn: 'Last setting',
    beforeStarting: 'Before starting',
    checks: {
      mode: 'mode M, raw',
      isoFixed: 'ISO not automatic',
      interval: (every: string, frames: number) => `timer: ${every}, ${frames}×`,
      bracket: (exposures: number, stops: string) => `bracket: ${exposures} by ${stops} stops`,
      finder: 'finder covered',
      focus: 'focus to manual',
      stabiliser: 'stabiliser off',
      whiteBalance: 'white balance fixed',
      darkFrameOff: 'long-exp. noise red. off',
      darkFrameOn: 'long-exp. noise red. on',
      card: 'card empty, in place',
      battery: 'battery full',
      level: 'camera level',
      filterOn: 'first filter on',
      filterOff: 'no filter on',
      clock: 'clock set to the second',
      redLight: 'red light in hand',
    },
    sky: 'Sun and moon',
    cueList: 'Cues',
    readings: 'Readings',
    readingTime: 'time',
    readingEv: 'EV',
    correction: (p: { tolerance: string; fallsDark: boolean; cuesPerStop: string }) =>
      `Meter at ISO 100; compare with the EV of the next cue. Up to ${p.tolerance} off: carry on. More: use now ` +
      `the cue whose EV is nearest the reading; stay that many cues ` +
      `${p.fallsDark ? 'ahead (darker) or behind (brighter)' : 'ahead (brighter) or behind (darker)'}. ` +
      `1 stop off is ${p.cuesPerStop} cues.`,
    correctionByMarks: (p: { tolerance: string; marks: number }) =>
      `Meter at ISO 100; compare with the EV of the next cue. Up to ${p.tolerance} off: carry on. More: at every cue ` +
      `set that much more than it says where it is darker, less where it is brighter: shutter first, then ISO, ` +
      `${p.marks} marks a stop.`,
    correctionByRig: (p: { tolerance: string }) =>
      `Meter at ISO 100; compare with the EV of the last row whose time has come. Up to ${p.tolerance} off: carry on. ` +
      `More: tell the rig: twice the shutter time for each stop darker, half of it for each stop brighter.`,
    minutesAfter: (minutes: string) => `+${minutes} min`,
    frame: (number: string) => `frame ${number}`,
    cueOf: (cue: number, of: number) => `${cue} of ${of}`,
    wholeCueOf: (cue: number, of: number) => `cue ${cue} of ${of}`,
    clicks: (count: number) => counted(count, 'click'),
    nextAt: (clock: string) => `next cue ${clock}`,
    newCard: 'New memory card',
    newBattery: 'New battery',
    evTable: (aperture: string) => `ISO 100, f/${aperture}: shutter your camera meters → EV`,
    evBehind: (names: string, stops: string) => `${names}: +${stops}`,
    sun: (deg: string) => `sun ${deg}°`,
    ev: (ev: string) => `EV ${ev}`,
    filterChange: 'FILTER CHANGE',
    takeOff: (names: string) => `Take off ${names}`,
    putOn: (names: string) => `Put on ${names}`,
    mayCost: (first: number, last: number) =>
      first === last ? `may cost frame ${first}` : `may cost frames ${first} to ${last}`,
    after: 'then',
    howToRead:
      'The clock time is the start of the first frame with the new setting: turn the dial in the gap just before it.',
    rigTimes: (shortest: string, longest: string) =>
      `The rig times the shutter, ${shortest} to ${longest}: leave it alone. Rows without a box say where it stands, ` +
      `every third of a stop; should the rig fail, set the nearest mark by hand.`,
    noCues: 'No cues: leave the camera as it stands.',
    missedTitle: 'When a cue was missed',
    missed: [
      'One cue late: make it now. A step a few frames late hardly shows; two steps at once do.',
      'Several missed: make them one at a time, in order, one every few frames, until the clock agrees.',
      'Lost your place: set what stands under the last cue whose clock time has passed.',
      'A filter change missed: do it in the order printed, then go on from the clock.',
      'Never stop the run to put a step right: it can be smoothed later, a gap cannot.',
    ],
    cautionsTitle: 'Take care',
    cautions: [
      'Never look at the sun through an optical finder.',
      'A photographic ND filter is no solar viewer.',
      'Darkness: know the way out; carry a second light.',
      'Water, tides: know high water; stay off wet rock, ice.',
      'Heights: keep back from edges; tie down against wind.',
      'Roads: be seen, stay off the carriageway.',
      'Nothing overhead without a second fixing.',
      'Local rules and licensed practice come first.',
    ],
    notesTitle: 'Notes on this plan',
  },
  calendar: {
    setUp: 'Be set up',
    setUpFor: (start: string) => `First frame at ${start}`,
    end: 'End of the shoot',
    endAt: (end: string) => `Last frame at ${end}`,
    filterChange: (steps: string) => `Filter: ${steps}`,
    after: (setting: string) => `Then: ${setting}`,
  },
};

/** Their type, as the English ones have it. */
export type English = typeof english;

/**
 * Every word that chart, card and calendar print, in one language: texts, and functions from numbers to
 * texts.
 */
export interface Words extends English {}
