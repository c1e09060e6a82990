// The shoot file, evenfall-shoot/1, as a schema: shapes, ranges and fixed defaults.
// What one key asks of another stands in shoot-rules.ts.

import * as v from 'valibot';
import { MOST_FRAMES_LOST } from '../shoot/frames-lost.js';
import { lens, moves, sensor } from './move-schema.js';
import {
  aboveZero,
  choice,
  flag,
  format,
  formed,
  holds,
  instant,
  isGroup,
  list,
  mark,
  number,
  oneOf,
  phrase,
  text,
  whole,
  word,
} from './parts.js';

/** Most filters a bag holds; pairs of them grow with the square. */
const MOST_FILTERS = 12;
/** Most rows a look or a list of readings holds. */
const MOST_ROWS = 1000;

const altitude = number('sun altitude', 'degrees', -90, 90);
const share = number('share', 'number', 0, 1);
const evStops = number('exposure value', 'ev100', -15, 25);
const at = instant();

const place = v.strictObject({
  latitudeDeg: number('latitude', 'degrees', -90, 90),
  longitudeDeg: number('longitude', 'degrees', -180, 180),
  elevationM: v.exactOptional(number('elevation', 'metres', -500, 9000)),
  aboveHorizonM: v.exactOptional(number('height', 'metres', 0, 9000)),
  timeZone: v.exactOptional(text('time zone', 64, 1, phrase('zone'))),
});

const sunSpan = v.strictObject({ fromSunAltitudeDeg: altitude, toSunAltitudeDeg: altitude });
const clockSpan = v.strictObject({ startAt: at, endAt: at });
const span = choice(
  [sunSpan, clockSpan],
  {
    what: 'span',
    give: {
      give: 'shapes',
      words: [],
      groups: [
        ['fromSunAltitudeDeg', 'toSunAltitudeDeg'],
        ['startAt', 'endAt'],
      ],
    },
  },
  (input) => {
    if (!isGroup(input)) return undefined;
    return holds(input, 'startAt') || (holds(input, 'endAt') && !holds(input, 'fromSunAltitudeDeg'))
      ? clockSpan
      : sunSpan;
  },
);

const apertureMark = mark('f-number');
const apertureRange = v.strictObject({ widest: apertureMark, narrowest: apertureMark });
const isoMark = number('ISO', 'number', 1, 10_000_000, phrase('iso'));

const camera = v.strictObject({
  stepsPerStop: v.optional(oneOf([2, 3], '2 or 3', 'steps-per-stop'), 3),
  shutter: v.strictObject({
    shortest: mark('shortest-shutter'),
    longest: mark('longest-shutter'),
  }),
  bulb: v.optional(flag(), false),
  iso: v.strictObject({ lowest: isoMark, highest: isoMark }),
  aperture: choice(
    [apertureMark, apertureRange],
    { what: 'aperture', give: phrase('f-number-or-range') },
    (input) => (isGroup(input) ? apertureRange : apertureMark),
  ),
  gapS: v.optional(number('gap', 'seconds', 0, 3600), 1),
  darkFrame: v.optional(flag(), false),
  bracket: v.exactOptional(
    v.strictObject({
      frames: oneOf([3, 5, 7, 9], 'number of exposures', 'bracket-frames'),
      stepEv: number('step', 'stops', 0.001, 10),
      betweenS: v.optional(number('pause', 'seconds', 0, 3600), 0),
    }),
  ),
  frameMB: v.exactOptional(number('frame size', 'megabytes', 0.001, 10_000)),
  cardGB: v.exactOptional(number('card size', 'gigabytes', 0.001, 1_000_000)),
  batteryFrames: v.exactOptional(whole('number of frames', 1, 10_000_000)),
  coldFactor: v.exactOptional(number('share', 'number', 0.01, 1)),
  lens: v.exactOptional(lens),
  sensor: v.exactOptional(sensor),
});

const name = text('name', 40, 1);
const byStops = v.strictObject({ name, stops: number('filter strength', 'stops', 0, 30) });
const byDensity = v.strictObject({
  name,
  density: number('density', 'density', 0, 9),
});
const byFactor = v.strictObject({
  name,
  factor: number('factor', 'factor', 1, 1e9),
});
const filter = choice([byStops, byDensity, byFactor], { what: 'filter', give: phrase('filter') }, (input) => {
  if (!isGroup(input)) return undefined;
  if (holds(input, 'stops')) return byStops;
  if (holds(input, 'density')) return byDensity;
  if (holds(input, 'factor')) return byFactor;
  // A mistyped key is told with the nearest; where there is none at all, all three are.
  return Object.keys(input).some((key) => key !== 'name') ? byStops : undefined;
});

const FACINGS = ['toward-sun', 'side', 'away'] as const;
const facingWord = word(FACINGS);
const facingAzimuth = v.strictObject({
  azimuthDeg: number('azimuth', 'degrees-from-north', 0, 360),
});
const CLOUDS = ['clear', 'thin', 'broken', 'overcast', 'heavy'] as const;
const cloudWord = word(CLOUDS);
const cloudEighths = v.strictObject({ eighths: number('cloud cover', 'eighths', 0, 8) });
const NIGHTS = ['remote', 'rural', 'suburb', 'town', 'city'] as const;
const nightWord = word(NIGHTS);
const nightSky = v.strictObject({
  zenithMagArcsec2: number('sky brightness', 'mag-per-arcsec2', 14, 23),
});
const nightGround = v.strictObject({
  groundLx: number('illuminance', 'lux', 1e-9, 200),
});
const LAMPS = ['none', 'street', 'floodlit', 'skyline'] as const;
const lampsWord = word(LAMPS);
const alwaysLit = word(['always']);
const litBySun = v.strictObject({ fromSunAltitudeDeg: altitude, toSunAltitudeDeg: altitude });
const litByClock = v.strictObject({
  fromAt: instant(),
  overMin: v.optional(number('time to come on', 'minutes', 0, 240), 0),
});
const lampsOn = choice(
  [alwaysLit, litBySun, litByClock],
  { what: 'time of switching', give: phrase('lamps-on') },
  (input) => textOr(input, alwaysLit, holds(input, 'fromAt') ? litByClock : litBySun),
);
const lampsEv = v.strictObject({ ev100: evStops, share, on: v.exactOptional(lampsOn) });
const lampsNamed = v.strictObject({ word: lampsWord, on: lampsOn });
const skylineDegrees = number('skyline', 'degrees', -10, 89);
const skylinePoints = list(
  v.strictObject({
    azimuthDeg: number('azimuth', 'degrees-from-north', 0, 360),
    altitudeDeg: skylineDegrees,
  }),
  'skyline-points',
  72,
  1,
);

const scene = v.strictObject({
  facing: v.optional(
    choice(
      [facingWord, facingAzimuth],
      { what: 'direction', give: { give: 'shapes', words: FACINGS, groups: [['azimuthDeg']] } },
      (input) => textOr(input, facingWord, facingAzimuth),
    ),
    'toward-sun',
  ),
  viewAltitudeDeg: v.optional(number('view altitude', 'degrees', 0, 90), 15),
  skyShare: v.optional(share, 0.5),
  surface: v.exactOptional(word(['grass', 'sand', 'snow', 'water', 'rock', 'city'])),
  reflectance: v.exactOptional(number('reflectance', 'number', 0.001, 1)),
  uprightShare: v.exactOptional(share),
  cloud: v.optional(
    choice(
      [cloudWord, cloudEighths],
      { what: 'cloud cover', give: { give: 'shapes', words: CLOUDS, groups: [['eighths']] } },
      (input) => textOr(input, cloudWord, cloudEighths),
    ),
    'clear',
  ),
  night: v.optional(
    choice(
      [nightWord, nightSky, nightGround],
      {
        what: 'night',
        give: { give: 'shapes', words: NIGHTS, groups: [['zenithMagArcsec2'], ['groundLx']] },
      },
      (input) => textOr(input, nightWord, holds(input, 'groundLx') ? nightGround : nightSky),
    ),
    'rural',
  ),
  lamps: v.optional(
    choice(
      [lampsWord, lampsEv, lampsNamed],
      { what: 'kind of lamps', give: { give: 'shapes', words: LAMPS, groups: [['ev100', 'share']] } },
      (input) => textOr(input, lampsWord, holds(input, 'word') ? lampsNamed : lampsEv),
    ),
    'none',
  ),
  skylineDeg: v.exactOptional(
    choice([skylineDegrees, skylinePoints], { what: 'skyline', give: phrase('skyline') }, (input) =>
      typeof input === 'number' ? skylineDegrees : Array.isArray(input) ? skylinePoints : undefined,
    ),
  ),
});

/** Text was meant as the word, keys as the group; anything else could be either. */
function textOr<Word, Group>(input: unknown, asWord: Word, asGroup: Group): Word | Group | undefined {
  if (typeof input === 'string') return asWord;
  return isGroup(input) ? asGroup : undefined;
}

const offset = number('offset', 'ev-darker-below-0', -10, 10);
const lookNight = v.strictObject({ nightEv: offset });
const lookTable = list(
  v.strictObject({ sunAltitudeDeg: altitude, offsetEv: offset }),
  'look-rows',
  MOST_ROWS,
  1,
);
const look = choice([lookNight, lookTable], { what: 'look', give: phrase('look') }, (input) =>
  Array.isArray(input) ? lookTable : isGroup(input) ? lookNight : undefined,
);

const tolerance = number('tolerance', 'stops', 0.001, 10);
const largestStep = number('step', 'stops', 0.001, 10);
const spacing = number('spacing', 'seconds', 0, 86_400);
const filterChanges = v.exactOptional(whole('limit on filter changes', 0, 100));
const framesLost = whole('number of frames', 0, MOST_FRAMES_LOST);

const limits = v.strictObject({
  toleranceEv: v.exactOptional(tolerance),
  largestStepEv: v.exactOptional(largestStep),
  secondsBetweenCues: v.exactOptional(spacing),
  maxFilterChanges: filterChanges,
  framesLostPerFilterChange: v.exactOptional(framesLost),
});

const weight = v.exactOptional(number('weight', 'price', 0, 1000));
const weights = v.strictObject({
  error: weight,
  blur: weight,
  shortShutter: weight,
  iso: weight,
  isoBehindFilter: weight,
  affectedFrame: weight,
  shutterCue: weight,
  isoCue: weight,
  apertureCue: weight,
  filterCue: weight,
  againstLight: weight,
});

/** The shoot file as written: defaults that depend on no other key are filled in on reading. */
export const shootFileSchema = v.strictObject({
  format: format('evenfall-shoot/1'),
  title: v.optional(text('title', 120), ''),
  place,
  date: formed('date', 'date', /^\d{4}-\d{2}-\d{2}$/),
  direction: v.optional(word(['dusk', 'dawn']), 'dusk'),
  span: v.exactOptional(span),
  intervalS: aboveZero('interval', 'seconds', 86_400),
  clipFps: v.optional(number('frame rate', 'frames-per-s', 0.1, 1000), 24),
  camera,
  filters: v.optional(list(filter, 'filters', MOST_FILTERS), []),
  stackFilters: v.optional(flag(), false),
  startFilter: v.exactOptional(name),
  scene: v.optional(scene, {}),
  look: v.optional(look, { nightEv: -1.5 }),
  readings: v.optional(list(v.strictObject({ at, ev100: evStops }), 'readings', MOST_ROWS), []),
  crew: v.optional(word(['hand', 'rig']), 'hand'),
  limits: v.optional(limits, {}),
  weights: v.exactOptional(weights),
  moves: v.optional(moves, []),
});

/** What a remedy may change in a shoot: whole values of its keys, defaults filled in. */
export const shootChangeSchema = v.strictObject({
  span: v.exactOptional(span),
  intervalS: v.exactOptional(shootFileSchema.entries.intervalS),
  camera: v.exactOptional(camera),
  filters: v.exactOptional(list(filter, 'filters', MOST_FILTERS + 1)),
  startFilter: v.exactOptional(name),
  look: v.exactOptional(look),
  limits: v.exactOptional(
    v.strictObject({
      toleranceEv: tolerance,
      largestStepEv: largestStep,
      secondsBetweenCues: spacing,
      maxFilterChanges: filterChanges,
      framesLostPerFilterChange: framesLost,
    }),
  ),
  moves: v.exactOptional(moves),
});

/** A shoot file that satisfies the schema; not yet the rules between its keys. */
export type CheckedFile = v.InferOutput<typeof shootFileSchema>;
