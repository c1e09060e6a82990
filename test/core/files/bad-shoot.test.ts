// Every kind of wrong shoot file, and the one line each is told in. The messages are the contract with the
// photographer: written down here by hand, not copied from the program.

import { readShoot } from '@evenfall/core';
import { describe, expect, test } from 'vitest';
import { LEAST } from './sample.js';

const camera = (more: object) => ({ camera: { ...LEAST.camera, ...more } });
const shutter = (shortest: unknown, longest: unknown) => camera({ shutter: { shortest, longest } });
const place = (more: object) => ({ place: { ...LEAST.place, ...more } });

const PAN = { axis: 'pan', by: { deg: 20 }, gear: { topSpeedDegPerS: 5 } };

/** 19:00 to 20:00 at the place. */
const HOUR = {
  ...place({ timeZone: 'Europe/Copenhagen' }),
  span: { startAt: '2026-09-12T19:00:00+02:00', endAt: '2026-09-12T20:00:00+02:00' },
};

// A row: what is laid over the least shoot file, and the message.
const ROWS: readonly (readonly [string, object, string])[] = [
  // Keys.
  ['a mistyped key', { intervlaS: 5 }, 'intervlaS: no such key; the nearest is "intervalS"'],
  [
    'a key with the wrong case',
    place({ timezone: 'Europe/Oslo' }),
    'place.timezone: no such key; the nearest is "timeZone"',
  ],
  [
    'a mistyped key deep down',
    { scene: { skyshar: 0.5 } },
    'scene.skyshar: no such key; the nearest is "skyShare"',
  ],
  ['a key of the object prototype', { constructor: 1 }, 'constructor: no such key; the nearest is "format"'],
  [
    'a prototype key',
    JSON.parse('{"__proto__": {"crew": "rig"}}'),
    '__proto__: no such key; the nearest is "look"',
  ],
  [
    'a prototype key in a group',
    { scene: JSON.parse('{"__proto__": 1}') },
    'scene.__proto__: no such key; the nearest is "surface"',
  ],
  [
    'a key that would break the line',
    { 'a\nb\u009b': 1 },
    '"a\\nb\\u009b": no such key; the nearest is "date"',
  ],
  [
    'a key without end',
    { ['k'.repeat(5000)]: 1 },
    `"${'k'.repeat(40)}…": no such key; the nearest is "stackFilters"`,
  ],
  ['a required key left empty', { date: null }, 'date: nothing is not a date; give a date as YYYY-MM-DD'],
  [
    // A key that a program leaves undefined is one that it leaves out.
    'a required key undefined',
    { date: undefined },
    'date: missing; give a date as YYYY-MM-DD',
  ],
  [
    'a list where keys belong',
    { scene: [] },
    'scene: a list stands where keys belong; give facing, viewAltitudeDeg, skyShare, surface, reflectance, uprightShare, cloud, night, lamps, skylineDeg',
  ],
  [
    'text where keys belong',
    { place: 'home' },
    'place: "home" stands where keys belong; give latitudeDeg, longitudeDeg, elevationM, aboveHorizonM, timeZone',
  ],

  // Moves, lens and sensor.
  [
    'a move along no axis',
    { moves: [{ ...PAN, axis: 'roll' }] },
    'moves[0]: a group of keys is not a move; give axis "pan", "tilt" or "slide", and by how far',
  ],
  [
    'a move without a way',
    { moves: [{ axis: 'pan' }] },
    'moves[0].by: missing; give deg, or fromPoint and toPoint, or fromBearingDeg and toBearingDeg, or sizeM and distanceM',
  ],
  [
    'a pan by metres',
    { moves: [{ ...PAN, by: { m: 2 } }] },
    'moves[0].by: a group of keys is not a turn; give deg, or fromPoint and toPoint, or fromBearingDeg and toBearingDeg, or sizeM and distanceM',
  ],
  [
    'a turn with one end',
    { moves: [{ ...PAN, by: { fromBearingDeg: 20 } }] },
    'moves[0].by.toBearingDeg: missing; give degrees clockwise from north, 0 to 360',
  ],
  [
    'a point beyond the frame',
    { moves: [{ ...PAN, by: { fromPoint: { fromLeft: 1.2 }, toPoint: {} } }] },
    'moves[0].by.fromPoint.fromLeft: 1.2 is not a share of the frame; give a number from 0 to 1',
  ],
  [
    'a mistyped gear',
    { moves: [{ ...PAN, gear: { topSpeedMPerS: 1 } }] },
    'moves[0].gear.topSpeedMPerS: no such key; the nearest is "topSpeedDegPerS"',
  ],
  [
    'a mistyped ease',
    { moves: [{ ...PAN, ease: 'smooth' }] },
    'moves[0].ease: "smooth" is not one of "linear", "smoothstep", "quintic"; the nearest is "smoothstep"',
  ],
  [
    'a slope too long',
    { moves: [{ ...PAN, ease: { trapezoid: 0.6 } }] },
    'moves[0].ease.trapezoid: 0.6 is not a slope; give a share of the time from 0 to 0.5',
  ],
  [
    'two pans',
    { moves: [PAN, PAN] },
    'moves[1].axis: a second pan; give one move for each of pan, tilt and slide',
  ],
  [
    'points without a lens',
    { moves: [{ ...PAN, by: { fromPoint: {}, toPoint: { fromLeft: 1 } } }] },
    'moves[0].by: points need camera.lens and camera.sensor; give both, or give deg',
  ],
  [
    'a move to nowhere',
    { moves: [{ ...PAN, by: { deg: 0 } }] },
    'moves[0].by: goes nowhere; give a longer way, or leave the move out',
  ],
  [
    'a tilt by bearings',
    { moves: [{ ...PAN, axis: 'tilt', by: { fromBearingDeg: 1, toBearingDeg: 2 } }] },
    'moves[0].by: compass bearings turn a pan; give deg, points, or sizeM and distanceM',
  ],
  [
    'a stopped move without a speed',
    { moves: [{ axis: 'pan', by: { deg: 4 } }] },
    'moves[0].gear: a stopped move needs time for its steps; give topSpeedDegPerS or moveS',
  ],
  [
    'a track all carriage',
    { moves: [{ axis: 'slide', by: { trackM: 1, carriageM: 1 }, gear: { moveS: 1 } }] },
    'moves[0].by.trackM: 1 m leaves no way beside carriage and margins; give a longer track',
  ],
  ['four moves', { moves: [PAN, PAN, PAN, PAN] }, 'moves: 4 are too many; give at most 3'],
  [
    'a lens without length',
    camera({ lens: { focalMm: 0 } }),
    'camera.lens.focalMm: 0 is not a focal length; give millimetres from 0.1 to 5000',
  ],
  [
    'half a sensor',
    camera({ sensor: { widthMm: 36 } }),
    'camera.sensor.heightMm: missing; give millimetres from 0.1 to 500',
  ],
  [
    'cold that leaves nothing',
    camera({ coldFactor: 0 }),
    'camera.coldFactor: 0 is not a share; give a number from 0.01 to 1',
  ],

  [
    'a shutter timed half freely',
    camera({ bulb: 'yes' }),
    'camera.bulb: "yes" is not true or false; give true or false',
  ],
  [
    'half a filter change',
    { limits: { maxFilterChanges: 1.5 } },
    'limits.maxFilterChanges: 1.5 is not a limit on filter changes; give a whole number from 0 to 100',
  ],

  // Format, place, date.
  [
    'another format',
    { format: 'evenfall-plan/1' },
    'format: "evenfall-plan/1" is not "evenfall-shoot/1"; give "evenfall-shoot/1"',
  ],
  [
    'a later format',
    { format: 'evenfall-shoot/2' },
    'format: "evenfall-shoot/2" is a later format than "evenfall-shoot/1"; read it with a newer version',
  ],
  [
    'a format that never was',
    { format: 'evenfall-shoot/0' },
    'format: "evenfall-shoot/0" is not "evenfall-shoot/1"; give "evenfall-shoot/1"',
  ],
  [
    'a latitude of 95',
    place({ latitudeDeg: 95 }),
    'place.latitudeDeg: 95 is not a latitude; give degrees from -90 to 90',
  ],
  [
    'a latitude that is no number',
    place({ latitudeDeg: Number.NaN }),
    'place.latitudeDeg: NaN is not a latitude; give degrees from -90 to 90',
  ],
  [
    'an infinite longitude',
    place({ longitudeDeg: Number.NEGATIVE_INFINITY }),
    'place.longitudeDeg: -Infinity is not a longitude; give degrees from -180 to 180',
  ],
  [
    'a latitude in quotes',
    place({ latitudeDeg: '57.05' }),
    'place.latitudeDeg: "57.05" is not a latitude; give degrees from -90 to 90, without quotes',
  ],
  [
    'a zone nobody knows',
    place({ timeZone: 'Europe/Atlantis' }),
    'place.timeZone: "Europe/Atlantis" is not a time zone known here; give an IANA name such as "Europe/Lisbon"',
  ],
  [
    'an offset for a zone',
    place({ timeZone: '+02:00' }),
    'place.timeZone: "+02:00" is not a time zone known here; give an IANA name such as "Europe/Lisbon"',
  ],
  [
    'a date the other way round',
    { date: '12.9.2026' },
    'date: "12.9.2026" is not a date; give a date as YYYY-MM-DD',
  ],
  [
    '30 February',
    { date: '2026-02-30' },
    'date: "2026-02-30" is not in the calendar; give a real date as YYYY-MM-DD',
  ],
  [
    '29 February of a common year',
    { date: '2027-02-29' },
    'date: "2027-02-29" is not in the calendar; give a real date as YYYY-MM-DD',
  ],
  [
    'a date long ago',
    { date: '1626-09-12' },
    'date: "1626-09-12" is out of reach; give a year from 1900 to 2199',
  ],
  // Samoa went from 29 to 31 December 2011 when it crossed the date line (tz database, zone Pacific/Apia).
  [
    'a date skipped at the date line',
    { date: '2011-12-30', place: { latitudeDeg: -13.8, longitudeDeg: -171.8, timeZone: 'Pacific/Apia' } },
    'date: "2011-12-30" was skipped by the calendar of Pacific/Apia; give the day before or after',
  ],
  ['a title that is a number', { title: 2026 }, 'title: 2026 is not text; put it in quotes'],
  [
    'a title of two lines',
    { title: 'a\nb' },
    'title: "a\\nb" is not a title; give one line of at most 120 characters',
  ],
  [
    'a mistyped word',
    { direction: 'dsuk' },
    'direction: "dsuk" is not one of "dusk", "dawn"; the nearest is "dusk"',
  ],
  ['a crew nobody has', { crew: 'robot' }, 'crew: "robot" is not one of "hand", "rig"; the nearest is "rig"'],

  // Span.
  [
    'a dusk that rises',
    { span: { fromSunAltitudeDeg: -12, toSunAltitudeDeg: 6 } },
    'span.toSunAltitudeDeg: 6 is not below -12, and at dusk the sun falls; swap them, or give direction "dawn"',
  ],
  [
    'a dawn that falls',
    { direction: 'dawn', span: { fromSunAltitudeDeg: 6, toSunAltitudeDeg: -12 } },
    'span.toSunAltitudeDeg: -12 is not above 6, and at dawn the sun rises; swap them, or give direction "dusk"',
  ],
  [
    'a sun above the zenith',
    { span: { fromSunAltitudeDeg: 91, toSunAltitudeDeg: 0 } },
    'span.fromSunAltitudeDeg: 91 is not a sun altitude; give degrees from -90 to 90',
  ],
  [
    'half a span',
    { span: { fromSunAltitudeDeg: 6 } },
    'span.toSunAltitudeDeg: missing; give degrees from -90 to 90',
  ],
  [
    'a span of both kinds',
    {
      span: { startAt: '2026-09-12T19:00:00+02:00', endAt: '2026-09-12T20:00:00+02:00', toSunAltitudeDeg: 1 },
    },
    'span.toSunAltitudeDeg: does not go together with startAt and endAt; leave one out',
  ],
  [
    'an end before the start',
    { span: { startAt: '2026-09-12T20:00:00+02:00', endAt: '2026-09-12T19:00:00+02:00' } },
    'span.endAt: "2026-09-12T19:00:00+02:00" is before startAt, "2026-09-12T20:00:00+02:00"; give a later time',
  ],
  [
    'a time without its offset',
    { span: { startAt: '2026-09-12T20:00:00', endAt: '2026-09-12T21:00:00Z' } },
    'span.startAt: "2026-09-12T20:00:00" is not a time; give a time with its offset, such as "2026-09-12T19:04:00+02:00"',
  ],
  [
    'a time no clock shows',
    { span: { startAt: '2026-09-12T25:00:00Z', endAt: '2026-09-12T21:00:00Z' } },
    'span.startAt: "2026-09-12T25:00:00Z" is no time in the years 1900 to 2199; give one such as "2026-09-12T19:04:00+02:00"',
  ],
  [
    'a start on another day',
    { span: { startAt: '2026-09-13T19:00:00+02:00', endAt: '2026-09-13T20:00:00+02:00' } },
    'span.startAt: "2026-09-13T19:00:00+02:00" falls on 2026-09-13 at the place, not on date "2026-09-12"; give both the same day',
  ],

  // Interval. The shortest shutter "4" is exactly 4 s; "10" is 2^(10/3) = 10.0794 s.
  [
    'no interval at all',
    { intervalS: 0 },
    'intervalS: 0 is not an interval; give seconds above 0, at most 86400',
  ],
  [
    'an infinite interval',
    { intervalS: Number.POSITIVE_INFINITY },
    'intervalS: Infinity is not an interval; give seconds above 0, at most 86400',
  ],
  [
    'an interval below shutter plus gap',
    { intervalS: 4.5, ...shutter('4', '4') },
    'intervalS: 4.5 is too short for the shortest shutter, "4", and a gap of 1 s; give 5 or more',
  ],
  [
    '… rounded up so that it is enough',
    { intervalS: 11, ...shutter('10', '10') },
    'intervalS: 11 is too short for the shortest shutter, "10", and a gap of 1 s; give 11.08 or more',
  ],
  [
    'an interval below two shutters plus gap',
    {
      intervalS: 6,
      camera: { ...LEAST.camera, darkFrame: true, gapS: 0.5, shutter: { shortest: '4', longest: '4' } },
    },
    'intervalS: 6 is too short for the shortest shutter, "4" and its dark frame, and a gap of 0.5 s; give 8.5 or more',
  ],
  [
    'a gap that fills the interval',
    { intervalS: 6, ...camera({ gapS: 6 }) },
    'intervalS: 6 is too short for the shortest shutter, "1/4000", and a gap of 6 s; give 6.001 or more',
  ],
  [
    'too many frames in a day',
    { intervalS: 0.4, ...camera({ gapS: 0 }) },
    'intervalS: 0.4 makes more than 100000 frames in a day; give 0.87 or more',
  ],
  [
    'too many frames in a span by clock',
    {
      ...place({ timeZone: 'Europe/Copenhagen' }),
      intervalS: 1.5,
      span: { startAt: '2026-09-12T00:00:00+02:00', endAt: '2026-09-17T00:00:00+02:00' },
    },
    'intervalS: 1.5 makes more than 100000 frames in the span; give 4.33 or more',
  ],

  // 601 frames, 16 stacks, 31 apertures, 5 levels within 0.75 stop each way, 16 ISOs and 3 beside them: 28.3 million.
  [
    'more settings than can be weighed in a moment',
    {
      ...HOUR,
      filters: [1, 2, 3, 4, 5].map((stops) => ({ name: `${stops}`, stops })),
      stackFilters: true,
      ...camera({ aperture: { widest: '1', narrowest: '32' } }),
    },
    'intervalS: 6 makes 601 frames, too many to plan with 16 filter stacks, 31 apertures and 16 ISOs; give 8 or more, or fewer filters or a narrower range',
  ],
  [
    '… and a limit on filter changes that makes a table for each',
    {
      ...HOUR,
      filters: [1, 2, 3, 4, 5].map((stops) => ({ name: `${stops}`, stops })),
      stackFilters: true,
      limits: { maxFilterChanges: 30 },
    },
    // 601 frames, 31 tables, 16 stacks, 5 levels, 16 ISOs and 3 beside them: 28.3 million again.
    'intervalS: 6 makes 601 frames, too many to plan with 16 filter stacks, 1 aperture and 16 ISOs; give 8 or more, or fewer filters or a narrower range, or a lower maxFilterChanges',
  ],
  [
    '… and a shutter timed freely, whose moves are many, where no interval would be enough',
    {
      ...HOUR,
      filters: Array.from({ length: 12 }, (_, i) => ({ name: `${i}`, stops: i })),
      stackFilters: true,
      crew: 'rig',
      camera: {
        ...LEAST.camera,
        bulb: true,
        iso: { lowest: 50, highest: 102_400 },
        aperture: { widest: '1', narrowest: '32' },
      },
    },
    'intervalS: 6 makes 601 frames, too many to plan with 79 filter stacks, 31 apertures and 34 ISOs; give fewer filters or a narrower range',
  ],
  [
    'a freely timed shutter in hands',
    camera({ bulb: true }),
    'camera.bulb: a freely timed shutter needs crew "rig"; give that, or leave bulb out and let hands turn the dial',
  ],
  [
    'a night with hardly a photon',
    { scene: { night: { groundLx: 5e-324 } } },
    'scene.night.groundLx: 5e-324 is not an illuminance; give lux from 1e-9 to 200',
  ],
  [
    'a file of another kind, and large',
    { readings: Array.from({ length: 30_000 }, () => 0) },
    'holds more than 20000 values; give a file as its format says',
  ],
  [
    'a file nested very deep',
    { look: Array.from({ length: 40 }).reduce<unknown>((inner) => [inner], 0) },
    'is nested more than 32 deep; give a file as its format says',
  ],
  [
    'a mark of a thousand blanks',
    camera({ aperture: ' '.repeat(100_000) }),
    `camera.aperture: "${' '.repeat(40)}…" is not on the aperture dial in thirds; its marks run from "1" to "32"`,
  ],

  // Dials.
  [
    'a shutter of another dial',
    shutter('1/45', '4'),
    'camera.shutter.shortest: "1/45" is not on the shutter dial in thirds; the nearest marks are "1/50" and "1/40"',
  ],
  [
    'a shutter of the other dial',
    { camera: { ...LEAST.camera, stepsPerStop: 2, shutter: { shortest: '1/4000', longest: '1/5' } } },
    'camera.shutter.longest: "1/5" is not on the shutter dial in halves; the nearest marks are "1/6" and "1/4"',
  ],
  [
    'a shutter with its unit',
    shutter('1/4000', '4 s'),
    'camera.shutter.longest: "4 s" is not on the shutter dial in thirds; the nearest mark is "4"',
  ],
  [
    'a shutter between the doublings',
    shutter('1/4000', 90),
    'camera.shutter.longest: "90" is not on the shutter dial in thirds; the nearest marks are "80" and "100"',
  ],
  // The mark "13" is exactly 12.7 s: by exact values its neighbours would be "13" and "15".
  [
    'a shutter between a mark and its exact value',
    shutter('1/4000', '12.8'),
    'camera.shutter.longest: "12.8" is not on the shutter dial in thirds; the nearest marks are "10" and "13"',
  ],
  [
    'a shutter that is no number',
    shutter('auto', '4'),
    'camera.shutter.shortest: "auto" is not on the shutter dial in thirds; its marks run from "60" to "1/8000"',
  ],
  [
    'a shutter faster than any',
    shutter('1/32000', '4'),
    'camera.shutter.shortest: "1/32000" is not on the shutter dial in thirds; the nearest mark is "1/8000"',
  ],
  [
    'a shutter that is a flag',
    shutter(true, '4'),
    'camera.shutter.shortest: true is not a mark of the dial; give the shortest marked shutter time, such as "1/4000"',
  ],
  [
    'a longest shutter below the shortest',
    shutter('4', '1/4'),
    'camera.shutter.longest: "1/4" is a shorter time than the shortest, "4"; swap the two or give another',
  ],
  [
    'an ISO off the dial',
    camera({ iso: { lowest: 100, highest: 6300 } }),
    'camera.iso.highest: 6300 is not on the ISO dial in thirds; the nearest marks are 5000 and 6400',
  ],
  [
    'an ISO in quotes',
    camera({ iso: { lowest: '100', highest: 200 } }),
    'camera.iso.lowest: "100" is not an ISO; give a marked ISO such as 100, without quotes',
  ],
  [
    'a highest ISO below the lowest',
    camera({ iso: { lowest: 400, highest: 100 } }),
    'camera.iso.highest: 100 is below the lowest, 400; swap the two or give another',
  ],
  [
    'an aperture off the dial',
    camera({ aperture: '5.7' }),
    'camera.aperture: "5.7" is not on the aperture dial in thirds; the nearest marks are "5.6" and "6.3"',
  ],
  [
    'an aperture with its f',
    camera({ aperture: 'f/8' }),
    'camera.aperture: "f/8" is not on the aperture dial in thirds; the nearest mark is "8"',
  ],
  [
    'an aperture number off the dial',
    camera({ aperture: 7 }),
    'camera.aperture: "7" is not on the aperture dial in thirds; the nearest marks are "6.3" and "7.1"',
  ],
  [
    'an aperture range upside down',
    camera({ aperture: { widest: '8', narrowest: '2.8' } }),
    'camera.aperture.narrowest: "2.8" is a wider opening than the widest, "8"; swap the two or give another',
  ],
  [
    'an aperture range with one end',
    camera({ aperture: { widest: '8' } }),
    'camera.aperture.narrowest: missing; give a marked f-number such as "5.6"',
  ],
  [
    'quarter stops',
    camera({ stepsPerStop: 4 }),
    'camera.stepsPerStop: 4 is not 2 or 3; give 3 for a dial in thirds of a stop, 2 for halves',
  ],
  [
    'half a frame a charge',
    camera({ batteryFrames: 300.5 }),
    'camera.batteryFrames: 300.5 is not a number of frames; give a whole number from 1 to 10000000',
  ],

  // Filters.
  [
    'a mistyped filter key',
    { filters: [{ name: 'ND', stop: 3 }] },
    'filters[0].stop: no such key; the nearest is "stops"',
  ],
  [
    'a filter told twice',
    { filters: [{ name: 'ND', stops: 3, density: 0.9 }] },
    'filters[0].density: does not go together with name and stops; leave one out',
  ],
  [
    'a filter that brightens',
    { filters: [{ name: 'ND', factor: 0.5 }] },
    'filters[0].factor: 0.5 is not a factor; give a factor from 1 to 1000000000',
  ],
  [
    'two filters of one name',
    {
      filters: [
        { name: 'ND', stops: 3 },
        { name: 'ND', stops: 6 },
      ],
    },
    'filters[1].name: "ND" is the name of another filter too; give each its own',
  ],
  [
    'a filter called none',
    { filters: [{ name: 'none', stops: 3 }] },
    'filters[0].name: "none" would be misread in a cue; give a name other than "none", without a "+" that stands alone or outer spaces',
  ],
  // "A + + B" would be "A" with "+ B" as well.
  [
    'a filter that ends in a plus',
    { filters: [{ name: 'A +', stops: 3 }] },
    'filters[0].name: "A +" would be misread in a cue; give a name other than "none", without a "+" that stands alone or outer spaces',
  ],
  [
    'a start filter not owned',
    { filters: [{ name: 'ND 3', stops: 3 }], startFilter: 'ND 6' },
    'startFilter: "ND 6" is not among the filters; the nearest is "ND 3"',
  ],
  [
    'a start filter without filters',
    { startFilter: 'ND 6' },
    'startFilter: "ND 6" is not among the filters; add it to filters, or leave it out',
  ],
  [
    'a single filter without its list',
    { filters: { name: 'ND', stops: 3 } },
    'filters: a group of keys is not a list; give a list of filters',
  ],

  // Scene, look, readings, limits.
  [
    'a surface and a reflectance',
    { scene: { surface: 'snow', reflectance: 0.4 } },
    'scene.reflectance: does not go together with surface; leave one out',
  ],
  [
    'a mistyped cloud',
    { scene: { cloud: 'overcats' } },
    'scene.cloud: "overcats" is not one of "clear", "thin", "broken", "overcast", "heavy"; the nearest is "overcast"',
  ],
  [
    'nine eighths of cloud',
    { scene: { cloud: { eighths: 9 } } },
    'scene.cloud.eighths: 9 is not a cloud cover; give eighths from 0 to 8',
  ],
  [
    'a mistyped night',
    { scene: { night: { groundLux: 3 } } },
    'scene.night.groundLux: no such key; the nearest is "groundLx"',
  ],
  [
    'a facing that is a number',
    { scene: { facing: 270 } },
    'scene.facing: 270 is not a direction; give "toward-sun", "side", "away", or azimuthDeg',
  ],
  ['a look without rows', { look: [] }, 'look: an empty list; give at least 1 of {sunAltitudeDeg, offsetEv}'],
  [
    'a look that is not sorted',
    {
      look: [
        { sunAltitudeDeg: 0, offsetEv: 0 },
        { sunAltitudeDeg: -6, offsetEv: -1 },
      ],
    },
    'look[1].sunAltitudeDeg: -6 is not above the row before, 0; sort the rows by rising sun altitude',
  ],
  [
    'a reading at no time',
    { readings: [{ at: '2026-02-30T10:00:00Z', ev100: 3 }] },
    'readings[0].at: "2026-02-30T10:00:00Z" is no time in the years 1900 to 2199; give one such as "2026-09-12T19:04:00+02:00"',
  ],
  [
    'a reading brighter than any sun',
    { readings: [{ at: '2026-09-12T18:00:00Z', ev100: 26 }] },
    'readings[0].ev100: 26 is not an exposure value; give EV at ISO 100 from -15 to 25',
  ],
  // Frames from 19:00 to 20:00; a reading counts from 07:00 on.
  [
    'a reading after the last frame',
    { ...HOUR, readings: [{ at: '2026-09-12T20:00:01+02:00', ev100: 3 }] },
    'readings[0].at: "2026-09-12T20:00:01+02:00" is after the last frame, 2026-09-12T20:00:00+02:00; give a time during the shoot, or up to 12 hours before it',
  ],
  [
    'a reading of the morning before',
    {
      ...HOUR,
      readings: [
        { at: '2026-09-12T07:00:00+02:00', ev100: 14 },
        { at: '2026-09-12T06:59:59+02:00', ev100: 14 },
      ],
    },
    'readings[1].at: "2026-09-12T06:59:59+02:00" is long before the first frame, 2026-09-12T19:00:00+02:00; give a time during the shoot, or up to 12 hours before it',
  ],
  [
    'a share of sky beyond the frame',
    { scene: { skyShare: 1.2 } },
    'scene.skyShare: 1.2 is not a share; give a number from 0 to 1',
  ],
  [
    'a negative share of sky',
    { scene: { skyShare: -0.1 } },
    'scene.skyShare: -0.1 is not a share; give a number from 0 to 1',
  ],
  [
    'a negative lux',
    { scene: { night: { groundLx: -3 } } },
    'scene.night.groundLx: -3 is not an illuminance; give lux from 1e-9 to 200',
  ],
  [
    'a night brighter than a floodlit pitch',
    { scene: { night: { groundLx: 201 } } },
    'scene.night.groundLx: 201 is not an illuminance; give lux from 1e-9 to 200',
  ],
  [
    'a zenith brighter than any town makes it',
    { scene: { night: { zenithMagArcsec2: 13.9 } } },
    'scene.night.zenithMagArcsec2: 13.9 is not a sky brightness; give magnitudes a square arcsecond from 14 to 23',
  ],
  [
    'a surface that is not in the table',
    { scene: { surface: 'sno' } },
    'scene.surface: "sno" is not one of "grass", "sand", "snow", "water", "rock", "city"; the nearest is "snow"',
  ],
  [
    'no tolerance',
    { limits: { toleranceEv: 0 } },
    'limits.toleranceEv: 0 is not a tolerance; give stops from 0.001 to 10',
  ],
];

describe('a wrong shoot file is told in one line', () => {
  test.each(ROWS)('%s', (_name, over, message) => {
    expect(messages({ ...LEAST, ...over })).toEqual([message]);
  });

  test('a value that breaks two rules is told once', () => {
    const twice = { name: 'a + b', stops: 3 };
    expect(messages({ ...LEAST, filters: [twice, twice] })).toEqual([
      'filters[0].name: "a + b" would be misread in a cue; give a name other than "none", without a "+" that stands alone or outer spaces',
      'filters[1].name: "a + b" is the name of another filter too; give each its own',
    ]);
  });

  const WHOLE =
    'stands where keys belong; give format, title, place, date, direction, span, intervalS, clipFps, camera, filters, stackFilters, startFilter, scene, look, readings, crew, limits, weights, moves';
  test.each([
    ['nothing', null, `nothing ${WHOLE}`],
    ['text', 'a shoot', `"a shoot" ${WHOLE}`],
    ['a list', [LEAST], `a list ${WHOLE}`],
  ])('a file that holds %s', (_name, value, message) => {
    expect(messages(value)).toEqual([message]);
  });

  test('every missing key is named with what to give', () => {
    expect(messages({})).toEqual([
      'format: missing; give "evenfall-shoot/1"',
      'place: missing; give latitudeDeg, longitudeDeg',
      'date: missing; give a date as YYYY-MM-DD',
      'intervalS: missing; give seconds above 0, at most 86400',
      'camera: missing; give shutter, iso, aperture',
    ]);
  });
});

test('an error names the file and the line of its key; a missing key takes the line around it', () => {
  const lines: Record<string, number> = { '': 1, place: 4, 'place.latitudeDeg': 5, camera: 7 };
  const { shutter: _, ...noShutter } = LEAST.camera;
  const value = { ...LEAST, place: { latitudeDeg: 95, longitudeDeg: 0 }, camera: noShutter };
  const read = readShoot(
    value,
    (path) => {
      const line = lines[path.join('.')];
      return line === undefined ? undefined : { line };
    },
    'evening.yaml',
  );
  expect(read.kind === 'wrong' && read.errors.map(({ message }) => message)).toEqual([
    'evening.yaml:5: place.latitudeDeg: 95 is not a latitude; give degrees from -90 to 90',
    'evening.yaml:7: camera.shutter: missing; give shortest, longest',
  ]);
});

test('without a line the error still names the file', () => {
  const read = readShoot({ ...LEAST, intervalS: -1 }, undefined, 'evening.json');
  expect(read.kind === 'wrong' && read.errors[0]?.message).toBe(
    'evening.json: intervalS: -1 is not an interval; give seconds above 0, at most 86400',
  );
});

function messages(value: unknown): string[] {
  const read = readShoot(value);
  return read.kind === 'wrong' ? read.errors.map(({ message }) => message) : [];
}
