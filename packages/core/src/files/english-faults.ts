// What is wrong with a file, in English: what was found, then after a semicolon what would be right.

import { englishMoveFaults } from '../move/fault.js';
import { type Sentences, sentenceOf } from '../words/sentences.js';
import { englishGiven } from './english-given.js';
import type { Entries, FaultFacts, Give, NumberHint, Phrase, Unit } from './fault.js';
import { type Fault, type FileError, type Locate, placed } from './file-error.js';

const UNITS: Readonly<Record<Unit, string>> = {
  number: 'a number',
  whole: 'a whole number',
  degrees: 'degrees',
  'degrees-from-north': 'degrees clockwise from north',
  'degrees-of-true-sun': "degrees of the sun's true altitude",
  'degrees-per-s': 'degrees a second',
  'degrees-per-s2': 'degrees a second squared',
  metres: 'metres',
  'metres-per-s': 'metres a second',
  'metres-per-s2': 'metres a second squared',
  'degrees-or-metres': 'degrees or metres',
  'degrees-or-metres-per-s': 'degrees or metres a second',
  'degrees-or-metres-per-s2': 'degrees or metres a second squared',
  millimetres: 'millimetres',
  pixels: 'pixels',
  seconds: 'seconds',
  minutes: 'minutes',
  stops: 'stops',
  ev: 'EV',
  'ev-darker-below-0': 'EV',
  ev100: 'EV at ISO 100',
  'ev-per-min': 'EV a minute',
  density: 'an optical density',
  factor: 'a factor',
  megabytes: 'megabytes',
  gigabytes: 'gigabytes',
  eighths: 'eighths',
  lux: 'lux',
  'cd-per-m2': 'candela a square metre',
  'mag-per-arcsec2': 'magnitudes a square arcsecond',
  'frames-per-s': 'frames a second',
  'widths-per-s': 'frame widths a second of clip',
  'share-of-time': 'a share of the time',
  'share-of-disc': 'a share of the disc',
  price: 'a price',
  'sum-of-costs': 'the sum of the costs',
  'marked-iso': 'a marked ISO',
  'exact-iso': 'an exact ISO',
  'exact-f-number': 'an exact f-number',
};

const ENTRIES: Readonly<Record<Entries, string>> = {
  filters: 'filters',
  moves: 'moves',
  readings: '{at, ev100}',
  'look-rows': '{sunAltitudeDeg, offsetEv}',
  'skyline-points': 'points of the skyline',
  events: 'events',
  missing: '{name, why}',
  rows: 'rows',
  names: 'names',
  changes: 'changes',
  frames: 'frames',
  cues: 'cues',
  'shutter-times': 'shutter times',
  exposures: 'exposures',
  notes: 'notes',
  travels: 'travels',
  findings: 'findings',
  lines: 'lines',
  remedies: 'remedies',
  lengths: 'lengths',
  'changed-lengths': 'changed lengths',
  evenings: 'evenings',
};

const PHRASES: Readonly<Record<Phrase, string>> = {
  value: 'a value',
  'true-or-false': 'true or false',
  'whether-it-lasts': 'whether it lasts, true or false',
  date: 'a date as YYYY-MM-DD',
  'plain-date': 'YYYY-MM-DD',
  time: 'a time with its offset, such as "2026-09-12T19:04:00+02:00"',
  zone: 'an IANA name such as "Europe/Lisbon"',
  line: 'one line',
  'plan-file': 'a plan file',
  'bracket-frames': '3, 5, 7 or 9',
  'steps-per-stop': '3 for a dial in thirds of a stop, 2 for halves',
  'shortest-shutter': 'the shortest marked shutter time, such as "1/4000"',
  'longest-shutter': 'the longest marked shutter time, such as "15"',
  'f-number': 'a marked f-number such as "5.6"',
  'f-number-or-range': 'a marked f-number such as "5.6", or widest and narrowest',
  iso: 'a marked ISO such as 100',
  'dial-mark': 'a mark of the dial as text',
  filter: 'a name and one of stops, density, factor',
  skyline: 'degrees, or points by direction',
  look: '{nightEv}, or rows of {sunAltitudeDeg, offsetEv}',
  'track-or-metres': 'm, or trackM with carriageM and marginM',
  move: 'axis "pan", "tilt" or "slide", and by how far',
  'lamps-on': '"always", the sun\'s altitudes, or fromAt and overMin',
  curve: 'the name of a curve, or trapezoid',
};

const quotedList = (words: readonly string[]) => words.map((word) => `"${word}"`).join(', ');

const gives: Sentences<Give, 'give'> = {
  range: ({ unit, from, to }) => {
    if (unit === 'degrees-from-north') return `${UNITS[unit]}, ${from} to ${to}`;
    return `${UNITS[unit]} from ${from} to ${to}${unit === 'ev-darker-below-0' ? ', negative is darker' : ''}`;
  },
  'above-zero': ({ unit, to }) => `${UNITS[unit]} above 0${to === undefined ? '' : `, at most ${to}`}`,
  'at-least': ({ unit, from }) => `${UNITS[unit]} from ${from}`,
  number: ({ unit }) => UNITS[unit],
  text: ({ least, most }) => `one line of ${least === 0 ? 'at most' : `${least} to`} ${most} characters`,
  list: ({ of }) => `a list of ${ENTRIES[of]}`,
  word: ({ words }) => `${words.length === 1 ? '' : 'one of '}${quotedList(words)}`,
  shapes: ({ words, groups }) =>
    [...(words.length === 0 ? [] : [quotedList(words)]), ...groups.map((keys) => keys.join(' and '))].join(
      ', or ',
    ),
  keys: ({ keys }) => keys.join(', '),
  'keys-by': ({ key }) => `keys with ${key}`,
  phrase: ({ phrase }) => PHRASES[phrase],
};

/** What to give, as sentences and the published JSON Schema say it. */
export function englishGive(give: Give): string {
  return sentenceOf(gives, 'give', give);
}

const hints: Sentences<NumberHint, 'hint'> = {
  'no-quotes': () => ', without quotes',
  'no-unit': () => ', without a unit',
  point: ({ number }) => `, with a point: ${number}`,
};

/** "a latitude", "an f-number"; "2 or 3" and "true or false" need no article. */
function withArticle(what: string): string {
  if (/ or /.test(what)) return what;
  return `${/^([aeio]|f-)/i.test(what) ? 'an' : 'a'} ${what}`;
}

const DIALS = { shutter: 'shutter', iso: 'ISO', aperture: 'aperture' };
const many = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`;
const yearText = (fromYear: number, toYear: number) => `${fromYear} to ${toYear}`;
const markText = (control: keyof typeof DIALS, mark: string) => (control === 'iso' ? mark : `"${mark}"`);

/** Faults of shoot and plan files in English, without their place. */
export const englishFaults: Sentences<FaultFacts> = {
  ...englishMoveFaults,
  'wrong-value': ({ given, what, give, hint }) =>
    `${englishGiven(given)} is not ${withArticle(what)}; give ${englishGive(give)}${
      hint === undefined ? '' : sentenceOf(hints, 'hint', hint)
    }`,
  'not-text': ({ given }) => `${englishGiven(given)} is not text; put it in quotes`,
  'unknown-word': ({ given, words, nearest }) => {
    const known = quotedList(words);
    const found = `${englishGiven(given)} is not ${words.length === 1 ? '' : 'one of '}${known}`;
    return nearest === undefined ? `${found}; give ${known}` : `${found}; the nearest is "${nearest}"`;
  },
  'later-format': ({ given, ours }) =>
    `${englishGiven(given)} is a later format than "${ours}"; read it with a newer version`,
  'empty-list': ({ of, least }) => `an empty list; give at least ${least} of ${ENTRIES[of]}`,
  'long-list': ({ count, most }) => `${count} are too many; give at most ${most}`,
  'missing-key': ({ give }) => `missing; give ${englishGive(give)}`,
  'unknown-key': ({ nearest }) => `no such key; the nearest is "${nearest}"`,
  'key-without-space': ({ right }) =>
    `no such key; give ${englishGiven(right)}, with a space after the colon`,
  'number-cut-at-comma': () => 'no such key; where a number was cut at its comma, give a point',
  'not-together': ({ keys }) => `does not go together with ${keys.join(' and ')}; leave one out`,
  'no-group': ({ given, keys }) => `${englishGiven(given)} stands where keys belong; give ${keys.join(', ')}`,
  'too-deep': ({ most }) => `is nested more than ${most} deep; give a file as its format says`,
  'too-large': ({ most }) => `holds more than ${most} values; give a file as its format says`,
  'not-on-dial': ({ given, control, stepsPerStop, nearest, first, last }) => {
    const dial = `the ${DIALS[control]} dial in ${stepsPerStop === 3 ? 'thirds' : 'halves'}`;
    const near = nearest.map((mark) => markText(control, mark)).join(' and ');
    const marks = nearest.length > 1 ? 'marks are' : 'mark is';
    const right =
      nearest.length > 0
        ? `the nearest ${marks} ${near}`
        : `its marks run from ${markText(control, first)} to ${markText(control, last)}`;
    return `${englishGiven(given)} is not on ${dial}; ${right}`;
  },
  'range-reversed': ({ control, mark, other }) => {
    const side = {
      shutter: 'a shorter time than the shortest',
      iso: 'below the lowest',
      aperture: 'a wider opening than the widest',
    }[control];
    return `${markText(control, mark)} is ${side}, ${markText(control, other)}; swap the two or give another`;
  },
  'unknown-zone': ({ given }) => `${englishGiven(given)} is not a time zone known here; give ${PHRASES.zone}`,
  'no-such-date': ({ given }) =>
    `${englishGiven(given)} is not in the calendar; give a real date as YYYY-MM-DD`,
  'no-such-time': ({ given, fromYear, toYear }) =>
    `${englishGiven(given)} is no time in the years ${yearText(fromYear, toYear)}; give one such as "2026-09-12T19:04:00+02:00"`,
  'year-out-of-reach': ({ given, fromYear, toYear }) =>
    `${englishGiven(given)} is out of reach; give a year from ${yearText(fromYear, toYear)}`,
  'date-skipped': ({ given, zone }) =>
    `${englishGiven(given)} was skipped by the calendar of ${zone}; give the day before or after`,
  'sun-goes-the-other-way': ({ direction, from, to }) =>
    direction === 'dusk'
      ? `${to} is not below ${from}, and at dusk the sun falls; swap them, or give direction "dawn"`
      : `${to} is not above ${from}, and at dawn the sun rises; swap them, or give direction "dusk"`,
  'end-before-start': ({ given, startAt }) =>
    `${englishGiven(given)} is before startAt, ${englishGiven(startAt)}; give a later time`,
  'another-day': ({ given, day, date }) =>
    `${englishGiven(given)} falls on ${day} at the place, not on date "${date}"; give both the same day`,
  'too-many-frames': ({ intervalS, most, of, leastS }) =>
    `${intervalS} makes more than ${most} frames in ${of === 'day' ? 'a day' : 'the span'}; give ${leastS} or more`,
  'interval-too-short': ({ intervalS, shutter, darkFrame, exposures, pausesS, gapS, leastS }) => {
    const open =
      exposures === 1
        ? `the shortest shutter, "${shutter}"${darkFrame ? ' and its dark frame' : ''}`
        : `a bracket of ${exposures} exposures, the shortest "${shutter}"${darkFrame ? ', with their dark frames' : ''}, ${Number(pausesS.toFixed(3))} s of pauses`;
    return `${intervalS} is too short for ${open}, and a gap of ${gapS} s; give ${leastS} or more`;
  },
  'too-much-work': ({ intervalS, frameCount, stacks, apertures, isos, leastS, byChanges }) => {
    const kit = `${many(stacks, 'filter stack')}, ${many(apertures, 'aperture')} and ${many(isos, 'ISO')}`;
    const give = [
      ...(leastS === undefined ? [] : [`${leastS} or more`]),
      'fewer filters or a narrower range',
      ...(byChanges ? ['a lower maxFilterChanges'] : []),
    ];
    return `${intervalS} makes ${frameCount} frames, too many to plan with ${kit}; give ${give.join(', or ')}`;
  },
  'bracket-off-dial': ({ stepEv, stepsPerStop }) =>
    `${stepEv} is no whole number of clicks of the dial; give a multiple of ${stepsPerStop === 3 ? 'a third: 0.3333333333, 0.6666666667, 1, 2' : 'a half: 0.5, 1, 2'}`,
  'bracket-too-wide': ({ wideEv, kitEv }) =>
    `a bracket ${Number(wideEv.toFixed(2))} stops wide does not fit between the shortest and the longest shutter, ${Number(kitEv.toFixed(2))} stops apart; give fewer exposures or a smaller step`,
  'bulb-needs-rig': () =>
    'a freely timed shutter needs crew "rig"; give that, or leave bulb out and let hands turn the dial',
  'filter-named-twice': ({ given }) =>
    `${englishGiven(given)} is the name of another filter too; give each its own`,
  'filter-misread': ({ given }) =>
    `${englishGiven(given)} would be misread in a cue; give a name other than "none", without a "+" that stands alone or outer spaces`,
  'unknown-start-filter': ({ given, nearest }) =>
    `${englishGiven(given)} is not among the filters; ${
      nearest === undefined ? 'add it to filters, or leave it out' : `the nearest is ${englishGiven(nearest)}`
    }`,
  'lamps-on-by-rising-sun': ({ from, to }) =>
    `${to} is not below fromSunAltitudeDeg, ${from}; lamps come on as the sun sinks`,
  'look-not-rising': ({ altitudeDeg, beforeDeg }) =>
    `${altitudeDeg} is not above the row before, ${beforeDeg}; sort the rows by rising sun altitude`,
  'reading-of-another-time': ({ given, side, frameAt, mostHours }) =>
    `${englishGiven(given)} is ${side === 'after-last' ? 'after the last' : 'long before the first'} frame, ${frameAt}; give a time during the shoot, or up to ${mostHours} hours before it`,
  'count-differs': ({ got, right }) => `${got} does not fit the rest of the plan; ${right} would`,
  'frame-at-another-time': ({ given, intervalS }) =>
    `${englishGiven(given)} is not when this frame starts; give the first frame's time and ${intervalS} s for each after it`,
  'frame-out-of-order': ({ frame, after, before }) =>
    `${frame} is not a frame after ${after} and before ${before}; give one`,
};

/** Faults with their place and their English. */
export function inEnglish(faults: readonly Fault[], locate?: Locate, source?: string): FileError[] {
  return placed(faults, (fault) => sentenceOf(englishFaults, 'kind', fault), locate, source);
}
